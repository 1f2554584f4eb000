import type { CurrencyCode, LocalDate, Money, ZoneName } from '@twistwright/units';
import type { ChargeSettings } from './charge-settings.ts';
import type { LineSettings } from './line-settings.ts';

/** Who the book belongs to. All money in the book is in `currency`; all wall-clock times are in `zone` unless a gig says otherwise. */
export interface Business {
  readonly name: string;
  readonly currency: CurrencyCode;
  readonly zone: ZoneName;
  /** ISO 3166 alphabetic code of the country, such as `GB`; decides which required wordings are shown. */
  readonly country?: string;
  /** Where the business is, as it stands on papers. */
  readonly town?: string;
  readonly contact?: Contact;
  /** Ruler for lengths on screen. Recipes and size codes stay in inches. */
  readonly ruler?: 'in' | 'cm';
  readonly paper?: 'A4' | 'Letter';
}
export interface Contact {
  readonly person?: string;
  readonly phone?: string;
  readonly email?: string;
  readonly site?: string;
  readonly address?: string;
}

/** Everything that is a habit of the business and not of one gig. A missing key takes the shipped default (`defaultSettings`). */
export interface Settings {
  /** Habits at a line; other kinds of gig differ where that lies in their nature, and a gig may differ from all of it. */
  readonly line?: LineSettings;
  readonly charge?: ChargeSettings;
  readonly planning?: PlanningSettings;
  readonly pump?: Pump;
  readonly tools?: readonly ToolWish[];
}
export interface PlanningSettings {
  /** Chance, 0 to 1, that something asked for runs out; default 0.1. */
  readonly chanceOfRunningOut?: number;
  /** Working days kept to spare between arrival and gig; default 1. */
  readonly daysToSpare?: number;
  /** Replications per gig; default 2000. */
  readonly runs?: number;
  readonly seed?: number;
  /** Cost of money tied up in stock, share per year; default 0.08. */
  readonly holdingSharePerYear?: number;
  /** Instead of a share: minor units per piece and week. */
  readonly holdingPerPieceWeek?: number;
  /** The least amount and the share by which a promise counts as kept. */
  readonly promise?: ServicePromise;
  /** Most hours of making in one day before hands suffer; default 5. */
  readonly handHoursPerDay?: number;
  /** Budget for shopping, if any. */
  readonly budget?: Money;
  readonly holidays?: readonly LocalDate[];
}
/** "`share` of the guests wait at most `minutes`, and at least `served` of those who come are served." */
export interface ServicePromise {
  readonly waitMinutes: number;
  readonly shareWithin: number;
  readonly shareServed: number;
}
export interface Pump {
  readonly name: string;
  /** Air per stroke, litres. */
  readonly litresPerStroke: number;
}
/** A tool or sundry that must be in the case. */
export interface ToolWish {
  readonly item: string;
  readonly count: number;
  readonly when: 'always' | 'spare' | 'outdoors' | 'tables';
  /** What it is to a newcomer's first kit; if missing, `always` is a must-have, `spare` a spare, and the rest comes later. */
  readonly firstKit?: 'must-have' | 'spare' | 'later';
  readonly place: string;
}
