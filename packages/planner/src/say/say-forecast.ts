import type { Gig } from '@twistwright/books';
import type { ForecastSummary } from '../plan/index.ts';
import { chanceInWords, clockAt, count, counted, listed, minutes, range } from './numbers.ts';

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
          `In 8 parties of 10 the last is done between ${clock(summary.finish.p10)} and ${clock(summary.finish.p90)}, and ${range(summary.served)} figures are made.`,
          ...missed(summary),
        ],
      };
    case 'tables':
      return {
        answer: `About ${count(summary.served.p50)} of ${count(summary.arrived.p50)} guests at the tables get a figure before their food.`,
        more: [`In 8 evenings of 10 between ${range(summary.served)} do; they wait ${waited(summary)}.`, ...missed(summary)],
      };
    case 'strolling':
      return {
        answer: `Walking from group to group reaches about ${counted(summary.served.p50, 'guest')}${gig.guests === undefined ? '' : ` of ${count(summary.arrived.p50)}`}.`,
        more: [
          `In 8 of 10 times between ${range(summary.served)}; the last is done at ${clock(summary.finish.p50)} (${clock(summary.finish.p10)} to ${clock(summary.finish.p90)}).`,
          ...missed(summary),
        ],
      };
    case 'made to order':
      return {
        answer:
          summary.unserved.p90 < 0.5
            ? `All ${counted(summary.served.p50, 'piece')} are done at ${clock(summary.finish.p50)}.`
            : `About ${count(summary.served.p50)} of ${counted(summary.arrived.p50, 'piece')} are done by ${gig.ends}.`,
        more: [`In 8 of 10 times the last is done between ${clock(summary.finish.p10)} and ${clock(summary.finish.p90)}.`],
      };
    case 'class':
      return {
        answer: `The ${counted(gig.classPlan?.learners ?? summary.arrived.p50, 'learner')} are through at ${clock(summary.finish.p50)}.`,
        more: [`In 8 classes of 10 between ${clock(summary.finish.p10)} and ${clock(summary.finish.p90)}.`],
      };
  }
}

function sayLine(gig: Gig, summary: ForecastSummary, clock: (minute: number) => string): Said {
  const late = summary.turnedAway.p50;
  const closes =
    summary.chanceOfClosing >= 0.5
      ? `The line closes at ${clock(summary.closedAt.p50)} (${clock(summary.closedAt.p10)} to ${clock(summary.closedAt.p90)})${late >= 0.5 ? `; about ${count(late)} come after that` : ''}.`
      : `The line stays open to the end in ${chanceInWords(1 - summary.chanceOfClosing)} afternoons.`;
  return {
    answer: `About ${count(summary.served.p50)} of ${count(summary.arrived.p50)} will be served; the last wait ${minutes(summary.lastWait.p50)}.`,
    more: [
      `In 8 afternoons of 10 between ${range(summary.served)} guests are served, and the last of them wait ${range(summary.lastWait)} minutes.`,
      gig.line?.closing?.rule === 'none' ? 'The line is never closed.' : closes,
      ...missed(summary),
    ],
  };
}

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
