import type { CurrencyCode, Money, Spread } from '@twistwright/units';

/** What a newcomer might buy, for whom, and with how much money: plain data, all money in minor units of `currency`. */
export interface KitProblem {
  readonly currency: CurrencyCode;
  readonly items: readonly KitItem[];
  readonly figures: readonly KitFigure[];
  readonly offers: readonly KitOffer[];
  readonly suppliers: readonly KitSupplier[];
  readonly tools: readonly KitTool[];
  /** Pieces of items, and tools (count 1), that are there already. */
  readonly have: readonly { readonly item: string; readonly count: number }[];
  readonly wishes: KitWishes;
}
/** A balloon by size, colour, finish and print, or a sundry that figures take. */
export interface KitItem {
  readonly id: string;
  readonly name: string;
  readonly size?: string;
  readonly colour?: string;
  /** Missing is the standard finish. */
  readonly finish?: string;
  readonly print?: string;
}
export interface KitFigure {
  readonly id: string;
  readonly name: string;
  /** Asking share beside the other figures; need not sum to one. */
  readonly share: number;
  /** Roles that are filled each by itself: any colour of one goes with any colour of another. */
  readonly roles: readonly KitRole[];
  /** Roles whose colours belong together: of each, any one of the listed ways will do. */
  readonly combinations?: readonly KitCombination[];
  /** Sundries each one takes. */
  readonly extras?: readonly { readonly item: string; readonly count: number }[];
}
/** A role that a colour fills: so many pieces of one size, finish and print, all in one colour. */
export interface KitRole {
  readonly name: string;
  readonly size: string;
  readonly finish?: string;
  readonly print?: string;
  readonly pieces: number;
  /** Colours that will do, each in the finish of the role unless it has its own; `preference` is the share of guests who ask for it first (need not sum to one). */
  readonly colours: readonly { readonly colour: string; readonly finish?: string; readonly preference: number }[];
}
/** Roles that are not filled independently, such as a white body with a pink mane or a sky one with a white mane, but no mixture of them. */
export interface KitCombination {
  readonly name: string;
  /** Any of these is enough; `preference` is the share of guests who ask for it first (need not sum to one). */
  readonly ways: readonly { readonly pieces: readonly KitPieces[]; readonly preference: number }[];
}
export interface KitPieces {
  readonly size: string;
  readonly colour: string;
  /** Missing is the standard finish. */
  readonly finish?: string;
  readonly print?: string;
  readonly count: number;
}
export interface KitOffer {
  readonly id: string;
  readonly supplier: string;
  readonly item: string;
  /** Pieces in a bag. */
  readonly count: number;
  /** Price of one bag where fewer than the first break are bought. */
  readonly price: Money;
  /** All bags at this price when at least so many of the offer are bought; ascending. */
  readonly breaks?: readonly { readonly bags: number; readonly price: Money }[];
  readonly mostBags?: number;
  /** An assorted bag: weight of each item in it; how many of which are in a bag is a matter of chance. */
  readonly mix?: Readonly<Record<string, number>>;
}
export interface KitSupplier {
  readonly id: string;
  readonly name: string;
  /** That of the problem if missing; another one is refused. */
  readonly currency?: CurrencyCode;
  readonly shipping: Money;
  /** Goods worth at least this are sent free. */
  readonly freeFrom?: Money;
  /** Goods must be worth at least this, or nothing is sent. */
  readonly leastOrder?: Money;
}
/** A tool or sundry. Where offers have its id as their item, any of them will do; else it is bought anywhere, or from `supplier`, at `price`. */
export interface KitTool {
  readonly id: string;
  readonly name: string;
  /** Bought before any balloon; bought with money that is left; only named. */
  readonly need: 'must-have' | 'spare' | 'later';
  /** Pieces that are needed, default 1; more may come in a pack. */
  readonly count?: number;
  /** For all that are needed; looked at only where no offer sells it. */
  readonly price?: Money;
  readonly supplier?: string;
}
export interface KitWishes {
  readonly budget: Money;
  /** Hours of work to cover before the next order. */
  readonly hours: number;
  /** Guests who ask for a figure in an hour; that of the kind of work if missing. */
  readonly guestsPerHour?: number;
  readonly kind: KitWork;
  /** Most colours of balloons to buy, those already there not counted. */
  readonly mostColours?: number;
  /** Default true. */
  readonly assortedBags?: boolean;
  /** Chance that a guest whose first colour is missing takes another that will do; {@link usualChanceOfOtherColour} if missing. */
  readonly chanceOfOtherColour?: number;
  /** Offers to buy in any case, one bag each. */
  readonly forcedIn?: readonly string[];
  /** Offers, items or tools that are not to be bought. */
  readonly takenOut?: readonly string[];
}
export type KitWork = 'tables' | 'parties' | 'small fairs';
/**
 * Guests an hour at a newcomer's hands: about half of a practised entertainer's 24 guests at 9 tables, 16 at a party and 25 in a line.
 * Common practice, no published source.
 */
