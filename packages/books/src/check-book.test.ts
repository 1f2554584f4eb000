import { date, money, type Problem, time } from '@twistwright/units';
import { describe, expect, test } from 'vitest';
import { type Book, emptyBook } from './book.ts';
import { checkBook } from './check-book.ts';
import type { Gig } from './gig.ts';

const today = date('2026-06-01');
const fair: Gig = {
  id: 'fair',
  name: 'Summer fair',
  kind: 'line',
  day: date('2026-06-13'),
  starts: time('13:00'),
  ends: time('16:00'),
  artists: ['tansy'],
  guests: 70,
  menu: [{ figure: 'dog', share: 1 }],
};
/** A book with nothing wrong in it; each test spoils one thing. */
const sound: Book = {
  ...emptyBook({ name: 'Six Turns', currency: 'GBP', zone: 'Europe/London' }),
  colours: [
    { id: 'red', name: 'red' },
    { id: 'blue', name: 'blue' },
  ],
  items: [
    { id: '260-red', kind: 'balloon', size: '260', colour: 'red' },
    { id: '260-blue', kind: 'balloon', size: '260', colour: 'blue' },
    { id: 'pump', kind: 'tool', name: 'pump' },
  ],
  figures: [
    {
      id: 'dog',
      name: 'dog',
      recipe: 'balloon dog: 260 in body\n',
      colourways: [{ id: 'red', name: 'red', fill: { body: 'red' } }],
    },
  ],
  artists: [{ id: 'tansy', name: 'Tansy', pace: 1 }],
  places: [{ id: 'home', name: 'home', kind: 'home' }],
  suppliers: [{ id: 'shop', name: 'a shop', leadWorkingDays: 3, carriage: money(400) }],
  offers: [{ id: 'red-100', supplier: 'shop', item: '260-red', count: 100, price: money(800) }],
  clients: [{ id: 'town', name: 'the town' }],
  gigs: [fair],
  moves: [{ id: 'm1', day: date('2026-05-01'), item: '260-red', kind: 'arrived', place: 'home', bags: 1, perBag: 100 }],
};
const problemsOf = (book: Partial<Book>): readonly Problem[] => checkBook({ ...sound, ...book }, { today });
const brief = (book: Partial<Book>) => problemsOf(book).map(({ code, path, weight }) => `${weight} ${code} at ${path.join('.')}`);
const withGig = (gig: Partial<Gig>): Partial<Book> => ({ gigs: [{ ...fair, ...gig }] });

test('a sound book has nothing wrong with it, and an empty one neither', () => {
  expect(problemsOf({})).toEqual([]);
  expect(checkBook(emptyBook({ name: 'Six Turns', currency: 'GBP', zone: 'Europe/London' }), { today })).toEqual([]);
});
test('a problem says where, what and what to do', () => {
  expect(problemsOf(withGig({ menu: [{ figure: 'dragon', share: 1 }] }))).toEqual([
    {
      code: 'figure.unknown',
      path: ['gigs', 0, 'menu', 0, 'figure'],
      sentence: 'Gig "fair" names the figure "dragon", which the book does not have.',
      todo: 'Add it to "figures", or name another.',
      weight: 'error',
    },
  ]);
});

