import { api, type Route, routesOf } from '@twistwright/contract';
import { afterAll, beforeAll, expect, test } from 'vitest';
import { json, openApp } from './testing/open-app.ts';

const { ask, close, logged } = await openApp();
afterAll(async () => {
  await close();
  expect(logged).toEqual([]);
});

/** Begun first; then entries are put, looked at and deleted; the book is replaced last. */
function rank(operation: string, { method }: Route): number {
  if (operation === 'start') return 0;
  if (operation === 'book.put') return 9;
  return { put: 1, get: 2, post: 3, delete: 4 }[method];
}
const routes = routesOf(api).toSorted(([a, one], [b, other]) => rank(a, one) - rank(b, other));

async function askExample({ method, path, takes, example = {} }: Route): Promise<Response> {
  const { params, query, body } = example as { params?: Record<string, string>; query?: Record<string, unknown>; body?: unknown };
  const filled = path.replace(/:(\w+)/g, (_, name: string) => encodeURIComponent(params?.[name] ?? ''));
  const asked = new URLSearchParams(Object.entries(query ?? {}).map(([name, value]) => [name, String(value)]));
  return ask(asked.size === 0 ? filled : `${filled}?${asked}`, {
    method: method.toUpperCase(),
    ...(body === undefined ? {} : { body: takes === 'text' ? String(body) : JSON.stringify(body), headers: takes === 'text' ? {} : json }),
  });
}

beforeAll(() => expect(routes.length).toBeGreaterThan(80));

/** `ask` holds each answer against the schema of its route. */
test.each(routes)('the example of %s works on the demo', async (_operation, route) => {
  const answer = await askExample(route);
  const said = route.gives === 'pdf' ? '' : await answer.clone().text();
  expect([answer.status, answer.ok ? '' : said]).toEqual([route.status ?? 200, '']);
  expect((await answer.arrayBuffer()).byteLength).toBeGreaterThan(0);
});
