import type { LocalDate, LocalTime, Money, Problem } from '@twistwright/units';
import type { Proof } from './solve-purchases.ts';

/** What to buy, where and by when. Every number can be opened: lines carry what they stand on. */
export interface ShoppingPlan {
  readonly orders: readonly ShoppingOrder[];
  readonly goods: Money;
  readonly carriage: Money;
  /** Goods and carriage. */
  readonly total: Money;
  /** Cost of the money tied up until it is used. */
  readonly keeping: Money;
  /** Value of what is bought and, as expected, still there after the last gig. */
  readonly tiedUp: Money;
  /** Chance asked for, that nothing asked for runs out. */
  readonly wantedChance: number;
  /** Chance that the plan gives, on the sample it was made from. */
  readonly chance: number;
  /** The same on an independent sample, where one was handed in. */
  readonly chanceElsewhere?: number;
  /** Chance if nothing is bought. */
  readonly chanceNow: number;
  /** Pieces that are asked for and missing, in the mean over the runs: if nothing is bought, and with the plan. */
  readonly missingNow: number;
  readonly missing: number;
  readonly runs: number;
  readonly proof: Proof;
  /** The earliest day on which an order must go; missing if nothing is to be bought. */
  readonly firstOrderBy?: LocalDate;
  readonly ruleOfThumb?: RuleOfThumb;
}
export interface ShoppingOrder {
  readonly supplier: string;
  readonly name: string;
  /** Last safe day to order. */
  readonly orderBy: LocalDate;
  /** Cut-off on that day. */
  readonly before?: LocalTime;
  /** Day it is at the door when ordered on the last safe day. */
  readonly arrives: LocalDate;
  /** First day for which it is needed. */
  readonly neededOn: LocalDate;
  /** Working days from today to the last safe day. */
  readonly daysToSpare: number;
  readonly lines: readonly ShoppingLine[];
  readonly goods: Money;
  readonly carriage: Money;
  readonly total: Money;
  /** What is missing to free carriage; missing if it is free or never is. */
  readonly toFreeCarriage?: Money;
}
export interface ShoppingLine {
  readonly offer: string;
  readonly item: string;
  readonly name: string;
  readonly bags: number;
  /** Pieces in a bag. */
  readonly count: number;
  /** Price of a bag at this number of bags. */
  readonly price: Money;
  readonly total: Money;
  readonly because: Because;
}
/** Why bags of an item are there. */
export interface Because {
  /** Pieces in store and on order in time. */
  readonly have: number;
  readonly onOrder: number;
  /** Expected need over all gigs, pieces. */
  readonly mean: number;
  /** Pieces that would be missing in the greediest run that the plan covers (of all runs if it covers none), were none bought. */
  readonly short: number;
  /** Share of all runs in which it would run out, were none bought. */
  readonly chanceShort: number;
  /** Gigs and hand-entered needs behind it, largest share first. */
  readonly causes: readonly {
    readonly gig?: string;
    readonly reason?: string;
    readonly day: LocalDate;
    readonly mean: number;
    readonly share: number;
  }[];
}
/** Each item rounded up to whole bags at the cheapest single shop that has all of it, else each where it is cheapest. */
export interface RuleOfThumb {
  readonly kind: 'one shop' | 'each where cheapest';
  readonly supplier?: string;
  readonly bags: number;
  readonly total: Money;
  readonly chance: number;
  /** What it costs more than the plan; negative if less. */
  readonly dearerBy: Money;
}

/** Why there is no plan as asked, and the nearest one. */
export interface ShoppingRefusal {
  readonly problems: readonly Problem[];
  readonly nearest?: ShoppingPlan;
}

export interface CurvePoint {
  readonly wantedChance: number;
  readonly chance: number;
  readonly total: Money;
  readonly bags: number;
  readonly proof: Proof;
}
