import { type Book, balloonFor, balloonsByLook, type Colourway, type Figure } from '@twistwright/books';
import { learningOrder, type PieceNeed, piecesOf, type Technique } from '@twistwright/repertoire';
import type { BookKitWishes, Kit } from '../kit/index.ts';
import { type FigureFacts, figureFacts } from '../makeable/index.ts';

/** Pieces by item that a newcomer has once the kit is bought; of an assorted bag, as many as nine bags in ten hold. */
export function piecesOfKit(book: Book, { lines }: Pick<Kit, 'lines'>, have: BookKitWishes['have'] = []): ReadonlyMap<string, number> {
  const pieces = new Map<string, number>();
  const add = (item: string, count: number): void => void pieces.set(item, (pieces.get(item) ?? 0) + count);
  for (const { item, count } of have) add(item, count);
  for (const line of lines) {
    if (line.mix !== undefined) for (const { item, atLeast } of line.mix) add(item, atLeast);
    else {
      const item = book.offers.find((offer) => offer.id === line.offer)?.item;
      if (item !== undefined) add(item, line.pieces);
    }
  }
  return pieces;
}

/** One figure to learn with a kit. */
export interface KitLesson {
  readonly facts: FigureFacts;
  /** The colours in which it can be made from the kit: those asked for most, else others that will do. */
  readonly way: Colourway;
  /** Techniques that no figure before it needed. */
  readonly adds: readonly Technique[];
}

/** The figures that a kit makes, in an order in which each adds as few new techniques as possible. */
export function lessonsOfKit(book: Book, kit: Pick<Kit, 'lines' | 'figures'>, have?: BookKitWishes['have']): readonly KitLesson[] {
  const pieces = piecesOfKit(book, kit, have);
  const balloons = balloonsByLook(book);
  const made = kit.figures.flatMap(({ figure: id, met }) => {
    const figure = met > 0 ? book.figures.find((one) => one.id === id) : undefined;
    const facts = figure === undefined ? undefined : figureFacts(book, figure);
    if (figure === undefined || facts?.ok !== true) return [];
    const way = wayFrom(figure, piecesOf(facts.value.recipe), pieces, balloons);
    return way === undefined ? [] : [{ facts: facts.value, way }];
  });
  const order = learningOrder(
    made.map(({ facts: { figure, recipe, minutes } }) => ({
      id: figure.id,
      recipe,
      minutes: minutes.p50,
      ...(figure.difficulty === undefined ? {} : { difficulty: figure.difficulty }),
    })),
  );
  return order.flatMap(({ id, adds }) => {
    const one = made.find(({ facts }) => facts.figure.id === id);
    return one === undefined ? [] : [{ ...one, adds }];
  });
}

type Pieces = ReadonlyMap<string, number>;

/** The colourway asked for most that the pieces allow, else its roles filled with what other colourways of the figure would take. */
function wayFrom(figure: Figure, needs: readonly PieceNeed[], pieces: Pieces, looks: ReadonlyMap<string, string>): Colourway | undefined {
  const ways = [...figure.colourways].sort((a, b) => (b.share ?? 1) - (a.share ?? 1));
  const whole = ways.find((way) => allows(needs, way, pieces, looks));
  const first = ways[0];
  if (whole !== undefined || first === undefined)
    return whole ?? (needs.length === 0 ? { id: 'plain', name: 'Plain', fill: {} } : undefined);
  const fill: Record<string, string> = {};
  for (const role of new Set(needs.map((piece) => piece.role))) {
    const own = needs.filter((piece) => piece.role === role);
    const way = ways.find((one) => allows(own, one, pieces, looks));
    const colour = way?.fill[role];
    if (colour === undefined) return undefined;
    fill[role] = colour;
  }
  return { id: 'of the kit', name: [...new Set(Object.values(fill))].join(' and '), fill };
}

function allows(needs: readonly PieceNeed[], way: Colourway, pieces: Pieces, balloons: ReadonlyMap<string, string>): boolean {
  const taken = new Map<string, number>();
  for (const need of needs) {
    const item = balloonFor(need, way, balloons)?.item;
    if (item === undefined) return false;
    taken.set(item, (taken.get(item) ?? 0) + need.count);
  }
  return [...taken].every(([item, count]) => (pieces.get(item) ?? 0) >= count);
}
