import { join, resolve } from 'node:path';
import { ApiError, api, bookSchema, type CallOptions, type Route, readInput, refusalsOf, routesOf } from '@twistwright/contract';
import { openStore } from '@twistwright/store';
import { date } from '@twistwright/units';
import type { Hono } from 'hono';
import { expect } from 'vitest';
import { makeApp, type Ports } from '../app.ts';
import { type Jobs, openJobs } from '../jobs/open-jobs.ts';
import { BookShelf } from '../keep-book.ts';

export const root = resolve(import.meta.dirname, '../../../..');

export interface OpenApp {
  readonly app: Hono;
  readonly ports: Ports;
  /** For the typed client. Every answer is held against what the description says of it. */
  readonly options: CallOptions;
  /** What the app logged: bugs. */
  readonly logged: readonly string[];
  readonly ask: (path: string, init?: RequestInit) => Promise<Response>;
  readonly close: () => Promise<void>;
}

/** The whole app on a real database, with threads of its own. It is 2026-06-02 there. */
export async function openApp({
  database = ':memory:',
  storeKind = 'sqlite',
  jobs = openJobs({ threads: 2, queue: 32, seconds: 60 }),
}: {
  readonly database?: string;
  readonly storeKind?: Ports['storeKind'];
  readonly jobs?: Jobs;
} = {}): Promise<OpenApp> {
  const store = await openStore(database, (value) => {
    const read = readInput(bookSchema, value);
    if (!read.ok) throw new Error(read.error[0]?.sentence);
    return read.value;
  });
  const logged: string[] = [];
  const ports: Ports = {
    store,
    shelf: new BookShelf(store),
    storeKind,
    jobs,
    today: () => date('2026-06-02'),
    log: (message) => void logged.push(message),
    allowedHosts: [],
    webFolder: join(root, 'apps/web/dist'),
    demoFolder: join(root, 'demo'),
    version: '0',
  };
  const app = makeApp(ports);
  const ask = async (path: string, init: RequestInit = {}): Promise<Response> => {
    const headers = { host: 'localhost', ...(init.headers as Readonly<Record<string, string>> | undefined) };
    const answer = await app.request(`http://localhost${path}`, { ...init, headers });
    await expectDescribed(init.method ?? 'GET', path, answer.clone());
    return answer;
  };
  return {
    app,
    ports,
    logged,
    ask,
    options: { base: 'http://localhost', fetch: (address, init) => ask(address.slice('http://localhost'.length), init) },
    close: async () => {
      await jobs.close();
      await store.close();
    },
  };
}

/** Every answer has a status and a body that the description of its route names. */
async function expectDescribed(method: string, path: string, answer: Response): Promise<void> {
  const route = routeAt(method, path);
  if (route === undefined) return;
  if (answer.ok) {
    expect([path, answer.status]).toEqual([path, route.status ?? 200]);
    if ((route.gives ?? 'json') === 'json') expect(route.response.safeParse(await answer.json()).error?.issues ?? []).toEqual([]);
    return;
  }
  if (answer.status === 304) return expect(route.book).toBe('reads');
  expect([path, answer.status]).toEqual([path, refusalsOf(route).find((status) => status === answer.status)]);
  expect(answer.headers.get('content-type')).toBe('application/problem+json');
}

function routeAt(method: string, path: string): Route | undefined {
  const plain = path.split('?')[0] ?? path;
  const fits = routesOf(api).filter(
    ([, route]) =>
      route.method === method.toLowerCase() && new RegExp(`^${route.path.replace(/:\w+/g, '[^/]+').replaceAll('.', '\\.')}$`).test(plain),
  );
  return fits[0]?.[1];
}

/** Status and sentence of a refusal; fails where nothing is refused. */
export async function refused(promise: Promise<unknown>): Promise<{ readonly status: number; readonly sentence: string }> {
  try {
    await promise;
  } catch (error) {
    if (!(error instanceof ApiError)) throw error;
    const { detail, title } = error.detail as { readonly detail?: string; readonly title: string };
    return { status: error.status, sentence: detail ?? title };
  }
  throw new Error('it was not refused');
}

export const json = { 'content-type': 'application/json' } as const;
