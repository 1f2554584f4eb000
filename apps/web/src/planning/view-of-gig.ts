import { type Book, type Gig, planningSettingsOf, type Stock, stockOf } from '@twistwright/books';
import {
  chargeFor,
  expectedMinutesEach,
  type Forecast,
  handNeeds,
  jointSamplesOf,
  type LineModel,
  type LineSamples,
  materialsOf,
  type Needs,
  needsOf,
  type PieceCost,
  packFor,
  pieceCosts,
  runLine,
  seedOf,
  summaryOf,
  type Take,
  takesOf,
  usableStock,
  usedAt,
} from '@twistwright/planner';
import { type LocalDate, spreadOf } from '@twistwright/units';
import type { GigView, NeedView } from './gig-view.ts';

/** What stays the same while somebody plays with one gig. */
export interface PlanningDesk {
  readonly book: Book;
  readonly today: LocalDate;
  readonly stock: Stock;
  readonly costs: ReadonlyMap<string, PieceCost>;
  /** Price of a piece by item. */
  readonly weight: ReadonlyMap<string, number>;
  readonly seed: number;
}
export function deskFor(book: Book, today: LocalDate): PlanningDesk {
  const stock = stockOf(book.moves, today);
  const costs = pieceCosts(book, today, stock);
  return {
    book,
    today,
    stock,
    costs,
    weight: new Map([...costs].map(([item, { cost }]) => [item, cost])),
    seed: planningSettingsOf(book).seed,
  };
}

export const forecastOf = (gig: Gig, model: LineModel, samples: LineSamples): Forecast => ({
  gig,
  model,
  samples,
  summary: summaryOf(model, samples),
});
/** More tries of a gig, with the same luck as everywhere else for this seed. */
export const samplesOf = (desk: PlanningDesk, gig: Gig, model: LineModel, runs: number, firstRun = 0): LineSamples =>
  runLine(model, { seed: seedOf(desk.seed, gig.id), runs, firstRun });

/** The first runs of a forecast, for joint samples; only the items are cut, which is all that needs look at. */
const firstRuns = (forecast: Forecast, runs: number): Forecast => ({
  ...forecast,
  samples: { ...forecast.samples, runs, items: forecast.samples.items.subarray(0, runs * forecast.model.items.length) },
});

/** The page of a gig out of its forecast and those of the gigs before it. */
export function viewOfGig(
  desk: PlanningDesk,
  forecast: Forecast,
  earlier: readonly Forecast[],
  chance: number,
  isSettled: boolean,
): GigView {
  const { book, today, weight } = desk;
  const { gig, model } = forecast;
  const runs = Math.min(forecast.samples.runs, ...earlier.map((other) => other.samples.runs));
  const takes = takesOf(forecast, 1 - chance, weight);
  const needs = needsOf(jointSamplesOf([...earlier, forecast].map((each) => firstRuns(each, runs))), {
    until: gig.day,
    chance: 1 - chance,
    weight,
    stock: usableStock(book, today, gig.day),
    byHand: handNeeds(book, today, gig.day),
  });
  const goesBefore = usedAt(needs, new Set(earlier.map((other) => other.gig.id)));
  return {
    forecast: forecast.summary,
    isSettled,
    minutesEach: expectedMinutesEach(model),
    together: needs,
    needs: needViews(forecast, takes, needs),
    charge: chargeFor(book, gig, materialsOf(forecast, desk.costs)),
    packing: packFor(book, gig, desk.stock, takes, goesBefore),
  };
}

function needViews({ gig, model, samples }: Forecast, takes: ReadonlyMap<string, Take>, needs: Needs): readonly NeedView[] {
  const width = model.items.length;
  return model.items
    .map(({ id }, column): NeedView => {
      const together = needs.items.find((entry) => entry.item === id);
      const before = together?.causes.filter((cause) => cause.gig !== gig.id).reduce((sum, cause) => sum + cause.mean, 0) ?? 0;
      return {
        item: id,
        takes: spreadOf(Float64Array.from({ length: samples.runs }, (_, run) => samples.items[run * width + column] ?? 0)),
        before: Math.round(before),
        enough: takes.get(id)?.enough ?? 0,
        have: together?.have ?? 0,
        onOrder: together?.onOrder ?? 0,
        short: together?.short ?? 0,
      };
    })
    .filter((need) => need.takes.p90 > 0 || need.short > 0)
    .sort((a, b) => b.short - a.short || b.takes.mean - a.takes.mean);
}
