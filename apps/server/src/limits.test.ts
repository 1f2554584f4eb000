import { request } from 'node:http';
import type { AddressInfo } from 'node:net';
import { type ServerType, serve } from '@hono/node-server';
import { api, call } from '@twistwright/contract';
import { money } from '@twistwright/units';
import { afterAll, beforeAll, describe, expect, test } from 'vitest';
import { openJobs } from './jobs/open-jobs.ts';
import { json, type OpenApp, openApp } from './testing/open-app.ts';

const opened: OpenApp = await openApp();
const { ask, options } = opened;
beforeAll(async () => {
  await call(api.start, { body: { from: 'demo' } }, options);
});
afterAll(async () => {
  await opened.close();
  expect(opened.logged).toEqual([]);
});

const post = (path: string, body: BodyInit, headers: Readonly<Record<string, string>> = json) =>
  ask(path, { method: 'POST', body, headers });
const told = async (answer: Response) => [answer.status, ((await answer.json()) as { title: string }).title];

describe('bodies', () => {
  test('one that is too large is refused before it is read', async () => {
    const large = JSON.stringify({ recipe: 'x'.repeat(1_100_000) });
    expect(await told(await post('/api/recipe/check', large))).toEqual([
      413,
      'The body is too large: 1 MB is the most that is read here. Nothing is stored.',
    ]);
  });
  test('one of another type is refused with what it has to be', async () => {
    expect(await told(await post('/api/plan', 'gig=fair', { 'content-type': 'application/x-www-form-urlencoded' }))).toEqual([
      415,
      'The body is "application/x-www-form-urlencoded"; here it has to be application/json.',
    ]);
    const file = await ask('/api/book', { method: 'PUT', body: 'book: 1', headers: { 'content-type': 'image/png' } });
    expect(await told(file)).toEqual([415, 'The body is "image/png"; here it has to be text/plain, application/yaml or application/json.']);
  });
  test('one that is packed is refused', async () => {
    expect((await told(await post('/api/plan', '{}', { ...json, 'content-encoding': 'gzip' })))[0]).toBe(415);
  });
  test('one that is empty, cut off or not in UTF-8 is refused with a sentence', async () => {
    expect(await told(await post('/api/plan', ''))).toEqual([422, 'The body is empty; it has to be JSON.']);
    expect(await told(await post('/api/plan', '{"gig":'))).toEqual([422, expect.stringContaining('The body is no JSON: ')]);
    expect(await told(await post('/api/plan', new Uint8Array([0x22, 0xff, 0x22])))).toEqual([422, 'The body is not written in UTF-8.']);
  });
  test('JSON under a name with a suffix or a charset is understood', async () => {
    for (const type of ['application/json; charset=utf-8', 'application/vnd.twist+json', 'APPLICATION/JSON'])
      expect((await post('/api/recipe/check', '{"recipe":"balloon a: 260 in body"}', { 'content-type': type })).status).toBe(200);
  });
});

test('a path that is there, asked in another way: 405 with the ways that are', async () => {
  const answer = await ask('/api/plan', { method: 'PATCH', body: '{}' });
  expect([...(await told(answer)), answer.headers.get('allow')]).toEqual([
    405,
    'PATCH is not understood at /api/plan; it takes POST, OPTIONS.',
    'POST, OPTIONS',
  ]);
  expect((await ask('/api/clients', { method: 'OPTIONS' })).headers.get('allow')).toBe('GET, HEAD, OPTIONS');
  expect((await ask('/api/clients', { method: 'HEAD' })).status).toBe(200);
});

describe('what was seen before', () => {
  test('an answer that still holds is not sent again, until the book moves on', async () => {
    for (const path of ['/api/book', '/api/gigs', '/api/gigs/gull-lane', '/api/figures/dog/picture.svg', '/api/figures/dog/card.pdf']) {
      const tag = (await ask(path)).headers.get('etag') ?? '';
      expect([path, (await ask(path, { headers: { 'if-none-match': tag } })).status]).toEqual([path, 304]);
      expect([path, (await ask(path, { headers: { 'if-none-match': `"0", W/${tag}` } })).status]).toEqual([path, 304]);
      expect([path, (await ask(path, { headers: { 'if-none-match': '"0"' } })).status]).toEqual([path, 200]);
    }
    const tag = (await ask('/api/book')).headers.get('etag') ?? '';
    await call(api.clients.put, { params: { id: 'k' }, body: { id: 'k', name: 'K' } }, options);
    expect((await ask('/api/book', { headers: { 'if-none-match': tag } })).status).toBe(200);
  });
  test('a condition that no revision can meet is refused, not passed over', async () => {
    const body = JSON.stringify({ id: 'k', name: 'Never' });
    for (const mark of ['"abc"', '""', 'W/"x"', '12abc', '-1'])
      expect([mark, (await ask('/api/clients/k', { method: 'PUT', body, headers: { ...json, 'if-match': mark } })).status]).toEqual([
        mark,
        412,
      ]);
    expect((await call(api.clients.get, { params: { id: 'k' } }, options)).name).toBe('K');
  });
});

