import type { Gig } from '@twistwright/books';
import type { Spread } from '@twistwright/units';
import type { ForecastSummary } from '../plan/index.ts';
import { clockAt, count, counted, listed, minutes, partInWords, range } from './numbers.ts';

/** Sentences about one gig: the answer first, then its spread, then what stands out. */
export interface Said {
  readonly answer: string;
  readonly more: readonly string[];
}

/** What the forecast says, in the words of the gig's kind. */
export function sayForecast(gig: Gig, summary: ForecastSummary): Said {
  const clock = (minute: number): string => clockAt(gig.starts, minute);
  switch (gig.kind) {
    case 'line':
      return sayLine(gig, summary, clock);
    case 'party':
      return {
        answer:
          summary.unserved.p50 < 0.5
            ? `All ${count(summary.arrived.p50)} have their figure; the last is done at ${clock(summary.finish.p50)}.`
            : `About ${count(summary.served.p50)} of ${count(summary.arrived.p50)} get a figure before ${gig.ends}.`,
        more: [
          `In 8 parties of 10 the last is done ${between(summary.finish, clock)}, and ${range(summary.served)} figures are made.`,
          ...missed(summary),
        ],
      };
    case 'tables':
      return {
        answer: `About ${count(summary.served.p50)} of ${count(summary.arrived.p50)} guests at the tables get a figure before their food.`,
        more: [`In 8 evenings of 10 it is ${range(summary.served)}; they wait ${waited(summary)}.`, ...missed(summary)],
      };
    case 'strolling':
      return {
        answer: `Walking from group to group reaches about ${counted(summary.served.p50, 'guest')}${gig.guests === undefined ? '' : ` of ${count(summary.arrived.p50)}`}.`,
        more: [
          `In 8 times of 10 it is ${range(summary.served)}; the last is done at ${clock(summary.finish.p50)} (${range(summary.finish, clock)}).`,
          ...missed(summary),
        ],
      };
    case 'made to order':
      return {
        answer:
          summary.unserved.p90 < 0.5
            ? `All ${counted(summary.served.p50, 'piece')} are done at ${clock(summary.finish.p50)}.`
            : `About ${count(summary.served.p50)} of ${counted(summary.arrived.p50, 'piece')} are done by ${gig.ends}.`,
        more: [`In 8 times of 10 the last is done ${between(summary.finish, clock)}.`],
      };
    case 'class':
      return {
        answer: `The ${counted(gig.classPlan?.learners ?? summary.arrived.p50, 'learner')} are through at ${clock(summary.finish.p50)}.`,
        more: [`In 8 classes of 10 that is ${between(summary.finish, clock)}.`],
      };
  }
}

function sayLine(gig: Gig, summary: ForecastSummary, clock: (minute: number) => string): Said {
  const late = summary.turnedAway.p50;
  const closes =
    summary.chanceOfClosing >= 0.5
      ? `The line closes at ${clock(summary.closedAt.p50)} (${range(summary.closedAt, clock)})${late >= 0.5 ? `; about ${count(late)} come after that` : ''}.`
      : `The line stays open to the end in ${partInWords(1 - summary.chanceOfClosing)} afternoons.`;
  return {
    answer: `About ${count(summary.served.p50)} of ${count(summary.arrived.p50)} will be served; the last wait ${minutes(summary.lastWait.p50)}.`,
    more: [
      `In 8 afternoons of 10, ${range(summary.served)} guests are served, and the last of them wait ${waitRange(summary.lastWait)}.`,
      gig.line?.closing?.rule === 'none' ? 'The line is never closed.' : closes,
      ...missed(summary),
    ],
  };
}

/** "between 13:15 and 13:57", "at 17:26" where both ends are the same. */
function between(spread: Pick<Spread, 'p10' | 'p90'>, clock: (minute: number) => string): string {
  const [from, to] = [clock(spread.p10), clock(spread.p90)];
  return from === to ? `at ${from}` : `between ${from} and ${to}`;
}
/** "0 to 18 minutes", "7 minutes". */
const waitRange = (spread: Spread): string => (count(spread.p10) === count(spread.p90) ? minutes(spread.p50) : `${range(spread)} minutes`);
const waited = (summary: ForecastSummary): string =>
  summary.waits === undefined
    ? 'nothing'
    : `${minutes(summary.waits.p50)} in the middle, ${minutes(summary.waits.p90)} at most in 9 of 10 cases`;

/** Who goes without, where it is more than a guest in the middle run. */
function missed(summary: ForecastSummary): readonly string[] {
  const parts = [
    [summary.notJoined.p50, 'do not join because the line is long'],
    [summary.gaveUp.p50, 'give up waiting'],
    [summary.unserved.p50, 'are still waiting at the end'],
    [summary.disappointed.p50, 'find that their balloons have run out'],
  ] as const;
  const said = parts.filter(([value]) => value >= 0.5).map(([value, what]) => `${count(value)} ${what}`);
  return said.length === 0 ? [] : [`About ${listed(said)}.`];
}