describe('names that lead nowhere', () => {
  test.each<[string, Partial<Book>, readonly string[]]>([
    ['client', withGig({ client: 'nobody' }), ['error client.unknown at gigs.0.client']],
    ['artist', withGig({ artists: ['nobody'] }), ['error artist.unknown at gigs.0.artists.0']],
    [
      'colourway',
      withGig({ menu: [{ figure: 'dog', share: 1, colourways: ['red', 'mauve'] }] }),
      ['error colourway.unknown at gigs.0.menu.0.colourways.1'],
    ],
    ['special figure', withGig({ special: { figure: 'dragon' } }), ['error figure.unknown at gigs.0.special.figure']],
    [
      'premade colourway',
      withGig({ premade: [{ figure: 'dog', colourway: 'mauve', count: 1 }] }),
      ['error colourway.unknown at gigs.0.premade.0.colourway'],
    ],
    [
      "an artist's figure",
      { artists: [{ id: 'tansy', name: 'Tansy', pace: 1, figures: ['dog', 'dragon'] }] },
      ['error figure.unknown at artists.0.figures.1'],
    ],
    [
      'size code',
      { items: [...sound.items, { id: 'x', kind: 'balloon', size: '261', colour: 'red' }] },
      ['error size.unknown at items.3.size'],
    ],
    [
      'colour of an item',
      { items: [...sound.items, { id: 'x', kind: 'balloon', size: '160', colour: 'mauve' }] },
      ['error colour.unknown at items.3.colour'],
    ],
    [
      'extra',
      { figures: [{ id: 'dog', name: 'dog', colourways: [], extras: [{ item: 'stick', count: 1 }] }] },
      ['error item.unknown at figures.0.extras.0.item'],
    ],
    [
      'supplier and item of an offer',
      { offers: [...sound.offers, { id: 'o', supplier: 'x', item: 'y', count: 1, price: money(1) }] },
      ['error supplier.unknown at offers.1.supplier', 'error item.unknown at offers.1.item'],
    ],
    [
      'item of a mixed bag',
      { offers: [...sound.offers, { id: 'o', supplier: 'shop', item: '260-red', count: 1, price: money(1), mix: { y: 1 } }] },
      ['error item.unknown at offers.1.mix.y'],
    ],
    ['item of a need', { needs: [{ id: 'n', item: 'x', count: 3, by: today }] }, ['error item.unknown at needs.0.item']],
    ['pocket', { places: [{ id: 'home', name: 'home', kind: 'home', pockets: ['x'] }] }, ['error item.unknown at places.0.pockets.0']],
    [
      'place, gig and order of moves',
      {
        moves: [
          ...sound.moves,
          { id: 'm2', day: today, item: '260-red', kind: 'used', place: 'home', count: 1, gig: 'x' },
          { id: 'm3', day: today, item: '260-red', kind: 'moved', from: 'home', to: 'attic', count: 1 },
          { id: 'm4', day: today, item: '260-red', kind: 'arrived', place: 'home', bags: 1, perBag: 1, order: 'x' },
        ],
      },
      ['error gig.unknown at moves.1.gig', 'error place.unknown at moves.2.to', 'error order.unknown at moves.3.order'],
    ],
    [
      'tool and its place',
      { settings: { tools: [{ item: 'hammer', count: 1, when: 'always', place: 'shed' }] } },
      ['error item.unknown at settings.tools.0.item', 'error place.unknown at settings.tools.0.place'],
    ],
    [
      'offer of an order: it may have gone since',
      {
        orders: [
          {
            id: 'o',
            supplier: 'shop',
            orderedOn: today,
            expectedOn: today,
            lines: [{ offer: 'gone', item: '260-red', bags: 1, count: 100, price: money(1) }],
            carriage: money(0),
          },
        ],
      },
      ['warning offer.unknown at orders.0.lines.0.offer'],
    ],
  ])('%s', (_, book, expected) => {
    expect(brief(book)).toEqual(expected);
  });
  test('ids that stand twice, colourways of one figure too', () => {
    const [dog] = sound.figures;
    const twice = {
      ...sound.figures[0],
      colourways: [...(dog?.colourways ?? []), ...(dog?.colourways ?? [])],
    } as (typeof sound.figures)[number];
    expect(brief({ artists: [...sound.artists, ...sound.artists], figures: [twice] })).toEqual([
      'error id.twice at artists.1.id',
      'error id.twice at figures.0.colourways.1.id',
    ]);
  });
  test('two items that are the same balloon', () => {
    expect(brief({ items: [...sound.items, { id: 'red-too', kind: 'balloon', size: '260', colour: 'red', finish: 'standard' }] })).toEqual([
      'error item.twice at items.3',
    ]);
  });
});

