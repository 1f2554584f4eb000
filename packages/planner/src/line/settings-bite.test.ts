import { type Book, emptyBook, type Gig, type GigKind, type LineSettings } from '@twistwright/books';
import { date, mean, money, time } from '@twistwright/units';
import { describe, expect, test } from 'vitest';
import { lineModelOf, withStock } from './line-of-gig.ts';
import type { CountName, LineSamples } from './line-samples.ts';
import { runLine } from './run-line.ts';

/** Nothing left to habit: every setting below differs from this by one key. */
const plain: LineSettings = {
  partySizes: [1],
  joining: { free: 0 },
  patience: { law: 'endless' },
  choosing: { law: 'fixed', minutes: 0.2 },
  colourChoosingMinutes: 0,
  handingOver: { law: 'fixed', minutes: 0.1 },
  copycat: { figures: 0, colours: 0 },
  fatiguePerHour: 0,
  chanceOfPop: 0,
  hiddenShare: 0,
  repeatShare: 0,
  closing: { rule: 'none' },
};
const book: Book = {
  ...emptyBook({ name: 'A business', currency: 'GBP', zone: 'Europe/London' }),
  colours: ['red', 'green'].map((id) => ({ id, name: id })),
  items: [
    { id: 'red', kind: 'balloon', size: '260', colour: 'red' },
    { id: 'green', kind: 'balloon', size: '260', colour: 'green' },
    { id: 'stick', kind: 'sundry', name: 'stick' },
  ],
  figures: [
    {
      id: 'dog',
      name: 'dog',
      recipe: 'balloon dog: 260 in body',
      minutes: { law: 'log-normal', median: 2, sigma: 0.3 },
      colourways: [
        { id: 'red', name: 'red', share: 3, fill: { body: 'red' } },
        { id: 'green', name: 'green', share: 1, fill: { body: 'green' } },
      ],
    },
    {
      id: 'hat',
      name: 'hat',
      recipe: 'balloon a: 260 in body\nballoon b: 260 in body',
      minutes: { law: 'log-normal', median: 3, sigma: 0.3 },
      colourways: [{ id: 'green', name: 'green', fill: { body: 'green' } }],
      extras: [{ item: 'stick', count: 1, minutes: 1 }],
    },
    { id: 'crown', name: 'crown', recipe: 'balloon a: 260 in body', colourways: [{ id: 'red', name: 'red', fill: { body: 'red' } }] },
  ],
  artists: [
    { id: 'a', name: 'A', pace: 1 },
    { id: 'b', name: 'B', pace: 1 },
    { id: 'slow', name: 'Slow', pace: 1.5 },
    { id: 'dogs', name: 'Dogs', pace: 1, figures: ['dog'] },
  ],
};
const gig: Gig = {
  id: 'g',
  name: 'G',
  kind: 'line',
  day: date('2026-06-13'),
  starts: time('13:00'),
  ends: time('16:00'),
  artists: ['a'],
  guests: 60,
  arrivals: { kind: 'stream', profile: [0, 180].map((minute) => ({ minute, weight: 1 })) },
  menu: [
    { figure: 'dog', share: 2 },
    { figure: 'hat', share: 1 },
  ],
  line: plain,
};

type Change = Partial<Gig> & { readonly settings?: LineSettings; readonly stock?: Readonly<Record<string, number>> };
/** What is looked at: a mean over runs, or something worked out of the samples. */
type Look = CountName | 'meanWait' | 'finish' | 'busy' | 'dogs' | 'red' | 'green' | 'stick' | 'spreadOfDogs' | 'spreadOfRed';

