import type { Book } from '@twistwright/books';
import type { Browser, Page } from 'playwright-core';
import { afterAll, beforeAll, expect, test } from 'vitest';
import { errorsOf, launch, settled, wide } from './browser.ts';
import { type RunningServer, startServer } from './server.ts';

let server: RunningServer;
let browser: Browser;
let page: Page;
let errors: readonly string[];
beforeAll(async () => {
  server = await startServer();
  browser = await launch();
  page = await browser.newPage({ viewport: wide });
  errors = errorsOf(page);
});
afterAll(async () => {
  await browser?.close();
  await server?.stop();
});

const field = (name: string) => page.getByRole('textbox', { name, exact: true });

test('a business of its own is written from nothing in the browser, in another currency and zone, and its first gig is planned', async () => {
  await page.goto(server.url);
  await field('Name of the business').fill('Zwei Knoten');
  await page.getByRole('combobox', { name: 'Currency' }).selectOption('CHF');
  await page.getByRole('combobox', { name: 'Time zone' }).fill('Europe/Zurich');
  await page.getByRole('button', { name: 'Start an empty book' }).click();
  await page.getByRole('heading', { level: 1, name: 'No gig is coming.' }).waitFor();

  await page.goto(`${server.url}/book`);
  await field('Name of the artist').fill('Mara');
  await page.getByRole('button', { name: 'Add an artist' }).click();
  await page.getByRole('heading', { name: 'One artist.' }).waitFor();
  await page.getByRole('button', { name: 'Add home, car, case and apron' }).click();
  await page.getByRole('heading', { name: 'Stock lies in four places.' }).waitFor();
  await page.getByRole('button', { name: 'Add the fourteen plain colours' }).click();
  await page.getByRole('heading', { name: '14 colours.' }).waitFor();
  await field('An hour, CHF').fill('110');
  await page.getByRole('button', { name: 'Save the rates' }).click();
  // Leaving the page at once loses nothing; only the next page has to wait until the server has all of it.
  await page.goto(`${server.url}/lost`);
  await expect
    .poll(async () => {
      const { colours, settings } = (await (await page.request.get(`${server.url}/api/book`)).json()) as Book;
      return [colours.length, settings?.charge?.hourly];
    })
    .toEqual([14, 110_00]);

  await page.goto(`${server.url}/store/new`);
  await page.getByRole('combobox', { name: 'Colour' }).selectOption('red');
  await page.getByRole('button', { name: 'Save the item' }).click();
  await page.getByRole('heading', { level: 1, name: 'You have no balloons yet.' }).waitFor();

  await page.goto(`${server.url}/repertoire/new/edit`);
  await field('Name').fill('Sword');
  await field('Recipe').fill('balloon sword: 260 in blade\n  bubble 4 grip\n');
  await field('Minutes, the middle of ten').fill('1.5');
  await page.getByRole('combobox', { name: 'Colour of blade' }).first().selectOption('red');
  await page.getByRole('button', { name: 'Save the figure' }).click();
  await page.getByRole('heading', { level: 1, name: 'Sword' }).waitFor();

  await page.goto(`${server.url}/shopping/suppliers/new`);
  await field('Name').fill('Lamp Street Rubber');
  await field('Working days to your door').fill('2');
  await page.getByRole('button', { name: 'Save the supplier' }).click();
  await page.getByRole('heading', { name: 'Lamp Street Rubber' }).waitFor();
  await field('Price of a bag, CHF').fill('9.90');
  await page.getByRole('button', { name: 'Add to the price list' }).click();
  await page.getByRole('cell', { name: '9.90' }).waitFor();

  await page.goto(`${server.url}/gigs/new`);
  await field('Name').fill('Dorffest');
  await field('Guests').fill('40');
  await page.getByRole('checkbox', { name: 'Sword', exact: true }).check();
  await page.getByRole('button', { name: 'Save the gig' }).click();
  await page.getByRole('heading', { level: 1, name: 'Dorffest' }).waitFor();
  await settled(page);
  await page
    .getByText(/^About \d+ of \d+ will be served/)
    .first()
    .waitFor();
  await page.getByText(/^One item would run short: 260 red\.$/).waitFor();
  await page.getByText(/^Ask for 220/).waitFor();

  await page.goto(`${server.url}/shopping`);
  await page.getByRole('heading', { level: 1, name: /^One order for 9\.90 CHF/ }).waitFor({ timeout: 60_000 });
});

test('what is taken off a list can be put back', async () => {
  await page.goto(`${server.url}/book`);
  await page.getByRole('button', { name: 'Take off rose' }).click();
  await page.getByRole('heading', { name: '13 colours.' }).waitFor();
  await page.getByRole('button', { name: 'Put it back' }).click();
  await page.getByRole('heading', { name: '14 colours.' }).waitFor();
});

test('what is still in use is not taken off, and the reason is said', async () => {
  await page.getByRole('button', { name: 'Take off red' }).click();
  await page.getByText('Nothing was saved.').waitFor();
  await page.getByRole('heading', { name: '14 colours.' }).waitFor();
  expect(errors.filter((error) => !/404|409|422/.test(error))).toEqual([]);
});

test('an empty book takes the place of this one, and the other can be put back', async () => {
  await page.goto(`${server.url}/book`);
  await page.getByText('Begin an empty book?').click();
  await field('Name of the business').first().fill('Third Twist');
  await page.getByRole('button', { name: 'Start an empty book' }).click();
  await page.getByRole('heading', { level: 1, name: 'The book of Third Twist holds no gigs, no figures and no items.' }).waitFor();
  await page.getByRole('button', { name: 'Put the other book back' }).click();
  await page.getByRole('heading', { level: 1, name: 'The book of Zwei Knoten holds one gig, one figure and one item.' }).waitFor();
});
