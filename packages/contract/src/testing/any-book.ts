import { type Book, bookLists, finishes, gigKinds } from '@twistwright/books';
import { addDays, date, type LocalDate, type LocalTime, type Money, money, time } from '@twistwright/units';
import fc from 'fast-check';

/** Any book whose form is right: names that may lead nowhere, texts of all kinds, every part present or not. For laws about the file. */

const text = (most: number) => fc.string({ unit: 'grapheme', minLength: 1, maxLength: most });
const line = text(40).filter((value) => /^[^\p{Cc}\p{Zl}\p{Zp}]+$/u.test(value));
const id = line.filter((value) => /^[^\s\p{C}](?:[^\p{Cc}\p{Zl}\p{Zp}]*[^\s\p{C}])?$/u.test(value));
const yamlTraps = fc.constantFrom(
  'no',
  'null',
  '~',
  '260',
  '007',
  '1e3',
  '- a',
  'a: b',
  '# x',
  "it's",
  '"q"',
  '*x',
  '&x',
  '!t',
  '2026-06-13',
  '12:30',
  '|',
  '>',
);
const name = fc.oneof(line, yamlTraps);
const anId = fc.oneof(id, yamlTraps);
const lines = fc.array(fc.oneof(line, yamlTraps, fc.constant(''), fc.constant('  indented'), fc.constant('trailing ')), { maxLength: 6 });
const note = fc.oneof(
  lines.map((list) => list.join('\n')),
  lines.map((list) => `${list.join('\n')}\n`),
  fc.string({ maxLength: 60 }),
);
const count = fc.integer({ min: 1, max: 1_000_000 });
const amount: fc.Arbitrary<Money> = fc.integer({ min: 0, max: 1_000_000_000 }).map(money);
const share = fc.double({ min: 0, max: 1, noNaN: true });
const minutes = fc.double({ min: 0, max: 10_080, noNaN: true });
const someMinutes = fc.double({ min: 0.001, max: 10_080, noNaN: true });
const day: fc.Arbitrary<LocalDate> = fc.integer({ min: -20_000, max: 20_000 }).map((days) => addDays(date('2026-01-01'), days));
const clock: fc.Arbitrary<LocalTime> = fc
  .integer({ min: 0, max: 1440 })
  .map((minute) => time(`${String(Math.floor(minute / 60)).padStart(2, '0')}:${String(minute % 60).padStart(2, '0')}`));
const fill = fc.dictionary(anId, anId, { maxKeys: 4, noNullPrototype: true }).filter((value) => !Object.hasOwn(value, '__proto__'));
const law = fc.oneof(
  fc.record({ law: fc.constant('log-normal' as const), median: someMinutes, sigma: share }),
  fc.record({ law: fc.constant('fixed' as const), minutes }),
);
const some = <T extends object, K extends keyof T>(model: { [P in keyof T]: fc.Arbitrary<T[P]> }, requiredKeys: K[]) =>
  fc.record(model, { requiredKeys, noNullPrototype: true });

const item = fc.oneof(
  some(
    {
      id: anId,
      kind: fc.constant('balloon' as const),
      size: anId,
      colour: anId,
      finish: fc.constantFrom(...finishes),
      print: name,
      maker: name,
      shelfMonths: fc.integer({ min: 1, max: 60 }),
    },
    ['id', 'kind', 'size', 'colour'],
  ),
  fc.record({ id: anId, kind: fc.constantFrom('tool' as const, 'sundry' as const), name }),
);
const figure = some(
  {
    id: anId,
    name,
    recipe: note,
    colourways: fc.array(some({ id: anId, name, share, fill, finish: fc.constantFrom(...finishes) }, ['id', 'name', 'fill']), {
      maxLength: 3,
    }),
    minutes: law,
    tags: fc.array(name, { maxLength: 3 }),
    difficulty: fc.integer({ min: 1, max: 5 }),
  },
  ['id', 'name', 'colourways'],
);
const gig = some(
  {
    id: anId,
    name,
    kind: fc.constantFrom(...gigKinds),
    day,
    starts: clock,
    ends: clock,
    client: anId,
    where: some({ name, address: note, miles: share, driveMinutes: minutes }, ['name']),
    artists: fc.array(anId, { maxLength: 3 }),
    guests: fc.integer({ min: 0, max: 100_000 }),
    arrivals: fc.oneof(
      fc.record({ kind: fc.constant('all at the start' as const) }),
      fc.record({
        kind: fc.constant('stream' as const),
        profile: fc.array(fc.record({ minute: minutes, weight: share }), { minLength: 1, maxLength: 3 }),
      }),
    ),
    menu: fc.array(some({ figure: anId, share, colourways: fc.array(anId, { maxLength: 2 }) }, ['figure', 'share']), { maxLength: 3 }),
    line: some(
      { hiddenShare: share, oneLine: fc.boolean(), partySizes: fc.array(share, { minLength: 1, maxLength: 3 }), choosing: law },
      [],
    ),
    agreement: some({ state: fc.constantFrom('asked' as const, 'quoted' as const, 'agreed' as const), fee: amount, depositPaidOn: day }, [
      'state',
    ]),
    packed: fc.array(anId, { maxLength: 2 }),
    outdoors: fc.boolean(),
    notes: note,
  },
  ['id', 'name', 'kind', 'day', 'starts', 'ends', 'artists', 'menu'],
);
const move = fc.oneof(
  some(
    {
      id: anId,
      day,
      item: anId,
      kind: fc.constant('arrived' as const),
      place: anId,
      bags: count,
      perBag: count,
      bagPrice: amount,
      goodUntil: day,
    },
    ['id', 'day', 'item', 'kind', 'place', 'bags', 'perBag'],
  ),
  fc.record({ id: anId, day, item: anId, kind: fc.constant('moved' as const), from: anId, to: anId, count }),
  some(
    {
      id: anId,
      day,
      item: anId,
      kind: fc.constant('counted' as const),
      place: anId,
      count: fc.nat(1000),
      bags: fc.array(fc.record({ perBag: count, bags: count }), { maxLength: 2 }),
    },
    ['id', 'day', 'item', 'kind', 'place', 'count'],
  ),
);
const inches = fc.double({ min: 0.001, max: 1000, noNaN: true });
const measured = <T>(entry: fc.Arbitrary<T>) => fc.array(entry, { minLength: 1, maxLength: 4 });
const few = <T>(entry: fc.Arbitrary<T>) => fc.array(entry, { maxLength: 3 });

