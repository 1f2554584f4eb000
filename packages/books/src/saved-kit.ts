import type { LocalDate, Money } from '@twistwright/units';

/** What a newcomer wished when a kit was put together, in the names of the book. */
export interface SavedKitWishes {
  readonly budget: Money;
  /** Hours of work to cover before the next order. */
  readonly hours: number;
  readonly kind: 'tables' | 'parties' | 'small fairs';
  readonly guestsPerHour?: number;
  readonly mostColours?: number;
  readonly assortedBags?: boolean;
  readonly chanceOfOtherColour?: number;
  /** Figures that were considered; all with a recipe if missing. */
  readonly figures?: readonly string[];
  readonly shares?: Readonly<Record<string, number>>;
  readonly tools?: readonly { readonly item: string; readonly need: 'must-have' | 'spare' | 'later'; readonly count?: number }[];
  readonly have?: readonly { readonly item: string; readonly count: number }[];
  readonly forcedIn?: readonly string[];
  readonly takenOut?: readonly string[];
}

/** A first kit that was kept under a name: what was wished, and what came of it that day. */
export interface SavedKit {
  readonly id: string;
  readonly name: string;
  readonly savedOn: LocalDate;
  readonly wishes: SavedKitWishes;
  readonly lines: readonly { readonly offer: string; readonly bags: number }[];
  /** Tools of the kit, by item. */
  readonly tools: readonly string[];
}
