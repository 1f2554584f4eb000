import type { LocalDate, Problem } from '@twistwright/units';
import type { Book } from './book.ts';
import { type Names, unknownName } from './check-names.ts';
import { errorAt, warningAt } from './problem-codes.ts';
import { stockOf } from './stock.ts';
import type { Offer } from './supply.ts';

/** What is wrong with suppliers, offers, orders, needs, places and the ledger of stock. */
export function checkSupply(book: Book, names: Names, today: LocalDate): readonly Problem[] {
  return [
    ...checkSuppliers(book),
    ...book.offers.flatMap((offer, index) => checkOffer(offer, ['offers', index], names)),
    ...checkOrders(book, names, today),
    ...book.needs.flatMap((need, index) => unknownName(names, 'item', need.item, ['needs', index, 'item'], `Need "${need.id}"`)),
    ...book.places.flatMap((place, index) =>
      (place.pockets ?? []).flatMap((item, at) =>
        unknownName(names, 'item', item, ['places', index, 'pockets', at], `Place "${place.id}"`),
      ),
    ),
    ...checkMoves(book, names),
  ];
}

function checkSuppliers(book: Book): readonly Problem[] {
  return book.suppliers.flatMap((supplier, index) =>
    supplier.currency === undefined || supplier.currency === book.business.currency
      ? []
      : [
          errorAt(
            'currency.mixed',
            ['suppliers', index, 'currency'],
            `Supplier "${supplier.id}" has prices in ${supplier.currency}; all money of this book is in ${book.business.currency}.`,
            `Enter its prices in ${book.business.currency}, as they will be paid.`,
          ),
        ],
  );
}

function checkOffer(offer: Offer, path: Problem['path'], names: Names): readonly Problem[] {
  const by = `Offer "${offer.id}"`;
  const breaks = offer.breaks ?? [];
  const disorder = breaks.findIndex((step, index) => step.bags <= (breaks[index - 1]?.bags ?? 1));
  const dearer = breaks.findIndex((step, index) => step.price > (breaks[index - 1]?.price ?? offer.price));
  const mix = Object.entries(offer.mix ?? {});
  return [
    ...unknownName(names, 'supplier', offer.supplier, [...path, 'supplier'], by),
    ...unknownName(names, 'item', offer.item, [...path, 'item'], by),
    ...mix.flatMap(([item]) => unknownName(names, 'item', item, [...path, 'mix', item], by)),
    ...(mix.length > 0 && mix.every(([, weight]) => weight === 0)
      ? [
          errorAt(
            'shares.zero',
            [...path, 'mix'],
            `The weights of the mixed bag of offer "${offer.id}" sum to nought.`,
            'Give one of them a weight.',
          ),
        ]
      : []),
    ...(disorder < 0
      ? []
      : [
          errorAt(
            'offer.breaks',
            [...path, 'breaks', disorder],
            `${by} has a price break at ${breaks[disorder]?.bags} bags after one at ${breaks[disorder - 1]?.bags ?? 1}.`,
            'Put the breaks in ascending order, the first at two bags or more.',
          ),
        ]),
    ...(dearer < 0
      ? []
      : [
          warningAt(
            'offer.dearer',
            [...path, 'breaks', dearer],
            `A bag of offer "${offer.id}" costs more from ${breaks[dearer]?.bags} bags on than before.`,
            'Look at its prices again.',
          ),
        ]),
  ];
}

function checkOrders(book: Book, names: Names, today: LocalDate): readonly Problem[] {
  return book.orders.flatMap((order, index): readonly Problem[] => {
    const path = ['orders', index] as const;
    const by = `Order "${order.id}"`;
    const first = order.arrivedOn !== undefined && order.arrivedOn < order.orderedOn ? 'arrivedOn' : 'expectedOn';
    const late = order.arrivedOn === undefined && order.expectedOn < today;
    return [
      ...unknownName(names, 'supplier', order.supplier, [...path, 'supplier'], by),
      ...order.lines.flatMap((line, at) => [
        ...unknownName(names, 'item', line.item, [...path, 'lines', at, 'item'], by),
        ...unknownName(names, 'offer', line.offer, [...path, 'lines', at, 'offer'], by).map(
          (problem): Problem => ({
            ...problem,
            weight: 'warning',
            todo: 'The offer may have gone from the price list since; leave it out.',
          }),
        ),
      ]),
      ...((order[first] ?? order.orderedOn) < order.orderedOn
        ? [
            errorAt(
              'order.dates',
              [...path, first],
              `${by} was placed on ${order.orderedOn} and has ${order[first]} as the day of its arrival.`,
              'Look at its dates again.',
            ),
          ]
        : []),
      ...(late
        ? [
            warningAt(
              'order.late',
              [...path, 'expectedOn'],
              `${by} was expected on ${order.expectedOn} and is not counted in.`,
              'Count it in, or put off the day on which it is expected.',
            ),
          ]
        : []),
    ];
  });
}

function checkMoves(book: Book, names: Names): readonly Problem[] {
  const unknown = book.moves.flatMap((move, index): readonly Problem[] => {
    const path = ['moves', index] as const;
    const by = `Stock move "${move.id}"`;
    const places = move.kind === 'moved' ? ({ from: move.from, to: move.to } as const) : { place: move.place };
    return [
      ...unknownName(names, 'item', move.item, [...path, 'item'], by),
      ...Object.entries(places).flatMap(([key, place]) => unknownName(names, 'place', place, [...path, key], by)),
      ...(move.kind === 'arrived' ? unknownName(names, 'order', move.order, [...path, 'order'], by) : []),
      ...(move.kind === 'used' ? unknownName(names, 'gig', move.gig, [...path, 'gig'], by) : []),
    ];
  });
  const position = new Map(book.moves.map((move, index) => [move.id, index]));
  const taken = stockOf(book.moves).differences.flatMap((difference): readonly Problem[] => {
    const index = position.get(difference.move) ?? -1;
    if (book.moves[index]?.kind === 'counted') return [];
    const sentence = `Stock move "${difference.move}" takes ${difference.counted} of item "${difference.item}" from "${difference.place}", where the ledger has ${difference.expected}.`;
    return [warningAt('stock.more-than-there-was', ['moves', index], sentence, 'Count that place.')];
  });
  return [...unknown, ...taken];
}
