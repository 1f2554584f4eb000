import { longDate } from '@twistwright/units';
import { type ReactElement, useState } from 'react';
import { useBook, useChangeBook } from '../book/use-book.ts';
import { NotSaved } from '../forms/saving.tsx';
import { Undo } from '../parts/undo.tsx';
import { counted, sentence } from '../words/counted.ts';
import { measuredWords, whoseWords } from './balloon-words.ts';

/** Every test in the book, the newest first; one that was wrong can be taken out. */
export function KeptTests(): ReactElement | null {
  const { book } = useBook();
  const { change, undo, isSaving, error } = useChangeBook();
  const [isTakenOut, setTakenOut] = useState(false);
  const tests = (book.balloonTests ?? []).toSorted((a, b) => (a.day < b.day ? 1 : a.day > b.day ? -1 : 0));
  const ruler = book.business.ruler ?? 'in';
  return (
    <section>
      <h2>{tests.length === 0 ? 'No test is in the book yet.' : `${sentence(counted(tests.length, 'test'))} in the book.`}</h2>
      {tests.length > 0 && (
        <ul className="kepttests">
          {tests.map((test) => (
            <li key={test.id}>
              <b>
                {test.size} {whoseWords(test.maker)}
              </b>
              <span>
                {measuredWords(test, ruler)}.{test.note === undefined ? '' : ` ${sentence(test.note)}.`}
                <span className="note">{longDate(test.day)}</span>
              </span>
              <button
                type="button"
                className="btn plain"
                aria-label={`Take it out: ${test.size} ${whoseWords(test.maker)}, ${longDate(test.day)}`}
                disabled={isSaving}
                onClick={() => change({ list: 'balloonTests', remove: test.id }, () => setTakenOut(true))}
              >
                Take it out
              </button>
            </li>
          ))}
        </ul>
      )}
      {isTakenOut && undo !== undefined && (
        <Undo
          sentence="The test is out of the book; nothing follows it any more."
          action="Put it back"
          onUndo={() => {
            undo();
            setTakenOut(false);
          }}
        />
      )}
      <NotSaved error={error} />
    </section>
  );
}