describe('figures', () => {
  const figure = (recipe: string, fill: Readonly<Record<string, string>>, share = 1): Partial<Book> => ({
    figures: [{ id: 'dog', name: 'dog', recipe, colourways: [{ id: 'red', name: 'red', share, fill }] }],
  });
  test('a recipe that cannot be read is said with the line of the recipe', () => {
    const [problem] = problemsOf(figure('balloon dog: 260 in body\n  bubbel 3 nose\n', { body: 'red' }));
    expect(problem).toMatchObject({ path: ['figures', 0, 'recipe'], weight: 'error' });
    expect(problem?.code).toMatch(/^recipe\./);
    expect(problem?.sentence).toMatch(/^Recipe of figure "dog", line 2, column \d+: /);
    expect(problem?.line).toBeUndefined();
  });
  test('a recipe with a size that only this book has', () => {
    const sizes = [
      {
        code: '777',
        shape: 'tube',
        diameterInches: 7,
        lengthInches: 77,
        flatInches: 14,
        stretch: 5.5,
        tailPerBubbleInches: 1,
        source: 'own',
      },
    ] as const;
    const items = [...sound.items, { id: '777-red', kind: 'balloon', size: '777', colour: 'red' }] as const;
    const offers = [...sound.offers, { id: 'o', supplier: 'shop', item: '777-red', count: 10, price: money(800) }];
    expect(brief({ ...figure('balloon dog: 777 in body\n', { body: 'red' }), sizes, items, offers })).toEqual([]);
    expect(brief(figure('balloon dog: 777 in body\n', { body: 'red' }))).toEqual(['error recipe.size at figures.0.recipe']);
  });
  test('a role without a colour, a colour for a role that is not there, a colour that is not there', () => {
    expect(
      brief(figure('balloon dog: 260 in body\nballoon nose: 260 in nose\n', { body: 'red', horn: 'mauve' })).filter((text) =>
        text.includes(' figures.'),
      ),
    ).toEqual([
      'error role.without-colour at figures.0.colourways.0.fill',
      'warning role.unknown at figures.0.colourways.0.fill.horn',
      'error colour.unknown at figures.0.colourways.0.fill.horn',
    ]);
  });
  test('a balloon that is no item of the book is named as it would be bought', () => {
    const [problem] = problemsOf(figure('balloon dog: round-5 in body, printed eyes\n', { body: 'red' }));
    expect(problem).toMatchObject({
      code: 'colourway.no-item',
      weight: 'warning',
      todo: 'Add the item "round-5 red printed eyes", or change the colour.',
    });
  });
  test('shares of colourways that sum to nought, and none at all', () => {
    expect(brief(figure('balloon dog: 260 in body\n', { body: 'red' }, 0))).toEqual(['error shares.zero at figures.0.colourways']);
    expect(brief({ figures: [{ id: 'dog', name: 'dog', recipe: 'balloon dog: 260 in body\n', colourways: [] }], gigs: [] })).toEqual([
      'error figure.no-colourway at figures.0.colourways',
    ]);
  });
  test('a tube of its own without its numbers', () => {
    expect(brief({ sizes: [{ code: '888', shape: 'tube', diameterInches: 8, source: 'own' }] })).toEqual([
      'warning size.incomplete at sizes.0',
    ]);
  });
});

describe('gigs', () => {
  test.each<[string, Partial<Gig>, readonly string[]]>([
    ['in the past', { day: date('2026-05-31') }, ['warning gig.past at gigs.0.day']],
    ['today is not the past', { day: today, line: {} }, ['warning lead.too-late at gigs.0.day']],
    ['ends before it starts', { ends: time('12:00') }, ['error gig.ends-first at gigs.0.ends']],
    ['ends when it starts', { ends: time('13:00') }, ['error gig.ends-first at gigs.0.ends']],
    ['ends at midnight', { ends: time('24:00') }, []],
    ['starts when clocks jump forward', { day: date('2027-03-28'), starts: time('01:30') }, ['error gig.clock-gap at gigs.0.starts']],
    [
      'ends when clocks go back',
      { day: date('2026-10-25'), starts: time('00:10'), ends: time('01:30') },
      ['warning gig.clock-twice at gigs.0.ends'],
    ],
    ['in a zone where that day is a plain one', { day: date('2027-03-28'), starts: time('01:30'), zone: 'Asia/Tokyo' }, []],
    ['in no zone', { zone: 'Europe/Atlantis' }, ['error zone.unknown at gigs.0.zone']],
    ['no artist', { artists: [] }, ['warning gig.no-artist at gigs.0.artists']],
    ['an artist twice', { artists: ['tansy', 'tansy'] }, ['error gig.artist-twice at gigs.0.artists.1']],
    ['nothing on the menu', { menu: [] }, ['error gig.no-menu at gigs.0.menu']],
    ['a menu nobody asks from', { menu: [{ figure: 'dog', share: 0 }] }, ['error shares.zero at gigs.0.menu']],
    ['tables without tables', { kind: 'tables' }, ['error gig.kind at gigs.0']],
    ['made to order without an order', { kind: 'made to order' }, ['error gig.kind at gigs.0']],
    ['a class without lessons', { kind: 'class' }, ['error gig.kind at gigs.0']],
    [
      'arrivals in disorder',
      {
        arrivals: {
          kind: 'stream',
          profile: [
            { minute: 60, weight: 1 },
            { minute: 0, weight: 1 },
          ],
        },
      },
      ['error gig.arrivals at gigs.0.arrivals.profile.1.minute'],
    ],
    [
      'arrivals of nobody',
      { arrivals: { kind: 'stream', profile: [{ minute: 0, weight: 0 }] } },
      ['error shares.zero at gigs.0.arrivals.profile'],
    ],
    ['party sizes of nobody', { line: { partySizes: [0, 0] } }, ['error shares.zero at gigs.0.line.partySizes']],
    ['a break after the end', { breaks: [{ atMinute: 200, minutes: 10 }] }, ['warning gig.break at gigs.0.breaks.0.atMinute']],
  ])('%s', (_, gig, expected) => {
    expect(brief(withGig(gig))).toEqual(expected);
  });
  test('guests may be missing only where arrivals have rates', () => {
    const { guests: _guests, ...bare } = fair;
    expect(brief({ gigs: [bare] })).toEqual(['error gig.no-guests at gigs.0']);
    expect(brief({ gigs: [{ ...bare, arrivals: { kind: 'stream', profile: [{ minute: 0, weight: 0.5 }] } }] })).toEqual([]);
  });
  test('a figure that no artist of the gig makes', () => {
    expect(brief({ artists: [{ id: 'tansy', name: 'Tansy', pace: 1, figures: [] }] })).toEqual([
      'warning menu.no-hands at gigs.0.menu.0.figure',
    ]);
  });
});

