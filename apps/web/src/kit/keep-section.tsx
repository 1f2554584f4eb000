import type { SavedKit } from '@twistwright/books';
import { shortDate, showMoney } from '@twistwright/units';
import { memo, type ReactElement, useState } from 'react';
import { newId } from '../book/change.ts';
import { useBook, useChangeBook } from '../book/use-book.ts';
import { NotSaved } from '../forms/saving.tsx';
import { TextField } from '../parts/field.tsx';
import { Undo } from '../parts/undo.tsx';
import { counted, sentence } from '../words/counted.ts';
import type { PlannedKit } from './use-kit.ts';
import { savedKitOf } from './wishes-of-page.ts';

interface KeepProps extends PlannedKit {
  /** Whether the plan is for what is wished now; nothing is kept before. */
  readonly isWhole: boolean;
  readonly name: string;
  readonly onName: (name: string) => void;
  readonly onOpen: (kit: SavedKit) => void;
}

/** Keeps the kit in the book under a name, and lists those that were kept. */
export const KeepSection = memo(function KeepSection({ plan, wishes, isWhole, name, onName, onOpen }: KeepProps): ReactElement {
  const { book, today } = useBook();
  const { change, undo, isSaving, error } = useChangeBook();
  const [problem, setProblem] = useState<string>();
  const kits = book.kits ?? [];
  const save = (): void => {
    const plain = name.trim();
    setProblem(plain === '' ? 'Give the kit a name, such as whom it is for.' : undefined);
    if (plain === '') return;
    const known = kits.find((kit) => kit.name === plain);
    change({
      list: 'kits',
      put: savedKitOf(plan, wishes, { id: known?.id ?? newId(plain, kits), name: plain, savedOn: today }),
    });
  };
  return (
    <section>
      <h2>{kits.length === 0 ? 'Keep this kit in the book.' : `${sentence(counted(kits.length, 'kit'))} in the book.`}</h2>
      <div className="saving noprint">
        <TextField label="Name of the kit" note="Stands on the papers too." value={name} onChange={onName} problem={problem} />
        <button type="button" className="btn" disabled={isSaving || !isWhole} onClick={save}>
          Keep this kit
        </button>
      </div>
      {kits.length > 0 && (
        <ul className="kept">
          {kits.map((kit) => (
            <li key={kit.id}>
              <b>{kit.name}</b>
              <span className="note">
                {showMoney(kit.wishes.budget, book.business.currency)}, {counted(kit.lines.length + kit.tools.length, 'line')}, kept on{' '}
                {shortDate(kit.savedOn)}
              </span>
              <button type="button" className="btn plain noprint" aria-label={`Open ${kit.name}`} onClick={() => onOpen(kit)}>
                Open
              </button>
              <button
                type="button"
                className="btn plain noprint"
                aria-label={`Delete ${kit.name}`}
                disabled={isSaving}
                onClick={() => change({ list: 'kits', remove: kit.id })}
              >
                Delete
              </button>
            </li>
          ))}
        </ul>
      )}
      {undo !== undefined && <Undo sentence="The kits in the book have changed." action="Put it back" onUndo={undo} />}
      <NotSaved error={error} />
    </section>
  );
});
