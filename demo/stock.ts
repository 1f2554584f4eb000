import type { Offer, StockMove } from '@twistwright/books';
import type { LocalDate } from '@twistwright/units';
import { onDay } from './days.ts';
import { items } from './items.ts';
import { offers } from './price-lists.ts';

/**
 * What lies where on the Monday on which the demo is laid: item, then sealed bags at home / loose at home / in the case / in the apron.
 * Every item that is not named has one opened bag with the rest of it at home and in the case.
 */
const counts: Readonly<Record<string, string>> = {
  '260-white': '0/34/40/25',
  '260-black': '0/36/22/15',
  '260-red': '1/20/30/20',
  '260-orange': '0/45/20/15',
  '260-yellow': '1/10/25/20',
  '260-green': '0/30/40/25',
  '260-sky': '0/55/15/0',
  '260-blue': '1/15/25/20',
  '260-violet': '0/40/18/10',
  '260-pink': '0/30/25/20',
  '260-rose': '0/14/8/0',
  '260-brown': '1/12/25/20',
  '260-blush': '0/70/10/0',
  '260-grey': '0/48/12/0',
  '160-white': '0/60/10/0',
  '160-black': '0/6/12/8',
  '160-red': '0/42/10/0',
  '160-green': '0/55/12/8',
  'heart-6-rose': '0/0/4/0',
  'round-5-white-eyes': '0/0/6/0',
  'round-5-red-spots': '0/4/0/0',
  'round-11-white': '0/10/0/0',
  '646-blue': '0/8/0/0',
  '646-yellow': '0/0/0/0',
  '160-grey': '0/0/0/0',
};
const others: Readonly<Record<string, string>> = {
  pump: '0/0/0/1',
  'pump-spare': '0/0/1/0',
  apron: '0/1/0/0',
  scissors: '0/1/0/1',
  'marker-black': '0/3/1/2',
  'marker-white': '0/0/0/1',
  clicker: '0/1/0/0',
  'sign-closed': '0/0/1/0',
  board: '0/0/1/0',
  'canopy-weights': '0/4/0/0',
  'first-aid': '0/1/0/0',
  stick: '0/38/20/0',
  sticker: '0/60/20/20',
  card: '0/70/0/40',
  wipes: '0/1/0/0',
  'carry-bag': '0/12/6/0',
};
const usual = '0/35/15/0';
/** Bags of the usual shop for the item, else of 100. */
const bagOf = (item: string): Offer | undefined => offers.find((offer) => offer.item === item);
/** Days before the Monday on which the item came; spread, so that some of it is old. */
const cameOn = (index: number): LocalDate => onDay(-(20 + ((index * 37) % 300)));

function movesOf(item: string, index: number): readonly StockMove[] {
  const [sealed = 0, home = 0, inCase = 0, apron = 0] = (counts[item] ?? others[item] ?? usual).split('/').map(Number);
  const loose = home + inCase + apron;
  const came = cameOn(index);
  const bag = bagOf(item);
  const perBag = bag?.count ?? 1;
  const bags = sealed + Math.ceil(loose / perBag);
  const used = bags * perBag - sealed * perBag - loose;
  if (bags === 0) return [];
  const base = { item } as const;
  const move = (step: string, day: LocalDate) => ({ id: `${item}-${step}`, day, ...base });
  return [
    { ...move('came', came), kind: 'arrived', place: 'home', bags, perBag, ...(bag === undefined ? {} : { bagPrice: bag.price }) },
    ...(perBag > 1 && loose > 0 ? [{ ...move('opened', onDay(-19)), kind: 'opened', place: 'home', perBag } as const] : []),
    ...(used > 0 ? [{ ...move('used', onDay(-16)), kind: 'used', place: 'home', count: used } as const] : []),
    ...(inCase > 0 ? [{ ...move('to-case', onDay(-5)), kind: 'moved', from: 'home', to: 'case', count: inCase } as const] : []),
    ...(apron > 0 ? [{ ...move('to-apron', onDay(-5)), kind: 'moved', from: 'home', to: 'apron', count: apron } as const] : []),
  ];
}

/** Spares in the car, one stocktake that found two fewer, and a bag that had gone sticky. */
const last: readonly StockMove[] = [
  { id: 'car-red', day: onDay(-4), item: '260-red', kind: 'moved', from: 'home', to: 'car', count: 20 },
  { id: 'car-blue', day: onDay(-4), item: '260-blue', kind: 'moved', from: 'home', to: 'car', count: 15 },
  { id: 'car-weights', day: onDay(-4), item: 'canopy-weights', kind: 'moved', from: 'home', to: 'car', count: 4 },
  { id: 'car-first-aid', day: onDay(-4), item: 'first-aid', kind: 'moved', from: 'home', to: 'car', count: 1 },
  { id: 'sticky-brown', day: onDay(-3), item: '160-brown', kind: 'lost', place: 'home', count: 11, why: 'sticky from the sun' },
  { id: 'count-black', day: onDay(-2), item: '260-black', kind: 'counted', place: 'case', count: 20 },
];

export const moves: readonly StockMove[] = [...items.flatMap((item, index) => movesOf(item.id, index)), ...last].sort((a, b) =>
  a.day < b.day ? -1 : a.day > b.day ? 1 : 0,
);