const runs = 150;
function play({ settings, stock, ...change }: Change): { readonly samples: LineSamples; readonly items: readonly string[] } {
  const changed = { ...gig, ...change, line: { ...plain, ...settings } };
  const made = lineModelOf(book, changed);
  if (!made.ok) throw new Error(JSON.stringify(made.error));
  const model = stock === undefined ? made.value : withStock(made.value, new Map(Object.entries(stock)));
  return { samples: runLine(model, { seed: 1, runs }), items: model.items.map((item) => item.id) };
}
const squareOff = (values: readonly number[]): number => mean(values.map((value) => (value - mean(values)) ** 2));
function seen(look: Look, change: Change): number {
  const { samples, items } = play(change);
  const at = (matrix: ArrayLike<number>, column: number): readonly number[] =>
    Array.from({ length: runs }, (_, run) => matrix[run * (matrix.length / runs) + column] ?? 0);
  const item = (id: string): readonly number[] => (items.includes(id) ? at(samples.items, items.indexOf(id)) : [0]);
  switch (look) {
    case 'meanWait':
      return mean(samples.waitMinutes) / mean(samples.served);
    case 'finish':
      return mean(samples.finish);
    case 'busy':
      return mean(samples.busy);
    case 'dogs':
      return mean(at(samples.figures, 0));
    case 'red':
    case 'green':
    case 'stick':
      return mean(item(look));
    case 'spreadOfDogs':
      return squareOff(at(samples.figures, 0).map((dogs, run) => dogs / (samples.served[run] ?? 1)));
    case 'spreadOfRed':
      return squareOff(item('red').map((count, run) => count / (samples.served[run] ?? 1)));
    default:
      return mean(samples[look]);
  }
}
/** What is seen after the second change is more than after the first. */
type Law = readonly [says: string, look: Look, less: Change, more: Change];
const set = (settings: LineSettings): Change => ({ settings });
const crowd: Change = { guests: 120 };

