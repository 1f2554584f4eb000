import type { Browser, Page } from 'playwright-core';
import { afterAll, beforeAll, expect, test } from 'vitest';
import { launch, wide } from './browser.ts';
import { type RunningServer, startServer } from './server.ts';

let server: RunningServer;
let browser: Browser;
beforeAll(async () => {
  server = await startServer();
  browser = await launch();
});
afterAll(async () => {
  await browser?.close();
  await server?.stop();
});

/** A browser of its own, with the page of the book open. */
async function opened(): Promise<Page> {
  const page = await (await browser.newContext({ viewport: wide })).newPage();
  await page.goto(`${server.url}/book`);
  await page.getByRole('textbox', { name: 'An hour, GBP', exact: true }).waitFor();
  return page;
}
const field = (page: Page, name: string) => page.getByRole('textbox', { name, exact: true });
const bookOf = async (page: Page) =>
  (await (await page.request.get(`${server.url}/api/book`)).json()) as {
    readonly artists: readonly { readonly name: string }[];
    readonly settings: { readonly charge: { readonly hourly: number } };
  };

test('two browsers change different things of one book: both count; both change the same thing: the second is told, and the first stands', async () => {
  const start = await browser.newPage();
  const begun = await start.request.post(`${server.url}/api/start`, { data: { from: 'demo' }, headers: { origin: server.url } });
  expect(begun.ok()).toBe(true);
  const [one, other] = [await opened(), await opened()];

  await field(one, 'Name of the artist').fill('Mara');
  await one.getByRole('button', { name: 'Add an artist' }).click();
  await expect.poll(async () => (await bookOf(one)).artists.map(({ name }) => name), { timeout: 20_000 }).toContain('Mara');
  // The other page has not heard of it, and changes something else.
  await field(other, 'An hour, GBP').fill('101');
  await other.getByRole('button', { name: 'Save the rates' }).click();
  await expect.poll(async () => (await bookOf(one)).settings.charge.hourly, { timeout: 20_000 }).toBe(10_100);
  expect((await bookOf(one)).artists.map(({ name }) => name)).toContain('Mara');

  // The first page still shows the old rates.
  await field(one, 'An hour, GBP').fill('88');
  await one.getByRole('button', { name: 'Save the rates' }).click();
  await one.getByText('Somebody else has changed this since you opened it; nothing was stored.').first().waitFor();
  expect((await bookOf(one)).settings.charge.hourly).toBe(10_100);
  // Whoever saves once more, having been told, means it.
  await one.getByRole('button', { name: 'Save the rates' }).click();
  await expect.poll(async () => (await bookOf(one)).settings.charge.hourly, { timeout: 20_000 }).toBe(8800);
});
