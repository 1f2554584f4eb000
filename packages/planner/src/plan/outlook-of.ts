import { type Book, type Gig, planningSettingsOf, stockOf } from '@twistwright/books';
import { fail, type LocalDate, ok, type Problem, type Result } from '@twistwright/units';
import { type Charge, chargeFor, pieceCosts } from '../charge/index.ts';
import { type HandNeed, type JointSamples, jointLevel, type Needs, needsOf, type StockOfItem } from '../needs/index.ts';
import { type PackingPlan, packFor, type Take } from '../packing/index.ts';
import { column, type Forecast, forecastGig } from './forecast-gig.ts';
import { jointSamplesOf } from './joint-samples-of.ts';
import { materialsOf } from './materials-of.ts';

export interface PlanOptions {
  readonly today: LocalDate;
  /** The settings' if missing. */
  readonly seed?: number;
  readonly runs?: number;
  /** Chance that something asked for runs out, 0 to 1. */
  readonly chanceOfRunningOut?: number;
  /** Last day that is looked at; the last gig's if missing. */
  readonly until?: LocalDate;
  /** Only this gig is planned in full; the others still count as needs. */
  readonly gig?: string;
  /** Called after each gig that was played, with how many of all are done: for a word about progress. */
  readonly onPlayed?: (done: number, all: number) => void;
}
/** The plan of one gig. */
export interface GigPlan {
  readonly gig: Gig;
  readonly forecast: Forecast;
  /** What this gig alone takes, jointly enough for the chosen chance. */
  readonly takes: ReadonlyMap<string, Take>;
  readonly packing: PackingPlan;
  readonly charge: Charge;
}
export interface Outlook {
  readonly today: LocalDate;
  readonly seed: number;
  readonly runs: number;
  readonly until: LocalDate;
  readonly chance: number;
  readonly gigs: readonly GigPlan[];
  /** Gigs that cannot be played, and why. */
  readonly problems: readonly Problem[];
  readonly samples: JointSamples;
  /** Needs of all gigs from today to `until`, and those entered by hand, jointly. */
  readonly needs: Needs;
}

/** Gigs from `today` on, to `until`, in order of time. */
export function comingGigs(book: Book, today: LocalDate, until?: LocalDate): readonly Gig[] {
  return book.gigs
    .filter((gig) => gig.day >= today && (until === undefined || gig.day <= until))
    .sort((a, b) => (a.day === b.day ? (a.starts < b.starts ? -1 : 1) : a.day < b.day ? -1 : 1));
}

/**
 * Forecast, needs, packing and charge of every coming gig; everything but the shopping, which asks a solver. Fails when there is no gig to plan or the
 * one that is asked for cannot be played.
 */
export function outlookOf(book: Book, options: PlanOptions): Result<Outlook> {
  const settings = planningSettingsOf(book);
  const seed = options.seed ?? settings.seed;
  const runs = options.runs ?? settings.runs;
  const chance = 1 - (options.chanceOfRunningOut ?? settings.chanceOfRunningOut);
  const wanted = options.gig === undefined ? undefined : book.gigs.find((gig) => gig.id === options.gig);
  if (options.gig !== undefined && wanted === undefined) return fail([noSuchGig(book, options.gig)]);
  const until = options.until ?? wanted?.day;
  const coming = comingGigs(book, options.today, until);
  const gigs = wanted === undefined || coming.includes(wanted) ? coming : [...coming, wanted];
  if (gigs.length === 0) return fail([noGig(book, options.today, until)]);
  const forecasts: Forecast[] = [];
  const problems: Problem[] = [];
  for (const [done, gig] of gigs.entries()) {
    const forecast = forecastGig(book, gig, { seed, runs });
    if (forecast.ok) forecasts.push(forecast.value);
    else problems.push(...forecast.error);
    options.onPlayed?.(done + 1, gigs.length);
  }
  if (forecasts.length === 0 || (wanted !== undefined && !forecasts.some((forecast) => forecast.gig === wanted))) return fail(problems);
  const samples = jointSamplesOf(forecasts);
  const last = until ?? gigs[gigs.length - 1]?.day ?? options.today;
  const stock = usableStock(book, options.today, last);
  const costs = pieceCosts(book, options.today);
  const weight = new Map([...costs].map(([item, { cost }]) => [item, cost]));
  const needs = needsOf(samples, { until: last, chance, stock, byHand: handNeeds(book, options.today, last), weight });
  const full = wanted === undefined ? forecasts : forecasts.filter((forecast) => forecast.gig === wanted);
  return ok({
    today: options.today,
    seed,
    runs,
    until: last,
    chance,
    problems,
    samples,
    needs,
    gigs: full.map((forecast): GigPlan => {
      const takes = takesOf(forecast, chance, weight);
      return {
        gig: forecast.gig,
        forecast,
        takes,
        packing: packFor(
          book,
          forecast.gig,
          stockOf(book.moves, options.today),
          takes,
          usedAt(needs, new Set(forecasts.slice(0, forecasts.indexOf(forecast)).map((earlier) => earlier.gig.id))),
        ),
        charge: chargeFor(book, forecast.gig, materialsOf(forecast, costs)),
      };
    }),
  });
}

