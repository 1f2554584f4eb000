import type { Book } from './book.ts';
import type { PlanningSettings } from './business.ts';
import type { ChargeSettings } from './charge-settings.ts';
import type { Gig, GigKind } from './gig.ts';
import type { LineSettings } from './line-settings.ts';

/** Line settings with nothing left open. */
export type FullLineSettings = LineSettings &
  Required<
    Pick<
      LineSettings,
      | 'partySizes'
      | 'joining'
      | 'patience'
      | 'choosing'
      | 'colourChoosingMinutes'
      | 'handingOver'
      | 'copycat'
      | 'fatiguePerHour'
      | 'weatherFactor'
      | 'chanceOfPop'
      | 'hiddenShare'
      | 'repeatShare'
      | 'breakPerHourMinutes'
      | 'closing'
      | 'overtimeMinutes'
      | 'outOfStock'
      | 'mostEach'
      | 'oneLine'
      | 'warmUpMinutes'
    >
  >;

/** Shipped habits of a line: common practice in the trade, no published source; the business replaces them with its own. */
const atALine: FullLineSettings = {
  partySizes: [0.3, 0.35, 0.2, 0.1, 0.05],
  joining: { free: 6, scale: 20 },
  patience: { law: 'log-normal', median: 30, sigma: 0.5 },
  choosing: { law: 'log-normal', median: 0.25, sigma: 0.4 },
  colourChoosingMinutes: 0.1,
  handingOver: { law: 'fixed', minutes: 0.12 },
  copycat: { figures: 1, colours: 0.5 },
  fatiguePerHour: 0.04,
  weatherFactor: 1,
  chanceOfPop: 0.05,
  hiddenShare: 0.15,
  repeatShare: 0.1,
  breakPerHourMinutes: 0,
  closing: { rule: 'work ahead', keptBackMinutes: 5 },
  overtimeMinutes: 0,
  outOfStock: 'other colour, then other figure',
  mostEach: 1,
  oneLine: true,
  warmUpMinutes: 0,
};
/** What differs from a line at the other kinds of gig. */
const byKind: Readonly<Record<GigKind, LineSettings>> = {
  line: {},
  party: {
    partySizes: [1],
    joining: { free: 1000 },
    patience: { law: 'endless' },
    copycat: { figures: 3, colours: 1 },
    mostEach: 10,
    hiddenShare: 0.1,
    repeatShare: 0.3,
    closing: { rule: 'none' },
  },
  tables: {
    partySizes: [0.1, 0.3, 0.3, 0.2, 0.1],
    joining: { free: 1000 },
    copycat: { figures: 2, colours: 1 },
    mostEach: 10,
    hiddenShare: 0,
    repeatShare: 0.05,
    closing: { rule: 'none' },
  },
  strolling: {
    partySizes: [0.2, 0.4, 0.25, 0.15],
    joining: { free: 1000 },
    patience: { law: 'endless' },
    mostEach: 10,
    hiddenShare: 0,
    repeatShare: 0.05,
    closing: { rule: 'none' },
  },
  'made to order': {
    partySizes: [1],
    joining: { free: 100_000 },
    patience: { law: 'endless' },
    choosing: { law: 'fixed', minutes: 0 },
    colourChoosingMinutes: 0,
    handingOver: { law: 'fixed', minutes: 0 },
    copycat: { figures: 0, colours: 0 },
    hiddenShare: 0,
    repeatShare: 0,
    closing: { rule: 'none' },
    outOfStock: 'disappointed',
  },
  class: {
    partySizes: [1],
    joining: { free: 100_000 },
    patience: { law: 'endless' },
    hiddenShare: 0,
    repeatShare: 0,
    closing: { rule: 'none' },
  },
};
/** Making time multiplied by weather, unless the settings say otherwise. Common practice, no published source. */
const weatherFactors = { mild: 1, hot: 1.25, cold: 2, wet: 1.15 } as const;

/** The habits that hold at this gig: shipped, then the business's, then what is different at its kind, then the gig's own. */
export function lineSettingsOf(book: Book, gig: Gig): FullLineSettings {
  const weather = gig.weather === undefined ? {} : { weatherFactor: weatherFactors[gig.weather] };
  return { ...atALine, ...book.settings?.line, ...byKind[gig.kind], ...weather, ...gig.line };
}

export type FullPlanningSettings = Required<Omit<PlanningSettings, 'holdingPerPieceWeek' | 'budget'>> &
  Pick<PlanningSettings, 'holdingPerPieceWeek' | 'budget'>;
const planning: FullPlanningSettings = {
  chanceOfRunningOut: 0.1,
  daysToSpare: 1,
  runs: 2000,
  seed: 1,
  holdingSharePerYear: 0.08,
  promise: { waitMinutes: 15, shareWithin: 0.9, shareServed: 0.95 },
  handHoursPerDay: 5,
  holidays: [],
};
/** Planning settings with the shipped values where the book says nothing. */
export const planningSettingsOf = (book: Book): FullPlanningSettings => ({ ...planning, ...book.settings?.planning });

/** Charge settings; nothing is charged where the book says nothing. */
export const chargeSettingsOf = (book: Book): ChargeSettings => book.settings?.charge ?? {};
