import { api, call } from '@twistwright/contract';
import { afterAll, expect, test } from 'vitest';
import { greeting } from './greeting.ts';
import { openApp } from './testing/open-app.ts';

const { ports, options, close, logged } = await openApp();
afterAll(async () => {
  await close();
  expect(logged).toEqual([]);
});
const say = () => greeting(ports.shelf, ports.jobs, ports.demoFolder, '2026-06-02T10:00:00Z', 'http://localhost:1');

test('before there is a book the next gig of the demo is planned, then that of the own book', async () => {
  const first = await say();
  expect(first).toMatch(
    /^No book yet; this is the next gig of the demo, Pell & Otter.*\n\n.*, .* to .*\n[\s\S]*\n\nOpen http:\/\/localhost:1$/u,
  );
  await call(api.start, { body: { from: 'demo' } }, options);
  const own = await say();
  expect(own.split('\n')[0]).toBe('The next gig of Pell & Otter, balloon figures.');
  expect(own.split('\n').slice(1, -1)).toEqual(first.split('\n').slice(1, -1));
  expect(own).toMatch(/\nOpen http:\/\/localhost:1\/gigs\/[a-z-]+$/u);
});
test('a book without a gig to come says so and opens at the diary', async () => {
  await call(api.book.put, { query: {}, body: 'book: 1\nbusiness: { name: Alone, currency: GBP, zone: Europe/London }\n' }, options);
  expect(await say()).toBe('Alone has no gig coming.\nOpen http://localhost:1/diary');
});
