import { type Book, balloonFor, balloonsByLook, type Colourway, type Figure, nameOfItem } from '@twistwright/books';
import { type PieceNeed, piecesOf, sizeInWords } from '@twistwright/repertoire';
import type { Problem } from '@twistwright/units';
import { pieceCosts } from '../charge/index.ts';
import { airOfBook, type FigureFacts, figureFacts } from './figure-facts.ts';

/** One thing that a colourway takes. */
export interface Taking {
  /** Item of the book; missing where the book has no such balloon. */
  readonly item?: string;
  readonly name: string;
  readonly size?: string;
  readonly colour?: string;
  /** Pieces for one figure. */
  readonly count: number;
  readonly have: number;
}
/** Another colour for a role, from what there is. */
export interface Substitute {
  readonly role: string;
  readonly from: string;
  readonly to: string;
}
export interface MakeableWay {
  readonly colourway: string;
  readonly takes: readonly Taking[];
  /** How many figures the stock gives when all are made in this colourway. */
  readonly makes: number;
  /** What there is too little of for even one. */
  readonly lacking: readonly Taking[];
  /** Other colours with which at least one can be made; only when `makes` is 0, and empty when no colours help. */
  readonly substitutes: readonly Substitute[];
  /** What one costs, in minor units with fractions; missing when a price is not known. */
  readonly cost?: number;
}
export interface MakeableFigure {
  readonly figure: Figure;
  /** Missing when the recipe cannot be read; then `problems` says why. */
  readonly facts?: FigureFacts;
  readonly problems: readonly Problem[];
  readonly ways: readonly MakeableWay[];
  /** The most of one colourway. Figures that take nothing can be made without end. */
  readonly makes: number;
}

/** Figures that take no balloons and no sundries. */
export const withoutEnd = Number.POSITIVE_INFINITY;

/**
 * What can be made from a stock: for each figure of the book and each of its colourways how many, what is lacking, and which colours that
 * are there would do instead. Each figure is looked at as if the whole stock were for it.
 * @param counts pieces by item id
 */
export function makeableFigures(book: Book, counts: ReadonlyMap<string, number>): readonly MakeableFigure[] {
  const kitchen = new Kitchen(book, counts);
  return book.figures.map((figure) => kitchen.figure(figure));
}

class Kitchen {
  readonly #book: Book;
  readonly #counts: ReadonlyMap<string, number>;
  readonly #balloons: ReadonlyMap<string, string>;
  readonly #costs: ReadonlyMap<string, { readonly cost: number }>;
  readonly #air: ReturnType<typeof airOfBook>;

  constructor(book: Book, counts: ReadonlyMap<string, number>) {
    this.#book = book;
    this.#counts = counts;
    this.#balloons = balloonsByLook(book);
    this.#costs = pieceCosts(book);
    this.#air = airOfBook(book);
  }

