import type { Browser } from 'playwright-core';
import { afterAll, beforeAll, expect, test } from 'vitest';
import { errorsOf, launch, wide } from './browser.ts';
import { type RunningServer, startServer } from './server.ts';

let server: RunningServer;
let url: string;
let browser: Browser;
beforeAll(async () => {
  server = await startServer();
  url = server.url;
  browser = await launch();
});
afterAll(async () => {
  await browser?.close();
  await server?.stop();
});

test('the first start offers three ways, and the demo opens with coming gigs', async () => {
  const page = await browser.newPage({ viewport: wide });
  const errors = errorsOf(page);
  await page.goto(url);
  await page.getByRole('heading', { name: 'Look around first.' }).waitFor();
  await page.getByRole('button', { name: 'Start an empty book' }).click();
  await page.getByText('Write the name that stands on your papers.').waitFor();
  await page.getByText('Open a book file', { exact: true }).waitFor();
  await page.getByRole('button', { name: 'Open the demo' }).click();
  await page.getByRole('heading', { name: /^Eight gigs in/ }).waitFor();
  expect(await page.getByRole('link', { name: 'Wrenmouth Harbour Day' }).count()).toBe(1);
  expect(errors.filter((error) => !error.includes('404'))).toEqual([]);
  await page.close();
});

test('a second start goes straight to the diary, and clashes are said in words', async () => {
  const page = await browser.newPage({ viewport: wide });
  await page.goto(url);
  await page.getByRole('heading', { level: 1, name: /gigs in/ }).waitFor();
  await page.getByText(/The way to .* starts \d+ minutes before .* is back from/).waitFor();
  await page.getByText('times clash').first().waitFor();
  await page.close();
});