/** Requests over a real connection, whose end can be felt. */
describe('a server that is busy', () => {
  const wishes = { budget: money(9000), hours: 8, kind: 'parties' as const };
  const busy = async (threads: number, queue: number, seconds = 60) => {
    const app = await openApp({ jobs: openJobs({ threads, queue, seconds }) });
    await app.ports.store.replace((await opened.ports.shelf.read()).book);
    return app;
  };
  const emptyCover = '{"budget":1,"bags":[],"figures":[]}';
  /** A plan that takes long: every gig of the demo, 20,000 afternoons each. */
  const longPlan = { body: { runs: 20_000 } };

  test('answers light requests while a kit is made, and the kit is the same', async () => {
    const order: string[] = [];
    const kit = call(api.kit, { body: wishes }, options).then((made) => {
      order.push('kit');
      return made;
    });
    for (const light of ['/api/business', '/api/health', '/api/book']) {
      expect((await ask(light)).status).toBe(200);
      order.push('light');
    }
    expect((await kit).kit.spent).toBeLessThanOrEqual(wishes.budget);
    expect(order).toEqual(['light', 'light', 'light', 'kit']);
  });
  test('turns away what no thread is left for, with a time to come back', async () => {
    const app = await busy(1, 0);
    const stop = new AbortController();
    const running = app.ask('/api/plan', { method: 'POST', body: JSON.stringify(longPlan.body), headers: json, signal: stop.signal });
    const full = await whenRunning(app, () => app.ask('/api/kit', { method: 'POST', body: JSON.stringify(wishes), headers: json }));
    expect([...(await told(full)), full.headers.get('retry-after')]).toEqual([
      503,
      'Too much is being worked out at the moment: try again in 5 s.',
      '5',
    ]);
    // Pages and changes do not stand behind plans.
    expect((await app.ask('/api/figures/dog/picture.svg')).status).toBe(200);
    await call(api.clients.put, { params: { id: 'k' }, body: { id: 'k', name: 'K' } }, app.options);
    stop.abort();
    await running.catch(() => undefined);
    expect((await app.ask('/api/cover', { method: 'POST', body: emptyCover, headers: json })).status).toBe(200);
    await app.close();
    expect(app.logged).toEqual([]);
  });
  test('gives up what takes too long, and goes on', async () => {
    const app = await busy(1, 4, 5);
    const late = await app.ask('/api/plan', { method: 'POST', body: JSON.stringify(longPlan.body), headers: json });
    expect(await told(late)).toEqual([504, expect.stringContaining('takes longer than 5 s')]);
    expect((await app.ask('/api/cover', { method: 'POST', body: emptyCover, headers: json })).status).toBe(200);
    await app.close();
  });
  test('stops working when the caller hangs up', async () => {
    const app = await busy(1, 4);
    const { server, port } = await listen(app);
    const hungUp = new Promise<void>((resolve) => {
      const plan = request({ port, path: '/api/plan', method: 'POST', headers: { ...json, host: `localhost:${port}` } });
      plan.on('error', () => resolve());
      plan.end(JSON.stringify(longPlan.body));
      void whenRunning(app, () => plan.destroy(new Error('gone')));
    });
    await hungUp;
    // The only thread is free again: another job is done, though the plan would have taken far longer than the test may.
    const cover = await fetch(`http://localhost:${port}/api/cover`, { method: 'POST', body: emptyCover, headers: json });
    expect([cover.status, app.ports.jobs.load().running]).toEqual([200, 0]);
    await cover.text();
    await new Promise((resolve) => server.close(resolve));
    await app.close();
    expect(app.logged).toEqual([]);
  });
  test('finishes what it has begun when it is asked to stop', async () => {
    const app = await busy(1, 4);
    const plan = call(api.plan, { body: { gig: 'gull-lane', runs: 300 } }, app.options);
    await whenRunning(app, () => undefined);
    const closing = app.ports.jobs.close(60);
    expect(await told(await app.ask('/api/figures/dog/picture.svg'))).toEqual([503, expect.stringContaining('about to stop')]);
    expect((await plan).runs).toBe(300);
    await closing;
    await app.close();
  });
});

/** Does something as soon as a job runs. */
async function whenRunning<T>({ ports }: OpenApp, deed: () => T): Promise<Awaited<T>> {
  while (ports.jobs.load().running === 0) await new Promise((resolve) => setTimeout(resolve, 5));
  return await deed();
}
async function listen({ app }: OpenApp): Promise<{ readonly server: ServerType; readonly port: number }> {
  const server = serve({ fetch: app.fetch, hostname: '127.0.0.1', port: 0 });
  await new Promise((resolve) => server.once('listening', resolve));
  return { server, port: (server.address() as AddressInfo).port };
}
