import { readFile } from 'node:fs/promises';
import type { Browser, Page } from 'playwright-core';
import { afterAll, beforeAll, expect, inject, test } from 'vitest';
import { errorsOf, launch, openDemo, settled, wide } from './browser.ts';

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

async function save(form: 'YAML' | 'JSON'): Promise<string> {
  const [file] = await Promise.all([page.waitForEvent('download'), page.getByRole('link', { name: `Save as ${form}` }).click()]);
  return readFile(await file.path(), 'utf8');
}

test('a gig is added, problems first said at the field', async () => {
  await page.goto(`${url}/gigs/new`);
  await page.getByRole('textbox', { name: 'Name' }).fill('Test of the lamps');
  await page.getByRole('textbox', { name: 'Guests' }).fill('seventy');
  await page.getByRole('button', { name: 'Save the gig' }).click();
  await page.getByText('“seventy” is not a number. Write it as 60.').waitFor();
  await page.getByText('Put at least one figure on the menu.').waitFor();
  expect(await page.getByRole('textbox', { name: 'Guests' }).getAttribute('aria-invalid')).toBe('true');
  await page.getByRole('textbox', { name: 'Guests' }).fill('30');
  await page.getByRole('checkbox', { name: 'Dog', exact: true }).check();
  await page.getByRole('button', { name: 'Save the gig' }).click();
  await page.getByRole('heading', { name: 'Test of the lamps' }).waitFor();
  await settled(page);
  await page
    .getByText(/About \d+ of \d+ will be served/)
    .first()
    .waitFor();
});

for (const form of ['YAML', 'JSON'] as const)
  test(`the book goes out as ${form} and comes back the same`, async () => {
    await page.goto(`${url}/book`);
    const before = await save(form);
    expect(before).toContain('Test of the lamps');
    await page
      .getByLabel('Open a book file')
      .setInputFiles({ name: `book.${form.toLowerCase()}`, mimeType: 'text/plain', buffer: Buffer.from(before) });
    await page.getByText('The file is open; its book took the place of the other.').waitFor();
    expect(await save(form)).toBe(before);
  });

test('a file that is no book changes nothing and says where it is wrong', async () => {
  await page.goto(`${url}/book`);
  const before = await save('YAML');
  await page
    .getByLabel('Open a book file')
    .setInputFiles({ name: 'list.yaml', mimeType: 'text/plain', buffer: Buffer.from('book: 1\nbusiness:\n  nam: x\n') });
  await page.getByText('The file was not opened; this book is as it was.').waitFor();
  await page
    .getByText(/Line \d+: /)
    .first()
    .waitFor();
  expect(await save('YAML')).toBe(before);
});

test('a gig that is taken out is gone', async () => {
  await page.goto(`${url}/gigs`);
  await page.getByRole('link', { name: 'Test of the lamps' }).click();
  await page.getByRole('link', { name: 'Change the gig' }).click();
  await page.getByRole('button', { name: 'Take it out of the diary' }).click();
  await page.getByRole('heading', { name: 'Eight gigs to come.' }).waitFor();
});

test('a count in the store is written down and can be taken back', async () => {
  await page.goto(`${url}/store`);
  await page.getByRole('combobox', { name: 'Item' }).selectOption('260-red');
  await page.getByRole('combobox', { name: 'Place' }).last().selectOption('home');
  await page.getByRole('textbox', { name: 'Pieces counted' }).fill('7');
  await page.getByRole('button', { name: 'Write down the count' }).click();
  await page.getByText(/^Counted: 7 of 260 red; the book had \d+\.$/).waitFor();
  await page.getByRole('button', { name: 'Take it back' }).click();
  await page.getByText(/^Counted: 7/).waitFor({ state: 'detached' });
});

test('figures, items, suppliers and prices are edited in place', async () => {
  await page.goto(`${url}/store/260-red`);
  await page.getByRole('textbox', { name: 'How many of 100 pop' }).fill('4');
  await page.getByRole('button', { name: 'Save the item' }).click();
  await page.getByRole('heading', { level: 1, name: /^You have/ }).waitFor();
  await page.goto(`${url}/repertoire/dog/edit`);
  await page.getByRole('textbox', { name: 'Minutes, the middle of ten' }).fill('0.7');
  await page.getByRole('button', { name: 'Save the figure' }).click();
  await page.getByText('0.7 min').first().waitFor();
  await page.goto(`${url}/shopping/suppliers/new`);
  await page.getByRole('textbox', { name: 'Name' }).fill('Lamp Street Rubber');
  await page.getByRole('textbox', { name: 'Working days to your door' }).fill('2');
  await page.getByRole('button', { name: 'Save the supplier' }).click();
  await page.getByRole('heading', { name: 'Lamp Street Rubber' }).waitFor();
  await page.getByRole('combobox', { name: 'Item' }).selectOption('260-red');
  await page.getByRole('textbox', { name: /^Price of a bag/ }).fill('7.90');
  await page.getByRole('button', { name: 'Add to the price list' }).click();
  await page.getByRole('cell', { name: '7.90' }).waitFor();
});

test('nothing went wrong on the way', () => {
  expect(errors.filter((error) => !error.includes('422'))).toEqual([]);
});
