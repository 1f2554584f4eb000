import { useMutation } from '@tanstack/react-query';
import type { ReactElement } from 'react';
import { NotSaved } from '../forms/saving.tsx';
import { fetchKitPaper, type KitPaperName, type PaperOrder } from './kit-paper-door.ts';

const papers: readonly { readonly paper: KitPaperName; readonly words: string }[] = [
  { paper: 'handout', words: 'Print the list' },
  { paper: 'learning', words: 'Print the figures to learn' },
  { paper: 'page', words: 'Save as one page to hand over' },
  { paper: 'list', words: 'Save for a spreadsheet' },
];

/** Everything that can be handed over. */
export function PapersRow({ wishes, kit, name }: PaperOrder & { readonly name: string }): ReactElement {
  const making = useMutation({ mutationFn: (paper: KitPaperName) => fetchKitPaper(paper, { wishes, kit }, name) });
  return (
    <div className="noprint" style={{ marginTop: 24 }}>
      <div className="row">
        {papers.map(({ paper, words }, index) => (
          <button
            key={paper}
            type="button"
            className={index === 0 ? 'btn full' : 'btn'}
            disabled={making.isPending}
            onClick={() => making.mutate(paper)}
          >
            {words}
          </button>
        ))}
      </div>
      {making.isPending && (
        <p className="note" role="status">
          Making the file …
        </p>
      )}
      <NotSaved error={making.error} what="The file could not be made." />
    </div>
  );
}
