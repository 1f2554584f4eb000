import { mkdtempSync, rmSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { api, call } from '@twistwright/contract';
import { freshDatabase } from '@twistwright/store/testing';
import { date, money } from '@twistwright/units';
import { afterAll, beforeAll, describe, expect, test } from 'vitest';
import type { Ports } from './app.ts';
import { json, type OpenApp, openApp, refused } from './testing/open-app.ts';

const folder = mkdtempSync(join(tmpdir(), 'twistwright-writers-'));
afterAll(() => rmSync(folder, { recursive: true, force: true }));
const databases: readonly (readonly [Ports['storeKind'], string])[] = [
  ['sqlite', join(folder, 'book.sqlite')],
  ...(process.env.TEST_POSTGRES === undefined
    ? []
    : [['postgresql', await freshDatabase(process.env.TEST_POSTGRES, 'twistwright_writers_test')] as const]),
];

/** Two servers on one database, as two browsers would meet it. */
describe.each(databases)('two who write at once on %s', (storeKind, database) => {
  let one: OpenApp;
  let other: OpenApp;
  beforeAll(async () => {
    one = await openApp({ storeKind, database });
    // SQLite keeps one connection a process; two browsers on one server are what happens there.
    other = storeKind === 'sqlite' ? one : await openApp({ storeKind, database });
    await call(api.start, { body: { from: 'demo' } }, one.options);
  });
  afterAll(async () => {
    if (other !== one) await other.close();
    await one.close();
    expect([...one.logged, ...other.logged]).toEqual([]);
  });

  test('a book is begun once; the second is told so', async () => {
    expect(await refused(call(api.start, { body: { from: 'demo' } }, other.options))).toEqual({
      status: 409,
      sentence: 'There is a book already: export it before you begin another.',
    });
  });
  test('changes of different things all count, however they fall together', async () => {
    const before = (await one.ports.store.revision()) ?? 0;
    const clients = Array.from({ length: 12 }, (_, i) => ({ id: `c${i}`, name: `Client ${i}` }));
    await Promise.all(
      clients.map((body, i) => call(api.clients.put, { params: { id: body.id }, body }, (i % 2 === 0 ? one : other).options)),
    );
    const kept = await call(api.clients.list, {}, other.options);
    expect(clients.filter(({ id }) => !kept.some((client) => client.id === id))).toEqual([]);
    expect(await one.ports.store.revision()).toBe(before + 12);
  });
  test('business and settings are kept apart: neither takes the other back', async () => {
    const business = await call(api.business.get, {}, one.options);
    const settings = await call(api.settings.get, {}, one.options);
    await Promise.all([
      call(api.business.put, { body: { ...business, town: 'Elsewhere' } }, one.options),
      call(api.settings.put, { body: { ...settings, charge: { hourly: money(7700) } } }, other.options),
    ]);
    expect((await call(api.business.get, {}, other.options)).town).toBe('Elsewhere');
    expect((await call(api.settings.get, {}, one.options)).charge?.hourly).toBe(7700);
  });
  test('what one deletes the other cannot name: one of the two is refused, and the book stays in order', async () => {
    for (let turn = 0; turn < 5; turn++) {
      await call(api.artists.put, { params: { id: 'guest' }, body: { id: 'guest', name: 'Guest', pace: 1 } }, one.options);
      const gig = await call(api.gigs.get, { params: { id: 'gull-lane' } }, one.options);
      const outcomes = await Promise.allSettled([
        call(api.artists.delete, { params: { id: 'guest' } }, one.options),
        call(api.gigs.put, { params: { id: gig.id }, body: { ...gig, artists: [...gig.artists, 'guest'] } }, other.options),
      ]);
      expect(outcomes.filter(({ status }) => status === 'fulfilled')).toHaveLength(1);
      const { problems } = await call(api.check, { body: { today: date('2026-06-02') } }, one.options);
      expect(problems.filter(({ weight }) => weight === 'error')).toEqual([]);
      await call(api.gigs.put, { params: { id: gig.id }, body: gig }, one.options);
    }
  });
  test('of two who say what they have seen, the second is told and nothing of the first is lost', async () => {
    const tag = (await one.ask('/api/book')).headers.get('etag') ?? '';
    const put = (who: OpenApp, name: string) =>
      who.ask('/api/clients/mill', {
        method: 'PUT',
        body: JSON.stringify({ id: 'mill', name }),
        headers: { ...json, 'if-match': tag },
      });
    const answers = await Promise.all([put(one, 'Old Mill'), put(other, 'New Mill')]);
    expect(answers.map(({ status }) => status).toSorted()).toEqual([200, 412]);
    const said = await Promise.all(answers.filter(({ status }) => status === 412).map((lost) => lost.json()));
    expect(said).toMatchObject([
      { title: expect.stringMatching(/^Somebody else has changed the book since \(it is at revision \d+ now\)/u) },
    ]);
    const won = (await answers.find(({ status }) => status === 200)?.json()) as { name: string };
    expect((await call(api.clients.get, { params: { id: 'mill' } }, one.options)).name).toBe(won.name);
  });
  test('asking for the same twice is as asking once', async () => {
    const need = { id: 'twice', item: '260-red', count: 5, by: date('2026-06-20') };
    for (let turn = 0; turn < 2; turn++) await call(api.needs.put, { params: { id: 'twice' }, body: need }, one.options);
    expect((await call(api.needs.list, {}, one.options)).filter(({ id }) => id === 'twice')).toEqual([need]);
    await call(api.needs.delete, { params: { id: 'twice' } }, one.options);
    expect((await refused(call(api.needs.delete, { params: { id: 'twice' } }, one.options))).status).toBe(404);
  });
});
