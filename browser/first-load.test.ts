import { gzipSync } from 'node:zlib';
import type { Browser } from 'playwright-core';
import { afterAll, beforeAll, expect, inject, test } from 'vitest';
import { launch, openDemo, settled, wide } from './browser.ts';

const url = inject('url');
let browser: Browser;
beforeAll(async () => {
  browser = await launch();
});
afterAll(() => browser?.close());

/** Compressed script that the plan page may load before its answer stands, worker included. */
const mostScriptBytes = 250_000;

test('first load of the plan page: little script, no solver, no 3D', async () => {
  const context = await browser.newContext({ viewport: wide });
  await openDemo(context, url);
  const page = await context.newPage();
  const scripts = new Map<string, number>();
  const others: string[] = [];
  const arriving: Promise<void>[] = [];
  page.on('response', (answer) => {
    const address = answer.url();
    if (!address.endsWith('.js')) others.push(address);
    else arriving.push(answer.body().then((body) => void scripts.set(address, gzipSync(body).length)));
  });
  await page.goto(`${url}/gigs/harbour-day`);
  await settled(page);
  await Promise.all(arriving);
  expect([...scripts.keys()].some((address) => address.includes('plan-worker'))).toBe(true);
  const bytes = [...scripts.values()].reduce((sum, size) => sum + size, 0);
  expect(scripts.size).toBeGreaterThan(3);
  expect(bytes).toBeGreaterThan(50_000);
  expect(bytes).toBeLessThan(mostScriptBytes);
  expect([...scripts.keys(), ...others].filter((address) => /\.wasm$|three|shopping/.test(address))).toEqual([]);
  await context.close();
});
