import { type FormEvent, type ReactElement, type ReactNode, useState } from 'react';
import type { Change } from '../book/change.ts';
import { useChangeBook } from '../book/use-book.ts';
import { NotSaved } from '../forms/saving.tsx';
import { Undo } from '../parts/undo.tsx';

export interface ListSectionProps {
  readonly heading: string;
  readonly rows: readonly { readonly id: string; readonly name: string; readonly shown: ReactNode; readonly remove: Change }[];
  /** What the button of the form says. */
  readonly add: string;
  /** The change that the form asks for; undefined while something in it is wrong. */
  readonly onAdd: () => Change | undefined;
  /** Fields of the form. */
  readonly children: ReactNode;
  /** A way to begin, shown while the list is empty. */
  readonly begin?: { readonly text: string; readonly changes: readonly Change[] };
}

/** A short list of the book with a form to add to it; what is taken off can be put back. */
export function ListSection({ heading, rows, add, onAdd, children, begin }: ListSectionProps): ReactElement {
  const { change, undo, error, isSaving } = useChangeBook();
  const [removed, setRemoved] = useState('');
  const save = (event: FormEvent): void => {
    event.preventDefault();
    const wanted = onAdd();
    if (wanted !== undefined) change(wanted);
  };
  return (
    <section>
      <h2>{heading}</h2>
      {rows.length > 0 && (
        <ul className="short-list">
          {rows.map((row) => (
            <li key={row.id}>
              <span>{row.shown}</span>
              <button
                type="button"
                className="btn plain"
                aria-label={`Take off ${row.name}`}
                disabled={isSaving}
                onClick={() => {
                  change(row.remove);
                  setRemoved(`${row.name} is off the list.`);
                }}
              >
                Take off
              </button>
            </li>
          ))}
        </ul>
      )}
      {removed !== '' && undo !== undefined && error === null && (
        <Undo
          sentence={removed}
          action="Put it back"
          onUndo={() => {
            undo();
            setRemoved('');
          }}
        />
      )}
      {rows.length === 0 && begin !== undefined && (
        <div className="row more">
          <button
            type="button"
            className="btn"
            onClick={() => {
              for (const each of begin.changes) change(each);
            }}
          >
            {begin.text}
          </button>
        </div>
      )}
      <form className="form" onSubmit={save} noValidate>
        {children}
        <div className="wide row">
          <button type="submit" className="btn" disabled={isSaving}>
            {add}
          </button>
        </div>
      </form>
      <NotSaved error={error} />
    </section>
  );
}
