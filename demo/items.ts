import type { BalloonItem, BalloonTest, Item, OtherItem } from '@twistwright/books';
import { onDay } from './days.ts';

/** Single-coloured balloons by size code. */
const plain: Readonly<Record<string, string>> = {
  '260': 'white black red orange yellow green sky blue violet pink rose brown blush grey',
  '160': 'white black red orange yellow green sky blue violet pink brown blush grey',
  '321': 'yellow black brown red pink blush',
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

/** Two invented makers: the case holds 260s of both, colour by colour, and thin ones of the second; of the others nobody has looked. */
const longMaker = 'Ardle & Wynn';
const softMaker = 'Mossop Latex';
const makersBySize: Readonly<Record<string, Readonly<Record<string, string>>>> = {
  '260': { [longMaker]: 'white black red orange yellow pink rose brown', [softMaker]: 'green sky blue violet blush grey' },
  '160': { [softMaker]: 'white black red orange yellow green sky blue violet pink brown blush grey' },
};
const makerOf = (size: string, colour: string): Pick<BalloonItem, 'maker'> => {
  const found = Object.entries(makersBySize[size] ?? {}).find(([, colours]) => colours.split(' ').includes(colour));
  return found === undefined ? {} : { maker: found[0] };
};

/** Two-minute tests of bags, as they were opened over the spring. */
export const balloonTests: readonly BalloonTest[] = [
  {
    id: '260-ardle-winter',
    day: onDay(-98),
    size: '260',
    maker: longMaker,
    item: '260-red',
    flatInches: [11.1, 11.3, 11, 11.2, 11.3],
    fullInches: [60.5],
    twists: [{ bubbles: 10, tailInches: 6, leftInches: 3.1 }],
  },
  {
    id: '260-ardle-spring',
    day: onDay(-41),
    size: '260',
    maker: longMaker,
    item: '260-white',
    flatInches: [11.3, 11.2, 11.5, 11.2, 11.4],
    fullInches: [61],
    twists: [{ bubbles: 10, tailInches: 6, leftInches: 3.2 }],
  },
  { id: '260-ardle-black', day: onDay(-20), size: '260', maker: longMaker, item: '260-black', flatInches: [11.1, 11, 11.2] },
  {
    id: '260-mossop-spring',
    day: onDay(-41),
    size: '260',
    maker: softMaker,
    item: '260-green',
    flatInches: [10.8, 10.6, 10.9, 10.7, 10.8],
    fullInches: [58.5],
    twists: [{ bubbles: 10, tailInches: 6, leftInches: 3 }],
    note: 'softer than the others, twists hold less well when it is hot',
  },
  { id: '160-mossop', day: onDay(-12), size: '160', maker: softMaker, flatInches: [10.9, 11, 10.8], fullInches: [58] },
];

export const items: readonly Item[] = [
  ...Object.entries(plain).flatMap(([size, list]) =>
    list.split(' ').map((colour) => balloon(size, colour, { ...makerOf(size, colour), shelfMonths: 18 })),
  ),
  ...special,
  ...others,
];