/** Pieces that some gigs use in the mean, by item. */
export const usedAt = (needs: Needs, gigs: ReadonlySet<string>): ReadonlyMap<string, number> =>
  new Map(
    needs.items.map((need): [string, number] => [
      need.item,
      Math.round(need.causes.reduce((sum, cause) => sum + (cause.gig !== undefined && gigs.has(cause.gig) ? cause.mean : 0), 0)),
    ]),
  );

/** What one gig takes of each item: the middle run, and what is jointly enough for the chance. `weight` says which items are dear. */
export function takesOf({ model, samples }: Forecast, chance: number, weight: ReadonlyMap<string, number>): ReadonlyMap<string, Take> {
  const width = model.items.length;
  const level = jointLevel(
    samples.items,
    width,
    chance,
    model.items.map((item) => weight.get(item.id) ?? 1),
  );
  return new Map(
    model.items.map((item, i): [string, Take] => {
      const counts = column(samples.items, samples.runs, width, i).sort();
      return [item.id, { usual: counts[Math.floor((counts.length - 1) / 2)] ?? 0, enough: level.stock[i] ?? 0 }];
    }),
  );
}

/** Pieces that lie somewhere and stay good to the last day, and pieces on order that arrive by then. */
export function usableStock(book: Book, today: LocalDate, last: LocalDate): readonly StockOfItem[] {
  const have = new Map<string, number>();
  for (const line of stockOf(book.moves, today).lines)
    for (const lot of line.lots)
      if (lot.goodUntil === undefined || lot.goodUntil >= last) have.set(line.item, (have.get(line.item) ?? 0) + lot.count);
  const onOrder = new Map<string, number>();
  for (const order of book.orders) {
    if (order.arrivedOn !== undefined || order.expectedOn > last) continue;
    for (const line of order.lines) onOrder.set(line.item, (onOrder.get(line.item) ?? 0) + line.bags * line.count);
  }
  return book.items.map((item) => ({ item: item.id, have: have.get(item.id) ?? 0, onOrder: onOrder.get(item.id) ?? 0 }));
}

export const handNeeds = (book: Book, today: LocalDate, last: LocalDate): readonly HandNeed[] =>
  book.needs
    .filter((need) => need.by >= today && need.by <= last)
    .map((need) => ({ item: need.item, count: need.count, by: need.by, ...(need.why === undefined ? {} : { reason: need.why }) }));

const noSuchGig = (book: Book, id: string): Problem => ({
  code: 'gig.unknown',
  path: ['gigs'],
  sentence: `There is no gig "${id}" in the book.`,
  todo: `Its gigs are ${book.gigs.map((gig) => gig.id).join(', ') || '(none)'}.`,
  weight: 'error',
});
function noGig(book: Book, today: LocalDate, until: LocalDate | undefined): Problem {
  const next = comingGigs(book, today)[0];
  const last = [...book.gigs].sort((a, b) => (a.day < b.day ? 1 : -1))[0];
  return {
    code: 'gig.none-coming',
    path: ['gigs'],
    sentence: until === undefined ? `There is no gig from ${today} on.` : `There is no gig from ${today} to ${until}.`,
    todo:
      next !== undefined
        ? `The next one, "${next.id}", is on ${next.day}: look as far as that.`
        : last !== undefined
          ? `Add a gig; the last one, "${last.id}", was on ${last.day}.`
          : 'Add a gig.',
    weight: 'error',
  };
}