export const anyBook: fc.Arbitrary<Book> = some(
  {
    book: fc.constant(1 as const),
    laidOn: day,
    business: some(
      {
        name,
        currency: fc.constantFrom('GBP', 'JPY', 'KWD'),
        zone: fc.constantFrom('Europe/London', 'Asia/Tokyo', 'UTC'),
        town: name,
        contact: some({ person: name, address: note }, []),
      },
      ['name', 'currency', 'zone'],
    ),
    settings: some(
      {
        pump: fc.record({ name, litresPerStroke: fc.double({ min: 0.01, max: 20, noNaN: true }) }),
        charge: some(
          { hourly: amount, byKind: fc.dictionary(fc.constantFrom(...gigKinds), some({ perHead: amount }, []), { noNullPrototype: true }) },
          [],
        ),
      },
      [],
    ),
    sizes: few(
      some(
        {
          code: anId,
          shape: fc.constantFrom('tube' as const, 'round' as const),
          diameterInches: fc.integer({ min: 1, max: 40 }),
          stretch: fc.constantFrom(5.4, 5.5),
          source: name,
        },
        ['code', 'shape', 'diameterInches', 'source'],
      ),
    ),
    colours: few(some({ id: anId, name, body: fc.constantFrom('#b8923a', '#000000', '#123456') }, ['id', 'name'])),
    items: few(item),
    figures: few(figure),
    artists: few(some({ id: anId, name, pace: fc.double({ min: 0.1, max: 5, noNaN: true }), figures: few(anId) }, ['id', 'name', 'pace'])),
    places: few(
      some({ id: anId, name, kind: fc.constantFrom('home' as const, 'apron' as const), pockets: few(anId), room: count }, [
        'id',
        'name',
        'kind',
      ]),
    ),
    suppliers: few(
      some({ id: anId, name, leadWorkingDays: fc.nat(20), orderBefore: clock, carriage: amount, closedOn: few(day) }, [
        'id',
        'name',
        'leadWorkingDays',
        'carriage',
      ]),
    ),
    offers: few(
      some(
        {
          id: anId,
          supplier: anId,
          item: anId,
          count,
          price: amount,
          breaks: few(fc.record({ bags: count, price: amount })),
          mix: fc.dictionary(id, share, { maxKeys: 3, noNullPrototype: true }).filter((value) => !Object.hasOwn(value, '__proto__')),
        },
        ['id', 'supplier', 'item', 'count', 'price'],
      ),
    ),
    clients: few(some({ id: anId, name, contact: some({ email: name }, []) }, ['id', 'name'])),
    gigs: few(gig),
    needs: few(some({ id: anId, item: anId, count, by: day, why: name }, ['id', 'item', 'count', 'by'])),
    orders: few(
      some(
        {
          id: anId,
          supplier: anId,
          orderedOn: day,
          expectedOn: day,
          lines: few(some({ offer: anId, item: anId, bags: count, count, price: amount }, ['item', 'bags', 'count', 'price'])),
          carriage: amount,
          arrivedOn: day,
        },
        ['id', 'supplier', 'orderedOn', 'expectedOn', 'lines', 'carriage'],
      ),
    ),
    moves: few(move),
    kits: few(
      fc.record({
        id: anId,
        name,
        savedOn: day,
        wishes: some(
          {
            budget: amount,
            hours: fc.double({ min: 0.001, max: 1000, noNaN: true }),
            kind: fc.constantFrom('tables' as const, 'parties' as const, 'small fairs' as const),
            mostColours: count,
            assortedBags: fc.boolean(),
            shares: fc.dictionary(id, share, { maxKeys: 3, noNullPrototype: true }).filter((value) => !Object.hasOwn(value, '__proto__')),
            have: few(fc.record({ item: anId, count: fc.nat(1000) })),
            takenOut: few(anId),
          },
          ['budget', 'hours', 'kind'],
        ),
        lines: few(fc.record({ offer: anId, bags: count })),
        tools: few(anId),
      }),
    ),
    balloonTests: few(
      some(
        {
          id: anId,
          day,
          size: fc.oneof(anId, fc.constantFrom('260', '160', 'round-5')),
          maker: name,
          item: anId,
          flatInches: measured(inches),
          fullInches: measured(inches),
          twists: measured(fc.record({ bubbles: fc.integer({ min: 1, max: 100 }), tailInches: inches, leftInches: inches })),
          note,
        },
        ['id', 'day', 'size'],
      ),
    ),
  },
  ['book', 'business', ...bookLists.filter((list) => list !== 'kits' && list !== 'balloonTests')],
);
