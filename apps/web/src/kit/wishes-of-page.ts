import type { Book, SavedKit } from '@twistwright/books';
import { type BookKitWishes, guestsPerHourOf, type KitPlan, type KitWork, usualChanceOfOtherColour } from '@twistwright/planner';
import type { LocalDate } from '@twistwright/units';
import type { UnpricedWishes } from './kit-ask.ts';

/** What stands on the page about the newcomer. */
export interface PageWishes {
  readonly kind: KitWork;
  readonly hours: number;
  /** Guests in an hour; missing: as usual at this kind of work. */
  readonly guests: number | undefined;
  /** 0: as many as there are. */
  readonly mostColours: number;
  readonly assortedBags: boolean;
  /** Chance that a guest whose first colour is missing takes another that will do. */
  readonly takesOther: number;
  /** Figures that are not wanted. */
  readonly unwanted: readonly string[];
  readonly shares: Readonly<Record<string, number>> | undefined;
  readonly have: NonNullable<BookKitWishes['have']>;
  readonly forcedIn: readonly string[];
  readonly takenOut: readonly string[];
}
export const firstWishes: PageWishes = {
  kind: 'parties',
  hours: 12,
  guests: undefined,
  mostColours: 0,
  assortedBags: true,
  takesOther: usualChanceOfOtherColour,
  unwanted: [],
  shares: undefined,
  have: [],
  forcedIn: [],
  takenOut: [],
};
export const guestsOf = ({ kind, guests }: PageWishes): number => guests ?? guestsPerHourOf[kind];
/** Figures that a kit can be for. */
export const kitFigures = (book: Book): Book['figures'] => book.figures.filter((figure) => figure.recipe !== undefined);

export function wishesOf(book: Book, page: PageWishes): UnpricedWishes {
  const figures = kitFigures(book);
  return {
    hours: page.hours,
    kind: page.kind,
    ...(page.guests === undefined ? {} : { guestsPerHour: page.guests }),
    ...(page.mostColours === 0 ? {} : { mostColours: page.mostColours }),
    ...(page.assortedBags ? {} : { assortedBags: false }),
    ...(page.takesOther === usualChanceOfOtherColour ? {} : { chanceOfOtherColour: page.takesOther }),
    ...(page.unwanted.length === 0
      ? {}
      : { figures: figures.filter((figure) => !page.unwanted.includes(figure.id)).map((figure) => figure.id) }),
    ...(page.shares === undefined ? {} : { shares: page.shares }),
    ...(page.have.length === 0 ? {} : { have: page.have }),
    ...(page.forcedIn.length === 0 ? {} : { forcedIn: page.forcedIn }),
    ...(page.takenOut.length === 0 ? {} : { takenOut: page.takenOut }),
  };
}

/** The page as it was when a kit was saved; figures that have come into the book since are not wanted there. */
export function pageOfSaved(book: Book, { wishes }: SavedKit): PageWishes {
  const { figures } = wishes;
  return {
    kind: wishes.kind,
    hours: wishes.hours,
    guests: wishes.guestsPerHour,
    mostColours: wishes.mostColours ?? 0,
    assortedBags: wishes.assortedBags ?? true,
    takesOther: wishes.chanceOfOtherColour ?? usualChanceOfOtherColour,
    unwanted: figures === undefined ? [] : kitFigures(book).flatMap(({ id }) => (figures.includes(id) ? [] : [id])),
    shares: wishes.shares,
    have: wishes.have ?? [],
    forcedIn: wishes.forcedIn ?? [],
    takenOut: wishes.takenOut ?? [],
  };
}

export const savedKitOf = (
  { kit }: KitPlan,
  wishes: BookKitWishes,
  fact: { readonly id: string; readonly name: string; readonly savedOn: LocalDate },
): SavedKit => ({
  ...fact,
  wishes,
  lines: kit.lines.map(({ offer, bags }) => ({ offer, bags })),
  tools: kit.tools.map(({ tool }) => tool),
});