describe('two gigs of one artist on a day', () => {
  const second = (starts: string, driveMinutes: number, artists = ['tansy']): Partial<Book> => ({
    settings: { charge: { setUpMinutes: 15, strikeMinutes: 15 } },
    artists: [...sound.artists, { id: 'otis', name: 'Otis', pace: 1 }],
    gigs: [
      { ...fair, where: { name: 'the green', driveMinutes: 20 } },
      {
        ...fair,
        id: 'second',
        name: 'Second',
        starts: time(starts),
        ends: time('20:00'),
        artists,
        where: { name: 'elsewhere', driveMinutes },
      },
    ],
  });
  // 16:00 + 15 of packing up; setting up begins 15 minutes before the second
  test.each<[string, Partial<Book>, string | undefined]>([
    [
      'overlap',
      second('16:20', 5),
      'Tansy has "Summer fair" until 16:00 and "Second" from 16:20 on 2026-06-13: the two overlap, setting up and packing up counted.',
    ],
    [
      'leave too little for the drive',
      second('16:40', 40),
      'Tansy has "Summer fair" until 16:00 and "Second" from 16:40 on 2026-06-13: 10 minutes are left for a drive of at least 20.',
    ],
    [
      'leave too little for the way by home',
      second('17:10', 40),
      'Tansy has "Summer fair" until 16:00 and "Second" from 17:10 on 2026-06-13: 40 minutes are left, and the way by home takes 60.',
    ],
    ['fit exactly', second('17:30', 40), undefined],
    ['are of two artists', second('16:20', 5, ['otis']), undefined],
  ])('%s', (_, book, sentence) => {
    expect(problemsOf(book).map((problem) => problem.sentence)).toEqual(sentence === undefined ? [] : [sentence]);
  });
});

describe('supply', () => {
  test('a supplier with another currency', () => {
    expect(brief({ suppliers: [{ id: 'shop', name: 'a shop', leadWorkingDays: 3, carriage: money(400), currency: 'EUR' }] })).toEqual([
      'error currency.mixed at suppliers.0.currency',
    ]);
  });
  test('price breaks in disorder, at one bag, and upwards', () => {
    const breaks = (...steps: readonly (readonly [number, number])[]): Partial<Book> => ({
      offers: [
        {
          id: 'red-100',
          supplier: 'shop',
          item: '260-red',
          count: 100,
          price: money(800),
          breaks: steps.map(([bags, price]) => ({ bags, price: money(price) })),
        },
      ],
    });
    expect(brief(breaks([6, 700], [3, 650]))).toEqual(['error offer.breaks at offers.0.breaks.1']);
    expect(brief(breaks([1, 700]))).toEqual(['error offer.breaks at offers.0.breaks.0']);
    expect(brief(breaks([3, 700], [6, 750]))).toEqual(['warning offer.dearer at offers.0.breaks.1']);
  });
  test('an order that is late, one that arrived, one that is expected before it was placed', () => {
    const order = (expectedOn: string, arrivedOn?: string): Partial<Book> => ({
      orders: [
        {
          id: 'o',
          supplier: 'shop',
          orderedOn: date('2026-05-20'),
          expectedOn: date(expectedOn),
          lines: [],
          carriage: money(0),
          ...(arrivedOn === undefined ? {} : { arrivedOn: date(arrivedOn) }),
        },
      ],
    });
    expect(brief(order('2026-05-31'))).toEqual(['warning order.late at orders.0.expectedOn']);
    expect(brief(order('2026-05-31', '2026-05-29'))).toEqual([]);
    expect(brief(order('2026-05-19', '2026-05-29'))).toEqual(['error order.dates at orders.0.expectedOn']);
  });
  test('more used than there was', () => {
    const moves = [...sound.moves, { id: 'm2', day: today, item: '260-red', kind: 'used', place: 'home', count: 120 }] as const;
    expect(problemsOf({ moves })).toMatchObject([
      {
        code: 'stock.more-than-there-was',
        path: ['moves', 1],
        sentence: 'Stock move "m2" takes 120 of item "260-red" from "home", where the ledger has 100.',
      },
    ]);
  });
  test('a budget of nought', () => {
    expect(brief({ settings: { planning: { budget: money(0) } } })).toEqual(['warning budget.zero at settings.planning.budget']);
  });
  test('an unknown zone of the business, party sizes of nobody', () => {
    expect(brief({ business: { ...sound.business, zone: 'Mars/Olympus' }, settings: { line: { partySizes: [0] } } })).toEqual([
      'error zone.unknown at business.zone',
      'error shares.zero at settings.line.partySizes',
    ]);
  });
});

