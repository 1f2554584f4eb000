import { type BalloonItem, nameOfItem, type Offer } from '@twistwright/books';
import { decimalOf, type Money, money } from '@twistwright/units';
import { items } from './items.ts';

/** Invented list prices in pence for a bag of 100. */
const hundred: Readonly<Record<string, number>> = {
  '160': 760,
  '260': 845,
  '321': 1080,
  '350': 1290,
  '646': 2640,
  'round-5': 560,
  'round-9': 890,
  'round-11': 1180,
  'heart-5': 790,
  'heart-6': 890,
};
const balloons = items.filter((item): item is BalloonItem => item.kind === 'balloon');
/** Mirror finish costs two thirds more, pearl a sixth, print half as much again. */
const dearer = (item: BalloonItem): number =>
  (item.finish === 'mirror' ? 1.66 : item.finish === 'pearl' ? 1.16 : 1) * (item.print === undefined ? 1 : 1.5);
/** Rounded to whole 5 pence, as such lists are. */
const priceOf = (item: BalloonItem, factor: number): Money =>
  money(Math.round(((hundred[item.size] ?? 0) * dearer(item) * factor) / 5) * 5);
const special = (item: BalloonItem): boolean => item.finish !== undefined || item.print !== undefined;
const big = (item: BalloonItem): boolean => item.size === '646' || item.size === 'round-9';

/** By post: nearly everything, in bags of 100, or of 50 for what is big, shiny or printed. */
const fernhallow: readonly Offer[] = balloons
  .filter((item) => item.id !== '321-blush')
  .map((item) => {
    const count = big(item) || special(item) ? 50 : 100;
    return {
      id: `fernhallow-${item.id}-${count}`,
      supplier: 'fernhallow',
      item: item.id,
      count,
      price: priceOf(item, count === 50 ? 0.52 : 1),
      reference: `FB${item.size.replaceAll('-', '').toUpperCase()}-${item.colour.slice(0, 4).toUpperCase()}${special(item) ? 'X' : ''}`,
    };
  });
/** Wholesale: the plain sizes only, cheaper, cheaper again from three and from six bags. */
const brackwater: readonly Offer[] = balloons
  .filter((item) => !special(item) && !['646', 'heart-5', 'heart-6', 'round-9'].includes(item.size))
  .map((item) => ({
    id: `brackwater-${item.id}-100`,
    supplier: 'brackwater',
    item: item.id,
    count: 100,
    price: priceOf(item, 0.9),
    breaks: [
      { bags: 3, price: priceOf(item, 0.83) },
      { bags: 6, price: priceOf(item, 0.76) },
    ],
    reference: String(40_000 + balloons.indexOf(item) * 10),
  }));
/** Across the street: the usual colours in small bags, dear, at once. */
const counterColours = 'white black red yellow green blue pink brown'.split(' ');
const ropewalk: readonly Offer[] = balloons
  .filter((item) => !special(item) && ['260', '160', 'round-5', 'heart-6'].includes(item.size) && counterColours.includes(item.colour))
  .map((item) => ({
    id: `ropewalk-${item.id}-25`,
    supplier: 'ropewalk',
    item: item.id,
    count: 25,
    price: priceOf(item, 0.36),
    mostBags: 4,
  }));
const things: readonly Offer[] = [
  { id: 'fernhallow-stick-100', supplier: 'fernhallow', item: 'stick', count: 100, price: money(620) },
  { id: 'fernhallow-sticker-200', supplier: 'fernhallow', item: 'sticker', count: 200, price: money(480) },
  { id: 'fernhallow-pump-1', supplier: 'fernhallow', item: 'pump', count: 1, price: money(895) },
  { id: 'fernhallow-pump-spare-1', supplier: 'fernhallow', item: 'pump-spare', count: 1, price: money(895) },
  { id: 'fernhallow-apron-1', supplier: 'fernhallow', item: 'apron', count: 1, price: money(2450) },
  { id: 'fernhallow-marker-black-2', supplier: 'fernhallow', item: 'marker-black', count: 2, price: money(340) },
  { id: 'fernhallow-marker-white-1', supplier: 'fernhallow', item: 'marker-white', count: 1, price: money(265) },
  { id: 'ropewalk-scissors-1', supplier: 'ropewalk', item: 'scissors', count: 1, price: money(350) },
  { id: 'ropewalk-card-250', supplier: 'ropewalk', item: 'card', count: 250, price: money(1800) },
  { id: 'ropewalk-wipes-1', supplier: 'ropewalk', item: 'wipes', count: 1, price: money(140) },
  { id: 'ropewalk-carry-bag-20', supplier: 'ropewalk', item: 'carry-bag', count: 20, price: money(390) },
];

export const offers: readonly Offer[] = [...fernhallow, ...brackwater, ...ropewalk, ...things];

const inches = (item: BalloonItem): string => item.size.replace(/^(\D+)-(\d+)$/, '$2 in $1');
const title = (text: string): string => text.charAt(0).toUpperCase() + text.slice(1);
const itemOf = (offer: Offer): BalloonItem | undefined => balloons.find((item) => item.id === offer.item);
const quoted = (text: string): string => (/[",;\n]/.test(text) ? `"${text.replaceAll('"', '""')}"` : text);
const line = (cells: readonly string[], separator: string): string => `${cells.map(quoted).join(separator)}\r\n`;

/** The list of each supplier as it would send it: other columns, separators and habits each time. */
export const priceLists: Readonly<Record<string, string>> = {
  'fernhallow.csv':
    line(['Code', 'Size', 'Colour', 'Finish', 'Print', 'Per bag', 'Price GBP'], ',') +
    fernhallow
      .map((offer) => {
        const item = itemOf(offer);
        return item === undefined
          ? ''
          : line(
              [
                offer.reference ?? '',
                inches(item),
                title(item.colour),
                title(item.finish ?? 'standard'),
                item.print ?? '',
                String(offer.count),
                decimalOf(offer.price, 'GBP'),
              ],
              ',',
            );
      })
      .join(''),
  'brackwater.csv':
    line(['Art. no.', 'Description', 'Pack', '1 pack', '3+ packs', '6+ packs'], ';') +
    brackwater
      .map((offer) => {
        const item = itemOf(offer);
        const comma = (price: Money | undefined): string => (price === undefined ? '' : decimalOf(price, 'GBP').replace('.', ','));
        return item === undefined
          ? ''
          : line(
              [
                offer.reference ?? '',
                title(nameOfItem(item)),
                `x${offer.count}`,
                comma(offer.price),
                comma(offer.breaks?.[0]?.price),
                comma(offer.breaks?.[1]?.price),
              ],
              ';',
            );
      })
      .join('') +
    line(['49990', '260 teal', 'x100', '7,60', '7,00', '6,40'], ';'),
  'ropewalk.csv':
    line(['what', 'how many', 'price', 'at most'], '\t') +
    ropewalk
      .map((offer) => {
        const item = itemOf(offer);
        return item === undefined
          ? ''
          : line(
              [`${item.colour} ${inches(item)}`, String(offer.count), `£${decimalOf(offer.price, 'GBP')}`, String(offer.mostBags ?? '')],
              '\t',
            );
      })
      .join(''),
};