  figure(figure: Figure): MakeableFigure {
    const facts = figureFacts(this.#book, figure, { air: this.#air });
    if (!facts.ok) return { figure, problems: facts.error, ways: [], makes: 0 };
    const needs = piecesOf(facts.value.recipe);
    const given: readonly Colourway[] =
      figure.colourways.length > 0 ? figure.colourways : needs.length > 0 ? [] : [{ id: 'plain', name: 'Plain', fill: {} }];
    const ways = given.map((way) => this.#way(figure, needs, way));
    return { figure, facts: facts.value, problems: [], ways, makes: Math.max(0, ...ways.map((way) => way.makes)) };
  }

  #way(figure: Figure, needs: readonly PieceNeed[], way: Colourway): MakeableWay {
    const takes = this.#takes(figure, needs, way);
    const makes = makesOf(takes);
    const costs = takes.map((taking) => (taking.item === undefined ? undefined : this.#costs.get(taking.item)?.cost));
    const known = takes.flatMap((taking, i) => (costs[i] === undefined ? [] : [taking.count * costs[i]]));
    return {
      colourway: way.id,
      takes,
      makes,
      lacking: takes.filter((taking) => taking.have < taking.count),
      substitutes: makes > 0 ? [] : this.#substitutes(figure, needs, way),
      ...(known.length === takes.length ? { cost: known.reduce((sum, cost) => sum + cost, 0) } : {}),
    };
  }

  #takes(figure: Figure, needs: readonly PieceNeed[], way: Colourway): readonly Taking[] {
    const takes = new Map<string, Taking>();
    const add = (key: string, taking: Omit<Taking, 'count' | 'have'>, count: number): void => {
      const have = taking.item === undefined ? 0 : Math.max(0, this.#counts.get(taking.item) ?? 0);
      takes.set(key, { ...taking, have, count: (takes.get(key)?.count ?? 0) + count });
    };
    for (const piece of needs) {
      const balloon = balloonFor(piece, way, this.#balloons);
      const colour = way.fill[piece.role];
      const look = balloon?.look ?? `${sizeInWords(piece.size)} in the ${piece.role} colour`;
      const item = balloon?.item === undefined ? undefined : this.#book.items.find((entry) => entry.id === balloon.item);
      const name = item === undefined ? look : nameOfItem(item, this.#book.colours);
      const kind = { name, size: piece.size, ...(colour === undefined ? {} : { colour }) };
      add(item?.id ?? look, item === undefined ? kind : { ...kind, item: item.id }, piece.count);
    }
    for (const extra of figure.extras ?? []) {
      const item = this.#book.items.find((entry) => entry.id === extra.item);
      add(extra.item, { item: extra.item, name: item === undefined ? extra.item : nameOfItem(item, this.#book.colours) }, extra.count);
    }
    return [...takes.values()];
  }

  /** Role by role, the colour of which there is most; a colour that another role has already is taken only when there is no other. */
  #substitutes(figure: Figure, needs: readonly PieceNeed[], way: Colourway): readonly Substitute[] {
    const found: Substitute[] = [];
    let fill = way.fill;
    for (const role of new Set(needs.map((piece) => piece.role))) {
      const own = needs.filter((piece) => piece.role === role);
      if (this.#enough(figure, own, needs, { ...way, fill })) continue;
      const others = Object.entries(fill).flatMap(([other, colour]) => (other === role ? [] : [colour]));
      const ranked = this.#book.colours
        .map(({ id }) => ({ id, have: this.#leastOf(own, { ...way, fill: { ...fill, [role]: id } }), taken: others.includes(id) }))
        .filter(({ id, have }) => id !== fill[role] && have > 0)
        .sort((a, b) => Number(a.taken) - Number(b.taken) || b.have - a.have);
      const best = ranked.find(({ id }) => this.#enough(figure, own, needs, { ...way, fill: { ...fill, [role]: id } }));
      if (best === undefined) return [];
      found.push({ role, from: fill[role] ?? '', to: best.id });
      fill = { ...fill, [role]: best.id };
    }
    return makesOf(this.#takes(figure, needs, { ...way, fill })) > 0 ? found : [];
  }

  /** Whether there is enough of the balloons of these pieces, when all pieces of the figure are counted. */
  #enough(figure: Figure, own: readonly PieceNeed[], all: readonly PieceNeed[], way: Colourway): boolean {
    const looks = new Set(this.#takes({ ...figure, extras: [] }, own, way).map((taking) => taking.name));
    return this.#takes({ ...figure, extras: [] }, all, way).every((taking) => !looks.has(taking.name) || taking.have >= taking.count);
  }

  #leastOf(own: readonly PieceNeed[], way: Colourway): number {
    return Math.min(
      ...own.map((piece) => {
        const item = balloonFor(piece, way, this.#balloons)?.item;
        return item === undefined ? 0 : (this.#counts.get(item) ?? 0);
      }),
    );
  }
}

const makesOf = (takes: readonly Taking[]): number =>
  Math.min(withoutEnd, ...takes.map((taking) => Math.floor(taking.have / taking.count)));

/** Which figures to show. */
export interface MakeableFilter {
  readonly mostMinutes?: number;
  readonly leastBalloons?: number;
  readonly mostBalloons?: number;
  /** Only what the stock gives at least one of. */
  readonly makeable?: boolean;
}

/** The figures that a filter lets through, in the order of the book. Minutes are the middle of ten; figures that cannot be read are let through only by an empty filter. */
export function filterMakeable(figures: readonly MakeableFigure[], filter: MakeableFilter): readonly MakeableFigure[] {
  const { mostMinutes = withoutEnd, leastBalloons = 0, mostBalloons = withoutEnd, makeable = false } = filter;
  const isOpen = mostMinutes === withoutEnd && leastBalloons === 0 && mostBalloons === withoutEnd;
  return figures.filter(({ facts, makes }) => {
    if (makeable && makes === 0) return false;
    if (facts === undefined) return isOpen;
    return facts.minutes.p50 <= mostMinutes && facts.balloons >= leastBalloons && facts.balloons <= mostBalloons;
  });
}