/** One law for every key of the line's habits: the type asks for each of them. */
const habits: { readonly [K in keyof Required<LineSettings>]: readonly Law[] } = {
  partySizes: [['bigger parties wait longer', 'meanWait', {}, set({ partySizes: [0, 0, 0, 1] })]],
  joining: [
    ['shyer guests stay away', 'notJoined', set({ joining: { free: 2, scale: 50 } }), set({ joining: { free: 2, scale: 5 } })],
    ['a longer free line is joined by more', 'notJoined', set({ joining: { free: 9, scale: 5 } }), set({ joining: { free: 1, scale: 5 } })],
    ['less room sends more away', 'notJoined', set({ joining: { free: 0, room: 6 } }), set({ joining: { free: 0, room: 2 } })],
    ['room for one leaves nobody waiting', 'waited', set({ joining: { free: 0, room: 1 } }), set({ joining: { free: 0, room: 3 } })],
  ],
  patience: [
    [
      'less patience, more give up',
      'gaveUp',
      { ...crowd, settings: { patience: { law: 'exponential', mean: 40 } } },
      { ...crowd, settings: { patience: { law: 'exponential', mean: 10 } } },
    ],
    [
      'nobody gives up with endless patience',
      'gaveUp',
      crowd,
      { ...crowd, settings: { patience: { law: 'log-normal', median: 15, sigma: 0.5 } } },
    ],
  ],
  choosing: [['longer choosing, longer waits', 'meanWait', {}, set({ choosing: { law: 'gamma', mean: 1, shape: 2 } })]],
  colourChoosingMinutes: [['choosing colours too takes more of the artist', 'busy', {}, set({ colourChoosingMinutes: 0.5 })]],
  handingOver: [['longer handing over, longer waits', 'meanWait', {}, set({ handingOver: { law: 'exponential', mean: 1 } })]],
  copycat: [
    ['figures catch on', 'spreadOfDogs', {}, set({ copycat: { figures: 50, colours: 0 } })],
    ['colours catch on', 'spreadOfRed', {}, set({ copycat: { figures: 0, colours: 50 } })],
  ],
  fatiguePerHour: [['tired hands take longer', 'meanWait', {}, set({ fatiguePerHour: 0.3 })]],
  weatherFactor: [['bad weather slows the hands', 'meanWait', {}, set({ weatherFactor: 1.4 })]],
  chanceOfPop: [
    ['pops use more balloons', 'green', {}, set({ chanceOfPop: 0.2 })],
    ['pops take time', 'busy', {}, set({ chanceOfPop: 0.2 })],
  ],
  hiddenShare: [['more whom nobody counted, more come', 'arrived', {}, set({ hiddenShare: 0.5 })]],
  repeatShare: [['some come back for a repair', 'returned', {}, set({ repeatShare: 0.4 })]],
  breakPerHourMinutes: [['a break an hour, longer waits', 'meanWait', {}, set({ breakPerHourMinutes: 15 })]],
  closing: [
    [
      'without a rule nobody is turned away',
      'turnedAway',
      crowd,
      { ...crowd, settings: { closing: { rule: 'fixed time', minutesBeforeEnd: 10 } } },
    ],
    [
      'closing earlier turns more away',
      'turnedAway',
      set({ closing: { rule: 'fixed time', minutesBeforeEnd: 10 } }),
      set({ closing: { rule: 'fixed time', minutesBeforeEnd: 60 } }),
    ],
    [
      'work ahead leaves fewer unserved than no rule',
      'unserved',
      { ...crowd, settings: { closing: { rule: 'work ahead', keptBackMinutes: 5 } } },
      crowd,
    ],
    [
      'more kept back, more turned away',
      'turnedAway',
      { ...crowd, settings: { closing: { rule: 'work ahead', keptBackMinutes: 0 } } },
      { ...crowd, settings: { closing: { rule: 'work ahead', keptBackMinutes: 30 } } },
    ],
    [
      'more minutes counted per head, more turned away',
      'turnedAway',
      { ...crowd, settings: { closing: { rule: 'work ahead', keptBackMinutes: 0, minutesPerHead: 2 } } },
      { ...crowd, settings: { closing: { rule: 'work ahead', keptBackMinutes: 0, minutesPerHead: 8 } } },
    ],
  ],
  overtimeMinutes: [['overtime serves more', 'served', crowd, { ...crowd, settings: { overtimeMinutes: 30 } }]],
  outOfStock: [
    [
      'who takes another figure is served',
      'served',
      { stock: { red: 10, green: 1000, stick: 1000 }, settings: { outOfStock: 'disappointed' } },
      { stock: { red: 10, green: 1000, stick: 1000 }, settings: { outOfStock: 'other colour' } },
    ],
    [
      'another figure helps where no colour does',
      'served',
      { stock: { red: 1000, green: 1000, stick: 3 }, settings: { outOfStock: 'other colour' } },
      { stock: { red: 1000, green: 1000, stick: 3 }, settings: { outOfStock: 'other colour, then other figure' } },
    ],
    [
      'the next figure in order is taken by everybody',
      'served',
      { stock: { red: 1000, green: 1000, stick: 3 }, settings: { outOfStock: 'other colour, then other figure' } },
      { stock: { red: 1000, green: 1000, stick: 3 }, settings: { outOfStock: 'next figure in order' } },
    ],
  ],
  mostEach: [
    ['who may have several comes back', 'returned', set({ repeatShare: 0.6, mostEach: 1 }), set({ repeatShare: 0.6, mostEach: 5 })],
  ],
  helper: [
    ['somebody who pumps serves more', 'served', crowd, { ...crowd, settings: { helper: { pumps: 0.6 } } }],
    [
      'somebody who draws all faces saves more than one who draws half',
      'busy',
      set({ helper: { draws: 0.01 } }),
      set({ helper: { draws: 0.5 } }),
    ],
    ['drawing half is less than drawing all oneself', 'busy', set({ helper: { draws: 0.5 } }), set({})],
    [
      'drawing at the same pace changes nothing against drawing slower',
      'busy',
      set({ helper: { draws: 1 } }),
      set({ helper: { draws: 1.5 } }),
    ],
  ],
  oneLine: [
    [
      'two lines keep people waiting longer than one',
      'meanWait',
      { ...crowd, artists: ['a', 'b'] },
      { ...crowd, artists: ['a', 'b'], settings: { oneLine: false } },
    ],
  ],
  warmUpMinutes: [['a start-up stretch is left out', 'arrived', set({ warmUpMinutes: 60 }), {}]],
};
describe('every habit of the line bites, in the direction one expects', () => {
  test.each(Object.entries(habits).flatMap(([key, laws]) => laws.map((law) => [key, ...law] as const)))(
    '%s: %s',
    (_key, _says, look, less, more) => {
      expect(seen(look, more)).toBeGreaterThan(seen(look, less));
    },
  );
  test('the least of it does nothing', () => {
    expect(seen('turnedAway', crowd)).toBe(0);
    expect(seen('gaveUp', crowd)).toBe(0);
    expect(seen('busy', set({ helper: { draws: 1 } }))).toBe(seen('busy', {}));
    expect(seen('notJoined', set({ joining: { free: 0, room: 100_000 } }))).toBe(0);
  });
});

