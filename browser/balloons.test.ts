import { AxeBuilder } from '@axe-core/playwright';
import type { Browser, BrowserContext, Page } from 'playwright-core';
import { afterAll, beforeAll, expect, inject, test } from 'vitest';
import { errorsOf, launch, openDemo, phone, wide } from './browser.ts';

const url = inject('url');
/** Long enough for a busy machine. */
const soon = { timeout: 15_000 };
let browser: Browser;
let context: BrowserContext;
beforeAll(async () => {
  browser = await launch();
  context = await browser.newContext({ viewport: wide });
  await openDemo(context, url);
});
afterAll(() => browser?.close());

async function open(path = '/repertoire/your-balloons', size: { readonly width: number; readonly height: number } = wide): Promise<Page> {
  const page = await context.newPage();
  await page.setViewportSize(size);
  await page.goto(url + path);
  await page.locator('main h1').waitFor();
  return page;
}
const say = (page: Page): Promise<string> =>
  page
    .getByRole('heading', { level: 1 })
    .textContent()
    .then((text) => (text ?? '').replaceAll('\u00a0', ' '));
const testsInBook = async (): Promise<readonly { readonly id: string; readonly maker?: string }[]> =>
  (await context.request.get(`${url}/api/balloonTests`)).json() as Promise<readonly { id: string; maker?: string }[]>;

test('a test is written, the figures it changes are said at once, it is kept, taken back, and nothing is left of it', async () => {
  const page = await open();
  const errors = errorsOf(page);
  const before = await testsInBook();
  expect(before.length).toBeGreaterThan(3);
  expect(await say(page)).toMatch(/^A 260 of Ardle & Wynn is \d+\.\d in flat and \d\d(\.\d)? in blown up\.$/u);
  const known = await say(page);
  await page.getByText('Write a measurement, and what it changes stands here.').waitFor();
  await page.getByLabel('1st, in', { exact: true }).fill('9.6');
  await page.getByLabel('2nd', { exact: true }).fill('9.7');
  await page.getByLabel('Blown up, in').fill('46');
  await page.getByLabel('Flat after, in').fill('1.5');
  const outcome = page.locator('.testoutcome');
  await expect.poll(() => outcome.textContent(), soon).toMatch(/With this test: 1\d(\.\d)? in flat/u);
  await expect.poll(() => outcome.textContent(), soon).toMatch(/verdicts? changes?\./u);
  expect(await outcome.locator('li.tight').first().textContent()).toMatch(/^The .+ (is now tight|no longer fits)/u);
  expect(await say(page)).toBe(known);
  await page.getByRole('button', { name: 'Keep the test' }).click();
  await page.getByText('The test is in the book; air and tail of your figures follow it.').waitFor();
  expect(await testsInBook()).toHaveLength(before.length + 1);
  await expect.poll(() => say(page), soon).not.toBe(known);
  expect(await page.getByLabel('1st, in', { exact: true }).inputValue()).toBe('');
  await page.getByRole('button', { name: 'Take it back' }).click();
  await expect.poll(testsInBook, soon).toEqual(before);
  await expect.poll(() => say(page), soon).toBe(known);
  expect(errors).toEqual([]);
  await page.close();
});

test('figures and their cards follow the balloons of the maker of each colour', async () => {
  const page = await open('/repertoire/dog');
  const errors = errorsOf(page);
  const air = page.locator('.piece p').first();
  const whose = page.locator('.whose');
  await page.getByRole('radio', { name: 'Blue' }).check();
  await expect.poll(() => whose.textContent(), soon).toContain('260 of Mossop Latex:');
  const blue = await air.textContent();
  await page.getByRole('radio', { name: 'Red' }).check();
  await expect.poll(() => whose.textContent(), soon).toContain('260 of Ardle & Wynn:');
  expect(await air.textContent()).not.toBe(blue);
  await page.getByRole('link', { name: 'Measure your balloons' }).click();
  await expect.poll(() => say(page), soon).toMatch(/^A 260 of Ardle & Wynn is /u);
  expect(errors).toEqual([]);
  await page.close();
});

test('a maker that the book does not have, in centimetres; a test that was wrong is taken out and put back', async () => {
  const page = await open();
  const before = await testsInBook();
  await page.getByLabel('Maker').selectOption('another maker');
  await page.getByLabel('1st, in', { exact: true }).fill('28');
  await page.getByRole('button', { name: 'Keep the test' }).click();
  await page.getByText('A flat length of 28 in cannot be right; expected 3.3 to 22 in.').waitFor();
  await page.getByText('Write the name of the maker above').waitFor();
  await page.getByLabel('Its name').fill('Tamsett');
  await page.getByLabel('Ruler', { exact: true }).selectOption('cm');
  await page.getByLabel('1st, cm', { exact: true }).waitFor();
  expect(await page.getByLabel('Flat before, cm').inputValue()).toBe('15');
  await expect.poll(() => page.locator('.testoutcome').textContent(), soon).toContain('With this test: 28 cm flat');
  await page.getByRole('button', { name: 'Keep the test' }).click();
  await expect.poll(async () => (await testsInBook()).at(-1), soon).toMatchObject({ maker: 'Tamsett', flatInches: [11.024] });
  const out = page.getByRole('button', { name: /^Take it out: 260 of Tamsett, /u });
  await out.click();
  await expect.poll(testsInBook, soon).toEqual(before);
  await page.getByRole('button', { name: 'Put it back' }).click();
  await out.waitFor();
  await expect.poll(async () => (await testsInBook()).at(-1), soon).toMatchObject({ maker: 'Tamsett' });
  await out.click();
  await expect.poll(testsInBook, soon).toEqual(before);
  await page.close();
});

test('an item has its maker, and loses it', async () => {
  const page = await open('/store/350-red');
  await page.getByLabel('Maker').fill('Tamsett');
  await page.getByRole('button', { name: 'Save the item' }).click();
  const item = async (): Promise<unknown> => (await context.request.get(`${url}/api/items/350-red`)).json();
  await expect.poll(item, soon).toMatchObject({ maker: 'Tamsett' });
  await page.goto(`${url}/store/350-red`);
  await page.getByLabel('Maker').fill('');
  await page.getByRole('button', { name: 'Save the item' }).click();
  await expect.poll(item, soon).not.toHaveProperty('maker');
  await page.close();
});

test.each([
  ['light', wide],
  ['dark', wide],
  ['light', phone],
] as const)('everybody can use it, %s, and nothing is wider than the screen', async (colorScheme, size) => {
  const page = await open('/repertoire/your-balloons', size);
  await page.emulateMedia({ colorScheme });
  await page.getByLabel('Blown up, in').fill('9');
  await page.getByLabel('1st, in', { exact: true }).fill('10');
  await page.getByText('Why these numbers?').click();
  await page.locator('.testoutcome h3').first().waitFor();
  const found = await new AxeBuilder({ page }).withTags(['wcag2a', 'wcag2aa', 'wcag21a', 'wcag21aa', 'wcag22aa']).analyze();
  expect(found.passes.length).toBeGreaterThan(5);
  expect(found.violations.map(({ id, nodes }) => `${id}: ${nodes.map((node) => node.target.join(' ')).join(', ')}`)).toEqual([]);
  expect(await page.evaluate(() => document.documentElement.scrollWidth - window.innerWidth)).toBe(0);
  await page.close();
});
