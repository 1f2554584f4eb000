import { type Book, emptyBook, type Gig } from '@twistwright/books';
import { date, money, time } from '@twistwright/units';
import { describe, expect, test } from 'vitest';
import type { Store } from '../store.ts';
import { openStore } from '../store.ts';

const gig = (id: string): Gig => ({
  id,
  name: `Gig ${id}`,
  kind: 'line',
  day: date('2026-06-13'),
  starts: time('13:00'),
  ends: time('16:00'),
  artists: ['a'],
  guests: 70.5,
  menu: [{ figure: 'dog', share: 1 }],
  outdoors: true,
  where: { name: 'Grünfläche ✓', miles: 3.25 },
});
const book: Book = {
  ...emptyBook({ name: 'A business', currency: 'GBP', zone: 'Europe/London' }),
  laidOn: date('2026-06-01'),
  settings: { charge: { hourly: money(12_000) } },
  sizes: [],
  items: [
    { id: 'b', kind: 'balloon', size: '260', colour: 'red', maker: 'Osprey & Daughters', chanceOfPop: 0.03 },
    { id: 'a', kind: 'tool', name: 'pump' },
  ],
  moves: [
    { id: 'm1', day: date('2026-06-01'), item: 'b', kind: 'arrived', place: 'home', bags: 2, perBag: 100, bagPrice: money(820) },
    { id: 'm2', day: date('2026-06-02'), item: 'b', kind: 'counted', place: 'home', count: 190, bags: [{ perBag: 100, bags: 1 }] },
  ],
  gigs: [gig('one'), gig('two')],
  kits: [
    {
      id: 'k',
      name: 'For Ada',
      savedOn: date('2026-06-03'),
      wishes: { budget: money(6000), hours: 12.5, kind: 'parties', have: [{ item: 'a', count: 1 }] },
      lines: [{ offer: 'o', bags: 2 }],
      tools: ['a'],
    },
  ],
  balloonTests: [
    {
      id: 't1',
      day: date('2026-06-02'),
      size: '260',
      maker: 'Osprey & Daughters',
      item: 'b',
      flatInches: [10.6, 10.75],
      fullInches: [57.5],
      twists: [{ bubbles: 10, tailInches: 6, leftInches: 2.5 }],
      note: 'a new bag',
    },
    { id: 't2', day: date('2026-06-03'), size: '160', fullInches: [56] },
  ],
};

/** What every store must do; run on SQLite and on PostgreSQL for real. `fresh` opens an empty one. */
export function storeContract(name: string, url: () => string | Promise<string>): void {
  const withStore = async (work: (store: Store) => Promise<void>): Promise<void> => {
    const store = await openStore(await url(), (value) => value as Book);
    try {
      await work(store);
    } finally {
      await store.close();
    }
  };
  describe(`store on ${name}`, () => {
    test('a book comes back as it went in, order and absent keys included', () =>
      withStore(async (store) => {
        expect(await store.replace(book)).toMatchObject({ outcome: 'written' });
        expect((await store.read())?.book).toEqual(book);
      }));
    test('an entry is replaced in its place, a new one comes last, a removed one is gone', () =>
      withStore(async (store) => {
        await store.replace(book);
        await store.put('gigs', { ...gig('one'), guests: 90 });
        await store.put('gigs', gig('three'));
        await store.remove('gigs', 'two');
        expect((await store.read())?.book.gigs.map((g) => [g.id, g.guests])).toEqual([
          ['one', 90],
          ['three', 70.5],
        ]);
      }));
    test('the revision grows by one a write, and a stale writer changes nothing', () =>
      withStore(async (store) => {
        const first = await store.replace(book);
        const second = await store.put('gigs', { ...gig('one'), guests: 1 }, first.revision);
        expect(second).toEqual({ outcome: 'written', revision: first.revision + 1 });
        expect(await store.put('gigs', { ...gig('one'), guests: 2 }, first.revision)).toEqual({
          outcome: 'stale',
          revision: second.revision,
        });
        const now = await store.read();
        expect([now?.revision, now?.book.gigs[0]?.guests]).toEqual([second.revision, 1]);
      }));
    test('the revision alone is that of the book, also when it was not read', () =>
      withStore(async (store) => {
        await store.replace(book);
        const { revision } = await store.put('gigs', { ...gig('one'), guests: 3 });
        expect([await store.revision(), (await store.read())?.revision]).toEqual([revision, revision]);
      }));
    test('a book is begun only once: whoever comes second changes nothing', () =>
      withStore(async (store) => {
        const { revision } = await store.replace(book);
        expect(await store.replace({ ...book, gigs: [] }, 0)).toEqual({ outcome: 'stale', revision });
        expect((await store.read())?.book.gigs).toHaveLength(2);
      }));
    test('a property that no column keeps is refused, and the write leaves nothing behind', () =>
      withStore(async (store) => {
        await store.replace(book);
        await expect(store.put('gigs', { ...gig('one'), guests: 5, surprise: 1 })).rejects.toThrow('gigs.surprise');
        await expect(store.put('moves', { ...book.moves[0], bagPrice: 0.5 })).rejects.toThrow('bagPrice');
        expect((await store.read())?.book).toEqual(book);
      }));
    test('twenty writers at once: every write counts', () =>
      withStore(async (store) => {
        const { revision } = await store.replace(book);
        await Promise.all(
          Array.from({ length: 20 }, (_, i) => store.put('needs', { id: `n${i}`, item: 'b', count: i, by: date('2026-06-10') })),
        );
        const now = await store.read();
        expect([now?.revision, now?.book.needs.length]).toEqual([revision + 20, 20]);
      }));
  });
}