const orderOf = (count: number): Change => ({ kind: 'made to order', order: [{ figure: 'hat', colourway: 'green', count }] });
const classOf = (learners: number, practiceFactor: number): Change => ({
  kind: 'class',
  classPlan: { learners, practiceFactor, lessons: [{ figure: 'dog', minutes: 20 }] },
});
const fixed = (minutes: number) => ({ law: 'fixed', minutes }) as const;
const tablesOf = (tables: number, foodAfter: number, walking = 1): Change => ({
  kind: 'tables',
  settings: { partySizes: [0, 1] },
  tables: { tables, foodAfter: fixed(foodAfter), leaveAfter: fixed(30), walking: fixed(walking) },
});
/** Keys of a gig that its plan of money and paper reads, not its line. */
type NotOfTheLine = 'id' | 'name' | 'day' | 'zone' | 'client' | 'where' | 'outdoors' | 'agreement' | 'packed' | 'notes' | 'line';
const keys: { readonly [K in Exclude<keyof Required<Gig>, NotOfTheLine>]: readonly Law[] } = {
  kind: [['children at a party are all there at the start', 'meanWait', {}, { kind: 'party', arrivals: { kind: 'all at the start' } }]],
  starts: [['an earlier start serves more of a crowd', 'served', crowd, { ...crowd, starts: time('12:00') }]],
  ends: [['a later end serves more of a crowd', 'served', crowd, { ...crowd, ends: time('17:00') }]],
  artists: [
    ['two serve more than one', 'served', crowd, { ...crowd, artists: ['a', 'b'] }],
    ['a slower one serves fewer', 'served', { ...crowd, artists: ['slow'] }, crowd],
    ['who makes dogs only makes no hat', 'dogs', {}, { artists: ['dogs'] }],
  ],
  guests: [
    ['more expected, more come', 'arrived', {}, crowd],
    ['also at the start', 'arrived', { arrivals: { kind: 'all at the start' } }, { ...crowd, arrivals: { kind: 'all at the start' } }],
  ],
  arrivals: [
    ['all at the start wait longer', 'meanWait', {}, { arrivals: { kind: 'all at the start' } }],
    [
      'all in the last hour wait longer',
      'unserved',
      {},
      { arrivals: { kind: 'stream', profile: [120, 180].map((minute) => ({ minute, weight: 1 })) } },
    ],
  ],
  menu: [
    [
      'a greater share is asked for more',
      'dogs',
      {},
      {
        menu: [
          { figure: 'dog', share: 9 },
          { figure: 'hat', share: 1 },
        ],
      },
    ],
    [
      'colourways that are not offered are not made',
      'green',
      {
        menu: [
          { figure: 'dog', share: 1, colourways: ['red'] },
          { figure: 'hat', share: 0.01 },
        ],
      },
      {},
    ],
  ],
  breaks: [
    ['a break makes people wait', 'meanWait', {}, { breaks: [{ atMinute: 60, minutes: 30 }] }],
    [
      'a break of everybody longer than of one',
      'meanWait',
      { ...crowd, artists: ['a', 'b'], breaks: [{ atMinute: 60, minutes: 30, artist: 'b' }] },
      { ...crowd, artists: ['a', 'b'], breaks: [{ atMinute: 60, minutes: 30 }] },
    ],
  ],
  premade: [
    ['what is made beforehand serves more', 'served', crowd, { ...crowd, premade: [{ figure: 'dog', colourway: 'red', count: 15 }] }],
    [
      'and is used up whether or not it is asked for',
      'red',
      { guests: 1 },
      { guests: 1, premade: [{ figure: 'dog', colourway: 'red', count: 15 }] },
    ],
  ],
  special: [
    [
      'the child whose party it is gets a piece that is not on the menu',
      'red',
      { kind: 'party', arrivals: { kind: 'all at the start' }, guests: 5, menu: [{ figure: 'hat', share: 1 }] },
      {
        kind: 'party',
        arrivals: { kind: 'all at the start' },
        guests: 5,
        menu: [{ figure: 'hat', share: 1 }],
        special: { figure: 'crown' },
      },
    ],
  ],
  tables: [
    ['more tables hold more', 'notJoined', tablesOf(8, 15), tablesOf(2, 15)],
    ['food that comes sooner leaves more without', 'gaveUp', tablesOf(8, 30), tablesOf(8, 5)],
    ['a longer way between tables too', 'gaveUp', tablesOf(8, 15, 0.2), tablesOf(8, 15, 4)],
  ],
  strolling: [
    [
      'a longer way between groups reaches fewer',
      'served',
      { ...crowd, kind: 'strolling', strolling: { walking: fixed(6) } },
      { ...crowd, kind: 'strolling', strolling: { walking: fixed(1) } },
    ],
  ],
  order: [['more pieces take longer', 'finish', orderOf(5), orderOf(12)]],
  classPlan: [
    ['more learners take more balloons', 'red', classOf(6, 2), classOf(12, 2)],
    ['more practice takes more balloons', 'red', classOf(6, 1.5), classOf(6, 3)],
  ],
  weather: [
    ['cold hands are slower', 'meanWait', { weather: 'mild' }, { weather: 'cold' }],
    ['rain slows too', 'meanWait', { weather: 'mild' }, { weather: 'wet' }],
    ['heat pops more', 'pops', { weather: 'mild', settings: { chanceOfPop: 0.1 } }, { weather: 'hot', settings: { chanceOfPop: 0.1 } }],
  ],
};
describe('every key of a gig that its line reads bites', () => {
  test.each(Object.entries(keys).flatMap(([key, laws]) => laws.map((law) => [key, ...law] as const)))(
    '%s: %s',
    (_key, _says, look, less, more) => {
      expect(seen(look, more)).toBeGreaterThan(seen(look, less));
    },
  );
  test('an artist who is not booked is counted as one at the usual pace', () => {
    expect(seen('served', { artists: [] })).toBe(seen('served', { artists: ['a'] }));
  });
});

