import { mkdtempSync, rmSync } from 'node:fs';
import { readFile } from 'node:fs/promises';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { api, type CallOptions, call, type RouteInput, readBook } from '@twistwright/contract';
import { freshDatabase } from '@twistwright/store/testing';
import { date, money } from '@twistwright/units';
import { afterAll, beforeAll, describe, expect, test } from 'vitest';
import type { Ports } from './app.ts';
import { type OpenApp, openApp, refused, root } from './testing/open-app.ts';

const folder = mkdtempSync(join(tmpdir(), 'twistwright-server-'));
afterAll(() => rmSync(folder, { recursive: true, force: true }));

const databases: readonly (readonly [Ports['storeKind'], string])[] = [
  ['sqlite', join(folder, 'book.sqlite')],
  ...(process.env.TEST_POSTGRES === undefined
    ? []
    : [['postgresql', await freshDatabase(process.env.TEST_POSTGRES, 'twistwright_server_test')] as const]),
];

describe.each(databases)('the server on %s', (storeKind, database) => {
  let opened: OpenApp;
  let ask: OpenApp['ask'];
  let options: CallOptions;
  beforeAll(async () => {
    opened = await openApp({ storeKind, database });
    ({ ask, options } = opened);
    await call(api.book.put, { body: emptyText, query: { name: 'empty.yaml' } }, options);
  });
  afterAll(async () => {
    await opened.close();
    expect(opened.logged).toEqual([]);
  });
  const emptyText = `book: 1
business: { name: Empty, currency: GBP, zone: Europe/London }
colours: []
items: []
figures: []
artists: []
places: []
suppliers: []
offers: []
clients: []
gigs: []
needs: []
orders: []
moves: []
`;
  test('the demo file goes in whole, its dates in the present, and comes out the same as text and as JSON', async () => {
    const demo = await readFile(join(root, 'demo/book.yaml'), 'utf8');
    const { problems } = await call(api.book.put, { body: demo, query: { name: 'book.yaml' } }, options);
    expect(problems.every((problem) => problem.weight === 'warning')).toBe(true);
    const book = await call(api.book.get, {}, options);
    expect([book.laidOn, book.gigs.length, book.figures.length >= 30, book.items.length >= 80]).toEqual([undefined, 8, true, true]);
    const text = await call(api.book.text, { query: { form: 'yaml' } }, options);
    const again = readBook(text, { name: 'book.yaml' });
    expect(again.ok && again.value).toEqual(book);
  });
  test('entries are put, read, listed and deleted; the revision moves on', async () => {
    const client = { id: 'new-client', name: 'A client' };
    expect(await call(api.clients.put, { params: { id: 'new-client' }, body: client }, options)).toEqual(client);
    expect(await call(api.clients.get, { params: { id: 'new-client' } }, options)).toEqual(client);
    const first = (await ask('/api/book')).headers.get('etag');
    expect(await call(api.clients.delete, { params: { id: 'new-client' } }, options)).toEqual({ deleted: 'new-client' });
    const second = (await ask('/api/book')).headers.get('etag');
    expect(Number(second?.slice(1, -1))).toBe(Number(first?.slice(1, -1)) + 1);
    expect(await refused(call(api.clients.get, { params: { id: 'new-client' } }, options))).toMatchObject({ status: 404 });
  });
  test('whoever writes on an old revision is told, and nothing is lost', async () => {
    const body = { id: 'c', name: 'C' };
    const answer = await ask('/api/clients/c', {
      method: 'PUT',
      body: JSON.stringify(body),
      headers: { 'content-type': 'application/json', 'if-match': '"1"' },
    });
    expect([answer.status, answer.headers.get('content-type')]).toEqual([412, 'application/problem+json']);
    expect((await call(api.clients.list, {}, options)).some((entry) => entry.id === 'c')).toBe(false);
  });
  test('what is used elsewhere cannot be deleted, what names nothing cannot be put; a sentence says why', async () => {
    expect(await refused(call(api.artists.delete, { params: { id: 'tansy' } }, options))).toMatchObject({
      status: 409,
      sentence: expect.stringContaining('tansy'),
    });
    const gig = await call(api.gigs.get, { params: { id: 'harbour-day' } }, options);
    expect(await refused(call(api.gigs.put, { params: { id: gig.id }, body: { ...gig, artists: ['nobody'] } }, options))).toMatchObject({
      status: 422,
      sentence: expect.stringContaining('nobody'),
    });
    expect(await refused(call(api.gigs.put, { params: { id: 'other' }, body: gig }, options))).toMatchObject({ status: 422 });
    expect((await call(api.gigs.get, { params: { id: 'harbour-day' } }, options)).artists).toEqual(gig.artists);
  });
  test('input that is no JSON, of the wrong form, infinite or too long is answered with problems, not with 500', async () => {
    const put = (body: string) => ask('/api/needs/n', { method: 'PUT', body, headers: { 'content-type': 'application/json' } });
    for (const body of [
      '{',
      '[]',
      '{"id":"n","item":"260-red","count":-1,"by":"2026-06-10"}',
      '{"id":"n","item":"260-red","count":1e999,"by":"2026-06-10"}',
      '{"id":"n","item":"260-red","count":1,"by":"2026-02-30"}',
      'null',
    ])
      expect([body, (await put(body)).status]).toEqual([body, 422]);
    expect((await ask('/api/nothing')).status).toBe(404);
  });
  test('a plan over HTTP: forecast, needs, shopping, curve; twice the same', async () => {
    const request = { body: { gig: 'gull-lane', runs: 200, today: date('2026-06-02') } };
    const one = await call(api.plan, request, options);
    expect(one).toMatchObject({
      runs: 200,
      gigs: [{ gig: { id: 'gull-lane' }, forecast: { served: { p50: expect.any(Number) } } }],
      needs: { chance: 0.9 },
    });
    expect(await call(api.plan, request, options)).toEqual(one);
    expect(await refused(call(api.plan, { body: { gig: 'moon' } }, options))).toMatchObject({
      status: 409,
      sentence: expect.stringContaining('moon'),
    });
  });
  test('a book that is sent along is planned, with its own risk and budget; one that is not in order is refused with sentences', async () => {
    const book = await call(api.book.get, {}, options);
    const [gig] = book.gigs.filter(({ id }) => id === 'gull-lane');
    if (gig === undefined) throw new Error('the demo has that gig');
    const sent = { ...book, gigs: [gig] };
    const plan = (body: RouteInput<typeof api.plan>['body']) =>
      call(api.plan, { body: { runs: 100, today: date('2026-06-02'), ...body } }, options);
    expect(await plan({ book: sent, risk: 0.3, spareDays: 2 })).toMatchObject({ chance: 0.7, gigs: [{ gig: { id: 'gull-lane' } }] });
    expect(
      await plan({ book: { ...sent, needs: [{ id: 'n', item: '260-rose', count: 500, by: gig.day }] }, budget: money(0) }),
    ).toMatchObject({
      shoppingProblems: [{ code: 'shopping.budget-zero' }],
    });
    const wrong = [
      { ...gig, ends: gig.starts },
      { ...gig, menu: [{ figure: 'nothing', share: 1 }] },
      { ...gig, arrivals: { kind: 'stream' as const, profile: [50, 10].map((minute) => ({ minute, weight: 1 })) } },
    ];
    for (const one of wrong)
      expect(await refused(plan({ book: { ...sent, gigs: [one] } }))).toMatchObject({
        status: 422,
        sentence: expect.stringContaining('gull-lane'),
      });
    expect(await refused(plan({ runs: 1_000_000 }))).toMatchObject({ status: 422 });
  });
  test('a price list over HTTP: read only, then put into the book', async () => {
    const text = await readFile(join(root, 'demo/prices/ropewalk.csv'), 'utf8');
    const { offers } = await call(api.book.get, {}, options);
    const dearer = text.replace(/(\d+)[.,](\d\d)/, '99.99');
    const looked = await call(api.prices, { params: { id: 'ropewalk' }, body: { text: dearer } }, options);
    expect([looked.offers.length > 20, (await call(api.offers.list, {}, options)).length]).toEqual([true, offers.length]);
    await call(api.prices, { params: { id: 'ropewalk' }, body: { text: dearer, apply: true } }, options);
    expect((await call(api.offers.list, {}, options)).some((offer) => offer.price === 9999)).toBe(true);
    expect(await refused(call(api.prices, { params: { id: 'nobody' }, body: { text } }, options))).toMatchObject({ status: 422 });
  });
  test('a first kit over HTTP, and the nearest thing when the money does not reach', async () => {
    const wishes = { budget: money(9000), hours: 8, kind: 'parties' as const };
    const kit = await call(api.kit, { body: wishes }, options);
    expect(kit).toMatchObject({ kit: { met: expect.any(Number), spent: expect.any(Number) }, curve: { points: expect.any(Array) } });
    expect(await refused(call(api.kit, { body: { ...wishes, budget: money(100) } }, options))).toMatchObject({ status: 409 });
    expect(await refused(call(api.kit, { body: { ...wishes, hours: -1 } }, options))).toMatchObject({ status: 422 });
  });
  test('other names and other pages are turned away', async () => {
    expect((await ask('/api/health', { headers: { host: 'evil.example' } })).status).toBe(403);
    const foreign = await ask('/api/clients/c', {
      method: 'PUT',
      body: '{"id":"c","name":"C"}',
      headers: { origin: 'http://evil.example', 'content-type': 'application/json' },
    });
    expect(foreign.status).toBe(403);
  });
  test('the description names every route', async () => {
    const description = (await (await ask('/api/openapi.json')).json()) as {
      openapi: string;
      paths: Record<string, Record<string, unknown>>;
    };
    expect(description.openapi).toBe('3.1.0');
    expect(Object.values(description.paths).flatMap((path) => Object.keys(path)).length).toBeGreaterThan(50);
  });
});
