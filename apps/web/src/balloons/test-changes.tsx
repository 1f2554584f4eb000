import type { Book } from '@twistwright/books';
import { type FitChange, fitChanges, isNewVerdict, sayFitChange } from '@twistwright/planner';
import type { Calibration } from '@twistwright/repertoire';
import { showLength } from '@twistwright/units';
import { type ReactElement, useMemo } from 'react';
import { counted, sentence } from '../words/counted.ts';
import { type Ruler, weightSentence } from './balloon-words.ts';

interface TestChangesProps {
  readonly book: Book;
  /** With the test that is being written. */
  readonly after: Book;
  readonly before: Calibration;
  readonly now: Calibration;
  readonly ruler: Ruler;
  readonly isWritten: boolean;
}

/** What the test that is being written does to the numbers, and to the figures. */
export function TestChanges({ book, after, before, now, ruler, isWritten }: TestChangesProps): ReactElement {
  const changes = useMemo(() => (isWritten ? fitChanges(book, after) : []), [book, after, isWritten]);
  if (!isWritten)
    return (
      <div className="testoutcome">
        <p className="lead">Write a measurement, and what it changes stands here.</p>
      </div>
    );
  const { flat, stretch } = now.working;
  const old = before.working;
  return (
    <div className="testoutcome" role="status">
      <h3>
        With this test: {showLength(flat.mean, ruler)} flat, {showLength(flat.mean * stretch.mean, ruler)} blown up.
      </h3>
      <p className="sp">
        Before: {showLength(old.flat.mean, ruler)} and {showLength(old.flat.mean * old.stretch.mean, ruler)}.
      </p>
      <p>{weightSentence(now)}</p>
      <FigureChanges changes={changes} ruler={ruler} />
    </div>
  );
}

/** Of figures whose verdict stays as it is. */
const mostOthers = 3;

function FigureChanges({ changes, ruler }: { readonly changes: readonly FitChange[]; readonly ruler: Ruler }): ReactElement {
  const verdicts = changes.filter(isNewVerdict);
  const others = changes.slice(verdicts.length);
  const shown = [...verdicts, ...others.slice(0, mostOthers)];
  const more = others.length - Math.min(others.length, mostOthers);
  return (
    <>
      <h3>
        {changes.length === 0
          ? 'No figure changes by more than a hand would notice.'
          : verdicts.length === 0
            ? 'No verdict changes.'
            : `${sentence(counted(verdicts.length, 'verdict'))} ${verdicts.length === 1 ? 'changes' : 'change'}.`}
      </h3>
      <ul className="fitchanges">
        {shown.map((change) => (
          <li key={`${change.figure.id} ${change.way?.id}`} className={change.after.verdict === 'fits' ? '' : 'tight'}>
            {sayFitChange(change, ruler)}
          </li>
        ))}
      </ul>
      {more > 0 && <p className="note">{sentence(counted(more, 'more is', 'more are'))} blown up a little differently.</p>}
    </>
  );
}