describe('laws of time', () => {
  const making = (minutes: NonNullable<Book['figures'][number]['minutes']>): number => {
    const figures = book.figures.map((figure) => ({ ...figure, minutes }));
    const model = lineModelOf({ ...book, figures }, gig);
    if (!model.ok) throw new Error(JSON.stringify(model.error));
    const samples = runLine(model.value, { seed: 3, runs });
    return squareOff(Array.from(samples.busy, (busy, run) => busy / (samples.served[run] ?? 1)));
  };
  test('making times of the same mean waver more from fixed to gamma to exponential', () => {
    const [none = 0, some = 0, most = 0] = [
      making({ law: 'fixed', minutes: 2 }),
      making({ law: 'gamma', mean: 2, shape: 4 }),
      making({ law: 'exponential', mean: 2 }),
    ];
    expect(none).toBeLessThan(some);
    expect(some).toBeLessThan(most);
  });
});

test('the price of a bag has no say in the line', () => {
  const priced: Book = { ...book, offers: [{ id: 'o', supplier: 's', item: 'red', count: 100, price: money(900) }] };
  expect(lineModelOf(priced, gig)).toEqual(lineModelOf(book, gig));
});

test('kinds of gig differ in nature unless they say otherwise', () => {
  const kinds: readonly GigKind[] = ['line', 'party', 'tables', 'strolling', 'made to order', 'class'];
  const bare = ({ line: _line, ...rest }: Gig): Gig => rest;
  const closing = kinds.map((kind) => {
    const model = lineModelOf(book, { ...bare(gig), kind });
    return model.ok ? model.value.closing.kind : 'unplayed';
  });
  expect(closing).toEqual(['work ahead', 'none', 'none', 'none', 'none', 'none']);
});
