import { Chance, money } from '@twistwright/units';
import type { KitFigure, KitItem, KitOffer, KitProblem, KitRole, KitWishes } from './kit-problem.ts';

const colours = [
  'white',
  'black',
  'red',
  'blue',
  'yellow',
  'green',
  'pink',
  'orange',
  'purple',
  'brown',
  'light blue',
  'grey',
  'lime',
  'peach',
];
const sizes = [
  { size: '260', price: 1100, count: 100, colours: 14 },
  { size: 'round-5', price: 650, count: 100, colours: 8 },
  { size: '160', price: 950, count: 100, colours: 8 },
  { size: 'heart-6', price: 1000, count: 50, colours: 3 },
  { size: '350', price: 1700, count: 100, colours: 4 },
];

/**
 * An invented problem for tests and benchmarks: figures with a body in many colours and eyes, legs or leaves in few; offers of three
 * shops, two sizes of bag, an assorted bag. Prices as common practice has them, no published source.
 */
export function inventedKit(figureCount: number, offerCount: number, seed = 1, wishes: Partial<KitWishes> = {}): KitProblem {
  const chance = new Chance(seed, figureCount, offerCount);
  const below = (count: number): number => chance.next() % count;
  const items: KitItem[] = sizes.flatMap((size) =>
    colours
      .slice(0, size.colours)
      .map((colour) => ({ id: `${size.size} ${colour}`, name: `${size.size} ${colour}`, size: size.size, colour })),
  );
  items.push({ id: 'eyes', name: 'round-5 white, printed eyes', size: 'round-5', colour: 'white', print: 'eyes' });
  const offers: KitOffer[] = [];
  for (let o = 0; offers.length < offerCount; o++) {
    const item = items[o % items.length];
    const size = sizes.find((one) => one.size === item?.size) ?? sizes[0];
    if (item === undefined || size === undefined) break;
    const isSmall = o >= items.length;
    const price = Math.round(size.price * (isSmall ? 0.6 : 1) * (0.9 + 0.2 * chance.uniform()) + (item.print === undefined ? 0 : 900));
    offers.push({
      id: `offer ${o + 1}`,
      supplier: `shop ${1 + below(3)}`,
      item: item.id,
      count: isSmall ? size.count / 2 : size.count,
      price: money(price),
    });
  }
  const last = offers.at(-1);
  if (last !== undefined)
    offers[offers.length - 1] = {
      ...last,
      item: 'assorted 260',
      count: 100,
      price: money(1000),
      mix: Object.fromEntries(colours.slice(0, 10).map((colour) => [`260 ${colour}`, 1])),
    };
  const role = (name: string, size: string, pieces: number, some: readonly string[]): KitRole => ({
    name,
    size,
    pieces,
    colours: some.map((colour, c) => ({ colour, preference: 1 / (c + 1) })),
  });
  const some = (count: number, from: number): readonly string[] => {
    const start = below(from);
    return Array.from({ length: Math.min(count, from) }, (_, c) => colours[(start + c * 3) % from] ?? 'white').filter(
      (colour, c, all) => all.indexOf(colour) === c,
    );
  };
  const figures = Array.from({ length: figureCount }, (_, f): KitFigure => {
    const roles = [role('body', below(6) === 0 ? '350' : '260', 1 + below(2), some(2 + below(5), 12))];
    if (roles[0]?.size === '350') roles[0] = role('body', '350', 1, some(2, 4));
    const second = below(6);
    if (second < 2) roles.push({ ...role('eyes', 'round-5', 1, ['white']), ...(second === 0 ? { print: 'eyes' } : {}) });
    if (second === 2) roles.push(role('leaf', '260', 1, ['green', 'lime']));
    if (second === 3) roles.push(role('nose', 'round-5', 1, ['black', 'red']));
    if (second === 4) roles.push(role('legs', '160', 1 + below(2), some(2, 8)));
    if (below(8) === 0) roles.push(role('heart', 'heart-6', 1, ['red', 'white']));
    return { id: `figure ${f + 1}`, name: `figure ${f + 1}`, share: 1 / (f + 2), roles };
  });
  const shop = (n: number, shipping: number, freeFrom: number): KitProblem['suppliers'][number] => ({
    id: `shop ${n}`,
    name: `shop ${n}`,
    shipping: money(shipping),
    freeFrom: money(freeFrom),
  });
  return {
    currency: 'GBP',
    items,
    figures,
    offers,
    suppliers: [shop(1, 395, 5000), shop(2, 450, 6000), shop(3, 295, 4000)],
    tools: [
      { id: 'pump', name: 'hand pump', need: 'must-have', price: money(1200), supplier: 'shop 1' },
      { id: 'scissors', name: 'scissors', need: 'must-have', price: money(400) },
      { id: 'marker', name: 'black marker', need: 'must-have', price: money(250) },
      { id: 'spare pump', name: 'spare pump', need: 'spare', price: money(900), supplier: 'shop 1' },
      { id: 'bag', name: 'bag with pockets', need: 'later', price: money(10_000) },
    ],
    have: [],
    wishes: { budget: money(15_000), hours: 10, kind: 'small fairs', ...wishes },
  };
}
