import type { Browser, Page } from 'playwright-core';
import { afterAll, beforeAll, expect, inject, test } from 'vitest';
import { errorsOf, launch, openDemo, wide } from './browser.ts';

const url = inject('url');
let browser: Browser;
let page: Page;
let errors: readonly string[];
beforeAll(async () => {
  browser = await launch();
  const context = await browser.newContext({ viewport: wide });
  await openDemo(context, url);
  page = await context.newPage();
  errors = errorsOf(page);
});
afterAll(async () => {
  await browser?.close();
});

test('shopping says in one sentence what to order, for how much, and what is left to chance', async () => {
  await page.goto(`${url}/shopping`);
  await page.getByRole('heading', { level: 1, name: /orders? for £[\d.]+ leaves? a chance of/ }).waitFor({ timeout: 60_000 });
  await page.getByText(/The first order must go by/).waitFor();
  await page
    .getByText(/^Rounding|Rounding everything up|Rounding each up/)
    .first()
    .waitFor();
  await page.getByText(/^Proven: no other choice of whole bags costs less/).waitFor();
  await page.getByRole('img', { name: /^Chance that something runs out against money spent/ }).waitFor();
});

test('each bag says why it is there, and sums are exact', async () => {
  const slip = page.getByRole('table', { name: /^Order at/ }).first();
  expect(await slip.getByRole('row').nth(1).textContent()).toMatch(/on the \d+(st|nd|rd|th).*; up to \d+ short/s);
  const pence = (amount: string): number => Math.round(Number(amount) * 100);
  const rows = await slip.locator('tbody tr td:last-child').allTextContents();
  const parts = rows.map(pence);
  expect(parts.reduce((sum, part) => sum + part, 0)).toBe(pence((await slip.locator('tfoot td:last-child').textContent()) ?? ''));
});

test('an order that was placed is on the way, and shopping no longer asks for it', async () => {
  const before = await page.getByRole('table', { name: /^Order at/ }).count();
  await page.getByRole('button', { name: 'Mark as ordered' }).first().click();
  await page.getByRole('heading', { name: 'Two orders on the way.' }).waitFor();
  await expect.poll(() => page.getByRole('table', { name: /^Order at/ }).count(), { timeout: 60_000 }).toBeLessThan(before);
  await page.getByRole('button', { name: 'It was not ordered' }).last().click();
  await page.getByRole('heading', { name: 'One order on the way.' }).waitFor();
});

test('a price list is read from a file, shown before anything changes, put into the book and taken back', async () => {
  const dearer = 'what\thow many\tprice\tat most\nred 260\t25\t£4.10\t4\nlobster 260\t25\t£3.05\t4\n';
  await page.goto(`${url}/shopping/suppliers/ropewalk`);
  const file = (text: string) => ({ name: 'list.csv', mimeType: 'text/csv', buffer: Buffer.from(text) });
  await page.getByLabel('Read a price list').setInputFiles(file(dearer));
  await page.getByRole('heading', { name: /^One bag at another price or on other terms; one line is understood/ }).waitFor();
  const change = page.getByRole('table', { name: 'Bags whose price or terms change' });
  expect(await change.getByRole('row').nth(1).textContent()).toMatch(/260 red.*£3\.05£4\.10$/s);
  await page.getByText(/^Line 3, “lobster 260, 25, £3\.05, 4”: /).waitFor();
  await page.getByRole('button', { name: 'Put these prices into the book' }).click();
  const list = page.getByRole('table', { name: /^Price list of/ });
  await list.getByRole('row', { name: /260 red\s*25\s*4\.10/ }).waitFor();
  await page.getByRole('button', { name: 'Put the old prices back' }).click();
  await list.getByRole('row', { name: /260 red\s*25\s*3\.05/ }).waitFor();
});

test('nothing went wrong on the way', () => {
  expect(errors).toEqual([]);
});

// Chromium writes a refused request to its console, so this one comes after the check above.
test('headings that say nothing are asked for', async () => {
  const blind = 'A;B;C\n260 red;25;4,10\n';
  await page.getByLabel('Read a price list').setInputFiles({ name: 'list.csv', mimeType: 'text/csv', buffer: Buffer.from(blind) });
  await page.getByRole('combobox', { name: 'Goods in words' }).selectOption('A');
  await page.getByRole('combobox', { name: 'Pieces in a bag' }).last().selectOption('B');
  await page.getByRole('combobox', { name: 'Price of a bag', exact: true }).selectOption('C');
  await page.getByRole('button', { name: 'Read it with these columns' }).click();
  await page.getByRole('heading', { name: /^One bag at another price/ }).waitFor();
});
