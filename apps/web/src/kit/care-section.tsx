import { cautions, deference, prescribedWording, swordCaution } from '@twistwright/books';
import type { Kit } from '@twistwright/planner';
import { memo, type ReactElement } from 'react';
import { useBook } from '../book/use-book.ts';

/** The cautions that are handed over with a kit: ours, and the wording that the law of the country prescribes on packs. */
export const CareSection = memo(function CareSection({ kit }: { readonly kit: Kit }): ReactElement {
  const { book } = useBook();
  const wording = prescribedWording(book.business.country);
  const hasSword = kit.figures.some(
    ({ figure, met }) => met > 0 && book.figures.find((one) => one.id === figure)?.tags?.includes('sword-like') === true,
  );
  return (
    <div className="care">
      <h3>Take care, and hand this over with the kit.</h3>
      <ul>
        {[...cautions, ...(hasSword ? [swordCaution] : [])].map(({ about, text }) => (
          <li key={about}>{text}</li>
        ))}
      </ul>
      {wording !== undefined && (
        <>
          <p>
            <b>{wording.text}</b>
          </p>
          <p className="note">
            {wording.citation}; {wording.where}.
          </p>
        </>
      )}
      <p className="note">{deference}</p>
    </div>
  );
});
