import type { BalloonItem, Item, OtherItem } from '@twistwright/books';

/** Single-coloured balloons by size code. */
const plain: Readonly<Record<string, string>> = {
  '260': 'white black red orange yellow green sky blue violet pink rose brown blush grey',
  '160': 'white black red orange yellow green sky blue violet pink brown blush grey',
  '321': 'yellow black brown red blush',
  '350': 'white black red yellow green blue pink brown grey',
  '646': 'red blue yellow green',
  'round-5': 'white black red orange yellow blue pink brown blush grey',
  'round-9': 'violet orange sky yellow',
  'round-11': 'white red yellow blush brown',
  'heart-5': 'red rose',
  'heart-6': 'red rose pink white blush brown',
};

const balloon = (size: string, colour: string, more: Omit<BalloonItem, 'id' | 'kind' | 'size' | 'colour'> = {}): BalloonItem => ({
  id: [size, colour, more.finish, more.print].filter((part) => part !== undefined).join('-'),
  kind: 'balloon',
  size,
  colour,
  ...more,
});

/** Printed ink makes latex age sooner, mirror finishes pop more often: common practice, no published source. */
const special: readonly BalloonItem[] = [
  balloon('260', 'gold', { finish: 'mirror', chanceOfPop: 0.08, shelfMonths: 12 }),
  balloon('260', 'silver', { finish: 'mirror', chanceOfPop: 0.08, shelfMonths: 12 }),
  balloon('260', 'white', { finish: 'pearl', shelfMonths: 18 }),
  balloon('260', 'pink', { finish: 'pearl', shelfMonths: 18 }),
  balloon('160', 'gold', { finish: 'mirror', chanceOfPop: 0.08, shelfMonths: 12 }),
  balloon('round-5', 'white', { print: 'eyes', shelfMonths: 9 }),
  balloon('round-5', 'yellow', { print: 'smile', shelfMonths: 9 }),
  balloon('round-5', 'red', { print: 'spots', shelfMonths: 9 }),
  balloon('round-11', 'white', { print: 'football', shelfMonths: 9 }),
  balloon('heart-6', 'red', { print: 'dots', shelfMonths: 9 }),
];

const tool = (id: string, name: string): OtherItem => ({ id, kind: 'tool', name });
const sundry = (id: string, name: string): OtherItem => ({ id, kind: 'sundry', name });
const others: readonly OtherItem[] = [
  tool('pump', 'pump'),
  tool('pump-spare', 'spare pump'),
  tool('apron', 'apron'),
  tool('scissors', 'scissors'),
  tool('marker-black', 'black marker'),
  tool('marker-white', 'white marker'),
  tool('clicker', 'hand clicker'),
  tool('sign-closed', 'sign: the line is closed'),
  tool('board', 'menu board'),
  tool('canopy-weights', 'canopy weights'),
  tool('first-aid', 'first aid kit'),
  sundry('stick', 'holding stick'),
  sundry('sticker', 'sticker, for those under three'),
  sundry('card', 'business card'),
  sundry('wipes', 'hand wipes'),
  sundry('carry-bag', 'carry bag'),
];

export const items: readonly Item[] = [
  ...Object.entries(plain).flatMap(([size, list]) => list.split(' ').map((colour) => balloon(size, colour, { shelfMonths: 18 }))),
  ...special,
  ...others,
];
