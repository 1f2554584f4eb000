import type { CurrencyCode, LocalDate, LocalTime, Money } from '@twistwright/units';

/** A shop. */
export interface Supplier {
  readonly id: string;
  readonly name: string;
  /** The business's currency if missing; another one is refused. */
  readonly currency?: CurrencyCode;
  /** Working days from order to door; 0 for a counter where things are collected the same day. */
  readonly leadWorkingDays: number;
  /** Orders after this time count as the next working day's. */
  readonly orderBefore?: LocalTime;
  readonly carriage: Money;
  /** Goods worth at least this travel free. */
  readonly freeFrom?: Money;
  /** Goods must be worth at least this. */
  readonly leastOrder?: Money;
  readonly closedOn?: readonly LocalDate[];
  readonly site?: string;
}

/** A supplier sells bags of `count` pieces of one item. */
export interface Offer {
  readonly id: string;
  readonly supplier: string;
  readonly item: string;
  /** Pieces in a bag. */
  readonly count: number;
  /** Price of one bag when fewer than the first break are bought. */
  readonly price: Money;
  /** All bags at `price` when at least `bags` of this offer are in one order; ascending. */
  readonly breaks?: readonly { readonly bags: number; readonly price: Money }[];
  /** Most bags that can be had. */
  readonly mostBags?: number;
  /** The supplier's own number. */
  readonly reference?: string;
  /** Bags with mixed colours: weights by item id; `item` is then the assortment. */
  readonly mix?: Readonly<Record<string, number>>;
}

/** Something ordered and not yet counted in. */
export interface Order {
  readonly id: string;
  readonly supplier: string;
  readonly orderedOn: LocalDate;
  /** Day it is expected at the door. */
  readonly expectedOn: LocalDate;
  readonly lines: readonly {
    readonly offer?: string;
    readonly item: string;
    readonly bags: number;
    readonly count: number;
    readonly price: Money;
  }[];
  readonly carriage: Money;
  readonly arrivedOn?: LocalDate;
}

/** A need entered by hand. */
export interface Need {
  readonly id: string;
  readonly item: string;
  readonly count: number;
  readonly by: LocalDate;
  readonly why?: string;
}