export const guestsPerHourOf: Readonly<Record<KitWork, number>> = { tables: 10, parties: 8, 'small fairs': 12 };

/** Four of five guests whose colour is missing take another. Common practice, no published source. */
export const usualChanceOfOtherColour = 0.8;

/** What to buy, why, and how far it goes. */
export interface Kit {
  readonly lines: readonly KitLine[];
  readonly tools: readonly {
    readonly tool: string;
    readonly name: string;
    /** The offer that it is bought by; missing where it is bought anywhere. */
    readonly offer?: string;
    readonly bags: number;
    readonly pieces: number;
    /** For all of it. */
    readonly price: Money;
    readonly supplier?: string;
    readonly why: string;
  }[];
  readonly shops: readonly { readonly supplier: string; readonly name: string; readonly goods: Money; readonly shipping: Money }[];
  readonly budget: Money;
  /** Goods and shipping together. */
  readonly spent: Money;
  /** Expected share of requests met over the hours, 0 to 1. */
  readonly met: number;
  /** Expected share of requests met in the colour asked for first. */
  readonly metFirstChoice: number;
  /** No purchase for this money meets a larger share. */
  readonly metAtMost: number;
  readonly standing: Standing;
  /** Expected requests over the hours. */
  readonly requests: number;
  readonly figures: readonly KitFigureMet[];
  readonly leftOut: readonly LeftOut[];
  /** Colours bought. */
  readonly colours: readonly string[];
  /** What was assumed of a guest whose colour is missing: the chance of taking another that will do. */
  readonly chanceOfOtherColour: number;
}
/** How good the answer is: the best there is, at most a share away from it, in words for a sentence. */
export type Standing = { readonly kind: 'proven' } | { readonly kind: 'within'; readonly share: number };
export interface KitLine {
  readonly offer: string;
  readonly supplier: string;
  readonly name: string;
  readonly bags: number;
  readonly pieces: number;
  /** Of one bag, at the break that so many bags reach. */
  readonly price: Money;
  readonly cost: Money;
  /** Figures that can be made with it and could not without it. */
  readonly unlocks: readonly string[];
  /** Figures of the kit in which it fills a role. */
  readonly serves: readonly string[];
  /** Share of requests that would be lost without this line. */
  readonly lossWithout: number;
  /** One sentence: what it is there for. */
  readonly why: string;
  /** For an assorted bag: what may be in it. */
  readonly mix?: readonly MixChance[];
}
export interface MixChance {
  readonly item: string;
  readonly expected: number;
  /** Nine times in ten there are at least so many. */
  readonly atLeast: number;
  readonly chanceOfNone: number;
}
export interface KitFigureMet {
  readonly figure: string;
  readonly name: string;
  /** Share of all requests that ask for it. */
  readonly share: number;
  /** Share of those that are met. */
  readonly met: number;
}
export interface LeftOut {
  readonly figure: string;
  readonly name: string;
  readonly share: number;
  /** The cheapest that would bring it in, shipping included; missing if no purchase can. */
  readonly cost?: Money;
  readonly offers: readonly string[];
}
/** How long the kit lasts when guests really come: middle and spread over seeded runs. */
export interface KitLasting {
  /** Share of the requests over the hours that are met. */
  readonly met: Spread;
  /** Figures made over the hours. */
  readonly figures: Spread;
  /** Guests asked until the first who could not be served because something had run out (not because it was never bought). */
  readonly guestsUntilShort: Spread;
  readonly hoursUntilShort: Spread;
}
