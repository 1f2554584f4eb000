import type { Gig } from '@twistwright/books';
import { bookLists, bookProblems } from '@twistwright/books';
import type { KitPlan } from '@twistwright/planner';
import { money } from '@twistwright/units';
import { describe, expect, expectTypeOf, test } from 'vitest';
import { z } from 'zod';
import type { PlanAnswer } from './answers/index.ts';
import { api } from './api.ts';
import { ApiError, call } from './http/call.ts';
import { openApi, refusalsOf } from './http/open-api.ts';
import { problemsOfInput } from './http/problems-of-input.ts';
import { routesOf } from './http/route.ts';

const routes = routesOf(api);
const gig = { id: 'summer/fair 1', name: 'Fair', kind: 'line', day: '2026-06-13', starts: '13:00', ends: '16:00', artists: [], menu: [] };
/** A server that answers with what it was asked. */
const asked: { url: string; init: RequestInit }[] = [];
const answering = (body: unknown, status = 200) => ({
  base: 'http://here.example',
  fetch: async (url: string, init: RequestInit): Promise<Response> => {
    asked.push({ url, init });
    return new Response(typeof body === 'string' ? body : JSON.stringify(body), { status });
  },
});

describe('routes', () => {
  test('no two have one method and path, and every parameter of a path is declared', () => {
    expect(routes.length).toBeGreaterThan(60);
    expect(new Set(routes.map(([, route]) => `${route.method} ${route.path}`)).size).toBe(routes.length);
    for (const [operation, route] of routes) {
      const inPath = [...route.path.matchAll(/:(\w+)/g)].map((match) => match[1]);
      const declared = Object.keys((route.params as { shape?: object } | undefined)?.shape ?? {});
      expect([operation, ...declared]).toEqual([operation, ...inPath]);
    }
  });
  test('every list of the book has its routes', () => {
    for (const list of ['sizes', ...bookLists])
      expect(routes.filter(([operation]) => operation.startsWith(`${list}.`)).map(([operation]) => operation)).toEqual(
        ['list', 'get', 'put', 'delete'].map((verb) => `${list}.${verb}`),
      );
  });
});

describe('the typed client', () => {
  test('puts parameters into the path, sends JSON, and knows the type of what comes back', async () => {
    const answer = call(api.gigs.put, { params: { id: gig.id }, body: gig as unknown as Gig }, answering(gig));
    expectTypeOf(answer).resolves.toExtend<Gig>();
    expect(await answer).toEqual(gig);
    expect(asked.at(-1)).toMatchObject({
      url: 'http://here.example/api/gigs/summer%2Ffair%201',
      init: { method: 'PUT', body: JSON.stringify(gig) },
    });
  });
  test('takes and gives text where a book file travels, and leaves out what is missing in a query', async () => {
    expect(await call(api.book.text, { query: { form: 'yaml' } }, answering('book: 1\n'))).toBe('book: 1\n');
    expect(asked.at(-1)?.url).toBe('http://here.example/api/book/file?form=yaml');
    await call(api.book.put, { query: {}, body: 'book: 1\n' }, answering({ problems: [] }));
    expect(asked.at(-1)).toMatchObject({ url: 'http://here.example/api/book', init: { body: 'book: 1\n' } });
  });
  test('knows the whole form of a plan and of a kit', async () => {
    const plan = call(api.plan, { body: { gig: 'fair' } }, answering({}));
    const kit = call(api.kit, { body: { budget: money(5000), hours: 4, kind: 'parties' } }, answering({}));
    expectTypeOf(plan).resolves.toExtend<PlanAnswer>();
    expectTypeOf(kit).resolves.toExtend<KitPlan>();
    expect(await Promise.all([plan, kit])).toEqual([{}, {}]);
  });
  test('what the server refuses is thrown with status and detail', async () => {
    const refused = call(
      api.gigs.get,
      { params: { id: 'x' } },
      answering({ type: 'problems#gig.unknown', title: 'no such gig', status: 404 }, 404),
    );
    await expect(refused).rejects.toMatchObject({ name: 'ApiError', status: 404, detail: { title: 'no such gig' } });
    await expect(call(api.health, {}, answering('<html>', 502))).rejects.toEqual(new ApiError(502, '<html>'));
  });
});

describe('the OpenAPI description', () => {
  const description = openApi(api, { title: 'Twistwright', version: '0.1.0' });
  const text = JSON.stringify(description);
  test('has every route, under the names of its parameters', () => {
    const paths = description.paths as Readonly<Record<string, Readonly<Record<string, { readonly operationId: string }>>>>;
    const operations = Object.values(paths).flatMap((path) => Object.values(path).map((operation) => operation.operationId));
    expect(operations.toSorted()).toEqual(routes.map(([operation]) => operation).toSorted());
    expect(paths['/api/gigs/{id}']?.put).toBeDefined();
  });
  test('all its references lead somewhere', () => {
    const references = new Set([...text.matchAll(/"\$ref":"([^"]+)"/g)].map((match) => match[1] ?? ''));
    const { schemas, responses } = description.components as { readonly schemas: object; readonly responses: object };
    const known = [
      ...Object.keys(schemas).map((name) => `#/components/schemas/${name}`),
      ...Object.keys(responses).map((name) => `#/components/responses/${name}`),
    ];
    expect(references.size).toBeGreaterThan(15);
    expect([...references].filter((reference) => !known.includes(reference))).toEqual([]);
  });
  test('every route has an example of each part that it needs, and a word on what it refuses', () => {
    for (const [operation, route] of routes) {
      expect([operation, route.body === undefined, route.params === undefined]).toEqual([
        operation,
        route.example?.body === undefined,
        route.example?.params === undefined,
      ]);
      expect([operation, refusalsOf(route).length > 1, route.summary.length > 5]).toEqual([operation, true, true]);
    }
  });
  test('every answer has a form: nothing is only "an object"', () => {
    const loose = routes.filter(([operation, { response }]) => {
      const schema = JSON.stringify(z.toJSONSchema(response, { io: 'output' }));
      return operation !== 'openapi' && /"additionalProperties":\{\}/.test(schema);
    });
    expect(loose.map(([operation]) => operation)).toEqual([]);
  });
});

test('what is wrong with a request is said as with a book', () => {
  const problems = problemsOfInput(api.plan.body ?? api.health.response, { gigg: 'fair', runs: 0 });
  expect(problems.map(({ code, path, sentence, todo }) => [code, path, sentence, todo])).toEqual([
    ['value.range', ['runs'], '"runs" is 0; it has to be at least 1.', undefined],
    ['key.unknown', ['gigg'], 'This has no key "gigg".', '"gig" was meant?'],
  ]);
  expect(Object.keys(bookProblems)).toContain(problems[0]?.code);
});
