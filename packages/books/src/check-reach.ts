import { type LocalDate, type Problem, workingDaysAfter } from '@twistwright/units';
import { balloonFor, balloonsByLook } from './balloon-for.ts';
import type { Book } from './book.ts';
import type { PiecesByFigure } from './check-figures.ts';
import type { Gig, MenuLine } from './gig.ts';
import { warningAt } from './problem-codes.ts';
import { countsByItem, stockOf } from './stock.ts';

/**
 * Whether what the coming gigs offer can be made at all, from what is in store, on order or for sale; and whether orders can be in time.
 * Warnings all: a new business may enter a gig before its suppliers.
 */
export function checkReach(book: Book, pieces: PiecesByFigure, today: LocalDate): readonly Problem[] {
  const within = itemsInReach(book);
  const balloons = balloonsByLook(book);
  const figures = new Map(book.figures.map((figure) => [figure.id, figure]));
  const makeable = (line: Pick<MenuLine, 'figure' | 'colourways'>): boolean => {
    const figure = figures.get(line.figure);
    const needs = pieces.get(line.figure);
    if (figure === undefined || needs === undefined || needs.length === 0) return true; // said elsewhere, or takes no balloons
    return figure.colourways
      .filter((way) => line.colourways?.includes(way.id) ?? true)
      .some((way) => needs.every((piece) => within.has(balloonFor(piece, way, balloons)?.item ?? '')));
  };
  return [
    ...book.gigs.flatMap((gig, index) => (gig.day < today ? [] : checkMenuReach(gig, ['gigs', index], makeable))),
    ...checkLeadTimes(book, today),
    ...(book.settings?.planning?.budget === 0
      ? [
          warningAt(
            'budget.zero',
            ['settings', 'planning', 'budget'],
            'The budget for shopping is nought: nothing will be bought.',
            'Leave "budget" out if there is none.',
          ),
        ]
      : []),
  ];
}

function itemsInReach(book: Book): ReadonlySet<string> {
  return new Set([
    ...[...countsByItem(stockOf(book.moves))].flatMap(([item, count]) => (count > 0 ? [item] : [])),
    ...book.orders.filter((order) => order.arrivedOn === undefined).flatMap((order) => order.lines.map((line) => line.item)),
    ...book.offers.flatMap((offer) => [offer.item, ...Object.keys(offer.mix ?? {})]),
  ]);
}

type Makeable = (line: Pick<MenuLine, 'figure' | 'colourways'>) => boolean;
function checkMenuReach(gig: Gig, path: Problem['path'], makeable: Makeable): readonly Problem[] {
  const lost = gig.menu.flatMap((line, index) => (makeable(line) ? [] : [{ line, index }]));
  if (lost.length > 0 && lost.length === gig.menu.length)
    return [
      warningAt(
        'menu.nothing-possible',
        [...path, 'menu'],
        `Nothing on the menu of gig "${gig.id}" can be made from what is in store, on order or for sale.`,
        'Add offers for its balloons, or other figures.',
      ),
    ];
  const offered = lost.map(({ line, index }) =>
    warningAt(
      'menu.out-of-reach',
      [...path, 'menu', index, 'figure'],
      `Gig "${gig.id}" offers "${line.figure}", and no colourway of it can be made from what is in store, on order or for sale.`,
      'Take it off the menu, or add an offer for its balloons.',
    ),
  );
  const ordered = (gig.order ?? []).flatMap((piece, index) =>
    makeable({ figure: piece.figure, colourways: [piece.colourway] })
      ? []
      : [
          warningAt(
            'menu.out-of-reach',
            [...path, 'order', index],
            `Gig "${gig.id}" has "${piece.figure}" in "${piece.colourway}" made to order, which cannot be made from what is in store, on order or for sale.`,
            'Add an offer for its balloons, or agree on another colour.',
          ),
        ],
  );
  return [...offered, ...ordered];
}

/** Gigs before which nothing that is ordered today can arrive, whatever the supplier. */
function checkLeadTimes(book: Book, today: LocalDate): readonly Problem[] {
  const selling = book.suppliers.filter((supplier) => book.offers.some((offer) => offer.supplier === supplier.id));
  const holidays = book.settings?.planning?.holidays ?? [];
  const arrivals = selling.map((supplier) =>
    workingDaysAfter(today, supplier.leadWorkingDays, new Set([...holidays, ...(supplier.closedOn ?? [])])),
  );
  const [first] = arrivals.sort();
  if (first === undefined) return [];
  return book.gigs.flatMap((gig, index) =>
    gig.day < today || first <= gig.day
      ? []
      : [
          warningAt(
            'lead.too-late',
            ['gigs', index, 'day'],
            `Nothing that is ordered today arrives before ${first}; gig "${gig.id}" is on ${gig.day}.`,
            'Plan it from what is in store, or buy over a counter.',
          ),
        ],
  );
}