describe('what can be made at all', () => {
  const blueDog: Partial<Book> = {
    figures: [
      ...sound.figures,
      {
        id: 'blue-dog',
        name: 'blue dog',
        recipe: 'balloon dog: 260 in body\n',
        colourways: [{ id: 'blue', name: 'blue', fill: { body: 'blue' } }],
      },
    ],
  };
  test('one figure of the menu cannot', () => {
    expect(
      brief({
        ...blueDog,
        ...withGig({
          menu: [
            { figure: 'dog', share: 1 },
            { figure: 'blue-dog', share: 1 },
          ],
        }),
      }),
    ).toEqual(['warning menu.out-of-reach at gigs.0.menu.1.figure']);
  });
  test('nothing of the menu can', () => {
    expect(brief({ ...blueDog, ...withGig({ menu: [{ figure: 'blue-dog', share: 1 }] }) })).toEqual([
      'warning menu.nothing-possible at gigs.0.menu',
    ]);
  });
  test.each<[string, Partial<Book>]>([
    ['in store', { moves: [...sound.moves, { id: 'm2', day: today, item: '260-blue', kind: 'found', place: 'home', count: 1 }] }],
    ['for sale', { offers: [...sound.offers, { id: 'blue', supplier: 'shop', item: '260-blue', count: 1, price: money(1) }] }],
    [
      'in a mixed bag',
      { offers: [...sound.offers, { id: 'mix', supplier: 'shop', item: '260-red', count: 1, price: money(1), mix: { '260-blue': 1 } }] },
    ],
    [
      'on order',
      {
        orders: [
          {
            id: 'o',
            supplier: 'shop',
            orderedOn: today,
            expectedOn: today,
            lines: [{ item: '260-blue', bags: 1, count: 100, price: money(1) }],
            carriage: money(0),
          },
        ],
      },
    ],
  ])('it can when the balloon is %s', (_, book) => {
    expect(brief({ ...blueDog, ...withGig({ menu: [{ figure: 'blue-dog', share: 1 }] }), ...book })).toEqual([]);
  });
  test('a piece made to order in a colour out of reach is said, and the gig can still be entered', () => {
    const order = [{ figure: 'blue-dog', colourway: 'blue', count: 3 }];
    expect(brief({ ...blueDog, ...withGig({ kind: 'made to order', menu: [], order }) })).toEqual([
      'warning menu.out-of-reach at gigs.0.order.0',
    ]);
  });
  test('a lead time that misses the gig is said, and a counter where things are collected is not', () => {
    const soon = withGig({ day: date('2026-06-03') });
    expect(problemsOf(soon).map((problem) => problem.sentence)).toEqual([
      'Nothing that is ordered today arrives before 2026-06-04; gig "fair" is on 2026-06-03.',
    ]);
    expect(brief({ ...soon, suppliers: [{ id: 'shop', name: 'a counter', leadWorkingDays: 0, carriage: money(0) }] })).toEqual([]);
  });
});

test('a kit that names what has gone since is a warning, so that price lists can move on; an id twice is an error', () => {
  const kit = {
    id: 'k',
    name: 'For Ada',
    savedOn: today,
    wishes: { budget: money(6000), hours: 10, kind: 'parties' as const, figures: ['gryphon'] },
    lines: [{ offer: 'gone', bags: 1 }],
    tools: ['whistle'],
  };
  expect(brief({ kits: [kit, { ...kit, lines: [], tools: [], wishes: { ...kit.wishes, figures: [] } }] })).toEqual([
    'error id.twice at kits.1.id',
    'warning offer.unknown at kits.0.lines.0.offer',
    'warning item.unknown at kits.0.tools.0',
    'warning figure.unknown at kits.0.wishes.figures.0',
  ]);
});
