import type { Gig } from '@twistwright/books';
import { type Advice, sayAdvice } from '@twistwright/planner';
import { clockOf, minuteOf } from '@twistwright/units';
import type { ReactElement } from 'react';
import { useBook } from '../book/use-book.ts';
import { useAdvice } from '../planning/use-advice.ts';

/** How many hands the promise takes, how many may still wait at each time, and which menu gives this crowd the most. */
export function AdviceSection({ gig, onMenu }: { readonly gig: Gig; readonly onMenu: (figures: readonly string[]) => void }): ReactElement {
  const { answer, isWorking, ask, stop } = useAdvice(gig);
  return (
    <section>
      <h2>What would be better?</h2>
      {answer === undefined && (
        <>
          <p className="lead more">
            How many artists your promise takes, how many may still wait at each time, and which menu gives this crowd the most.
          </p>
          <div className="row noprint">
            {isWorking ? (
              <>
                <span role="status">Trying artists and menus …</span>
                <button type="button" className="btn plain" onClick={stop}>
                  Stop
                </button>
              </>
            ) : (
              <button type="button" className="btn" onClick={ask}>
                Work it out
              </button>
            )}
          </div>
        </>
      )}
      {answer !== undefined && 'problems' in answer && <p className="err more">{answer.problems[0]?.sentence}</p>}
      {answer !== undefined && 'advice' in answer && <Told gig={gig} advice={answer.advice} onMenu={onMenu} />}
    </section>
  );
}

function Told({
  gig,
  advice,
  onMenu,
}: {
  readonly gig: Gig;
  readonly advice: Advice;
  readonly onMenu: (figures: readonly string[]) => void;
}): ReactElement {
  const { book } = useBook();
  const nameOf = (figure: string): string => book.figures.find((entry) => entry.id === figure)?.name.toLowerCase() ?? figure;
  return (
    <>
      <div role="status">
        {sayAdvice(gig, advice, nameOf).map((sentence) => (
          <p key={sentence} className="lead more">
            {sentence}
          </p>
        ))}
      </div>
      {advice.menu.drop.length > 0 && advice.menu.gain >= 0.005 && (
        <div className="row noprint">
          <button type="button" className="btn" onClick={() => onMenu(advice.menu.keep)}>
            Try this menu
          </button>
        </div>
      )}
      {gig.kind === 'line' && <ClosingCard gig={gig} advice={advice} />}
    </>
  );
}

/** Every quarter of an hour, and every five minutes in the last half hour. */
function ClosingCard({ gig, advice }: { readonly gig: Gig; readonly advice: Advice }): ReactElement {
  const starts = minuteOf(gig.starts);
  const end = minuteOf(gig.ends) - starts;
  const rows = advice.card.filter((row) => row.minute % 15 === 0 || row.minute >= end - 30);
  return (
    <details className="because">
      <summary>Closing card</summary>
      <table>
        <caption className="skip">How many may still wait, by the clock</caption>
        <thead>
          <tr>
            <th scope="col">At</th>
            <th scope="col" className="num">
              may still wait
            </th>
          </tr>
        </thead>
        <tbody>
          {rows.map((row) => (
            <tr key={row.minute}>
              <th scope="row">{clockOf(starts + row.minute)}</th>
              <td className="num">
                {row.mayWait} {row.mayWait === 1 ? 'guest' : 'guests'}
              </td>
            </tr>
          ))}
        </tbody>
      </table>
    </details>
  );
}
