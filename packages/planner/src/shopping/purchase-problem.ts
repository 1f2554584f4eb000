import type { CurrencyCode, LocalDate, LocalTime, Money } from '@twistwright/units';
import type { HandNeed, JointSamples } from '../needs/index.ts';

/** A purchase problem on the calendar, in plain data: who sells what, when it can be there, what is in store, and what the gigs may ask for. */
export interface PurchaseProblem {
  readonly currency: CurrencyCode;
  readonly today: LocalDate;
  /** Time of day now; orders after a supplier's cut-off count as the next working day's. Missing: the day is still young. */
  readonly now?: LocalTime;
  /** Working days kept to spare between arrival and gig. */
  readonly daysToSpare: number;
  /** Days on which nobody delivers. */
  readonly holidays: readonly LocalDate[];
  readonly suppliers: readonly PurchaseSupplier[];
  readonly items: readonly PurchaseItem[];
  readonly offers: readonly PurchaseOffer[];
  /** What the gigs ask for, jointly. Gigs before today are left out. */
  readonly samples: JointSamples;
  readonly byHand: readonly HandNeed[];
  /** Chance that nothing asked for runs out, 0 to 1. */
  readonly chance: number;
  readonly budget?: Money;
  /** Cost of money tied up in stock: a share of its value per year, or minor units per piece and week. */
  readonly holding?: { readonly sharePerYear: number } | { readonly perPieceWeek: number };
  /** Days that what is left after the last gig is expected to lie; default 30. */
  readonly keptAfterDays?: number;
}
export interface PurchaseSupplier {
  readonly id: string;
  readonly name: string;
  readonly currency?: CurrencyCode;
  /** Working days from order to door. */
  readonly leadWorkingDays: number;
  readonly orderBefore?: LocalTime;
  /** ISO weekdays on which it delivers; all working days if missing. */
  readonly deliveryDays?: readonly number[];
  readonly carriage: Money;
  readonly freeFrom?: Money;
  readonly leastOrder?: Money;
  readonly closedOn?: readonly LocalDate[];
}
export interface PurchaseItem {
  readonly id: string;
  readonly name: string;
  readonly stock: readonly { readonly count: number; readonly goodUntil?: LocalDate }[];
  readonly onOrder: readonly { readonly count: number; readonly expectedOn: LocalDate }[];
}
export interface PurchaseOffer {
  readonly id: string;
  readonly supplier: string;
  readonly item: string;
  /** Pieces in a bag. */
  readonly count: number;
  readonly price: Money;
  /** All bags at `price` from so many bags on. */
  readonly breaks?: readonly { readonly bags: number; readonly price: Money }[];
  readonly mostBags?: number;
  /** Days after arrival that it stays good. */
  readonly keepsDays?: number;
}
