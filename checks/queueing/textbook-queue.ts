import { type Arrivals, type Duration, type LineModel, type LineSamples, type Patience, runLine } from '@twistwright/planner';
import { type Spread, spreadOf } from '@twistwright/units';

/** A queue of the textbooks in the words of a gig: guests are customers, artists are servers, one figure is the service. Minutes are any unit of time. */
export interface TextbookQueue {
  readonly servers: number;
  readonly service: Duration;
  /** Batches a minute. */
  readonly perMinute: number;
  readonly batches?: readonly number[];
  readonly patience?: Patience;
  /** Length of a run and of its start that is left out. */
  readonly minutes: number;
  readonly warmUp: number;
}

export const textbookModel = (queue: TextbookQueue): LineModel =>
  gigWith(queue, {
    kind: 'stream',
    knots: [
      { minute: 0, perMinute: queue.perMinute },
      { minute: queue.minutes, perMinute: queue.perMinute },
    ],
  });

export function gigWith(queue: Omit<TextbookQueue, 'perMinute'>, arrivals: Arrivals): LineModel {
  return {
    end: queue.minutes,
    arrivals,
    ...(queue.batches === undefined ? {} : { partySizes: queue.batches }),
    patience: queue.patience ?? { kind: 'endless' },
    serving: 'shared line',
    artists: Array.from({ length: queue.servers }, (_, i) => ({ id: `server ${i + 1}`, pace: 1 })),
    closing: { kind: 'none' },
    items: [],
    figures: [{ id: 'service', share: 1, making: queue.service, colourways: [{ id: 'only', share: 1, colour: 0, lines: [] }] }],
    ifShort: { otherColour: 0, otherFigure: 0, search: 'by share' },
    pops: 'each piece',
    warmUpMinutes: queue.warmUp,
  };
}

/** What the textbooks ask for, over all customers, as a spread over the runs. */
export interface TextbookMeasures {
  readonly chanceOfWaiting: Spread;
  readonly chanceOfLeaving: Spread;
  /** Mean wait of everybody, those who left included. */
  readonly wait: Spread;
  readonly samples: LineSamples;
}
export function measure(queue: TextbookQueue, seed: number, runs: number): TextbookMeasures {
  const samples = runLine(textbookModel(queue), { seed, runs, keep: { items: false, figures: false, lengths: true, waits: false } });
  const perCustomer = (of: ArrayLike<number>): Spread =>
    spreadOf(Float64Array.from({ length: runs }, (_, run) => (of[run] ?? 0) / (samples.arrived[run] ?? 1)));
  return {
    chanceOfWaiting: perCustomer(samples.waited),
    chanceOfLeaving: perCustomer(samples.gaveUp),
    wait: perCustomer(samples.waitMinutesOfAll),
    samples,
  };
}

/** How far the known value lies from the simulated mean, in standard errors of that mean. */
export function standardErrorsApart(simulated: Spread, known: number): number {
  return Math.abs(simulated.mean - known) / simulated.error;
}
