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
  await page.goto(`${url}/gigs/harbour-day`);
  await settled(page);
});
afterAll(async () => {
  await browser?.close();
});

const answer = async (): Promise<string> => (await page.locator('p.say').textContent()) ?? '';
/** Moves a slider and waits for another answer. */
async function move(label: string, value: number): Promise<string> {
  const before = await answer();
  await page.getByRole('slider', { name: label }).fill(String(value));
  await page.waitForFunction((old) => document.querySelector('p.say')?.textContent !== old, before);
  await settled(page);
  return answer();
}
const backToBooked = async (): Promise<void> => {
  await page.getByRole('button', { name: 'Back to what is booked' }).click();
  await page.getByRole('heading', { name: 'Side by side.' }).waitFor({ state: 'detached' });
  await settled(page);
};
const servedIn = (sentence: string): number => Number(/About (\d+)/.exec(sentence.replace(/\s+/g, ' '))?.[1]);

test('the sentence comes first: who will be served, how long the last wait', async () => {
  expect((await answer()).replace(/\s+/g, ' ')).toMatch(/^About \d+ of \d+ will be served; the last wait .+\.$/);
  expect(await page.getByRole('img', { name: /^Guests waiting, 12:00 to 16:00\. Most at once: about \d+/ }).count()).toBe(1);
});
test('guests: fewer come, fewer are served, and the plan as booked stands beside it', async () => {
  const booked = servedIn(await answer());
  const fewer = servedIn(await move('Guests', 60));
  expect(fewer).toBeLessThan(booked);
  await page.getByText(/^Before: About \d+ of/).waitFor();
  const table = page.getByRole('table', { name: 'The change of mind beside the plan as booked' });
  expect(await table.getByRole('row', { name: /^Served/ }).textContent()).toMatch(new RegExp(`${booked} of \\d+ .*${fewer} of \\d+`));
  await backToBooked();
  expect(servedIn(await answer())).toBe(booked);
});
test('hours: more time, more served', async () => {
  const booked = servedIn(await answer());
  expect(servedIn(await move('Hours', 6))).toBeGreaterThan(booked);
  await backToBooked();
});
test('artists: two serve more than one', async () => {
  const booked = servedIn(await answer());
  expect(servedIn(await move('Artists', 2))).toBeGreaterThan(booked);
  await backToBooked();
});
test('closing rule: keeping more time back serves fewer', async () => {
  const booked = servedIn(await answer());
  expect(servedIn(await move('Kept back at the end', 20))).toBeLessThan(booked);
  await backToBooked();
  await page.getByRole('combobox', { name: 'The line closes' }).selectOption({ label: 'never' });
  await page.getByRole('heading', { name: 'Side by side.' }).waitFor();
  await backToBooked();
});
test('menu: a figure that is dropped is no longer needed', async () => {
  const before = await answer();
  await page.getByRole('checkbox', { name: /^Dog/ }).first().uncheck();
  await page.getByRole('heading', { name: 'Side by side.' }).waitFor();
  await settled(page);
  expect(await page.getByRole('checkbox', { name: /^Dog/ }).first().isChecked()).toBe(false);
  await backToBooked();
  expect(await answer()).toBe(before);
});
test('chance of running out: surer takes more', async () => {
  const shortOf = async (): Promise<number> =>
    (await page.locator('.need .v').allTextContents()).reduce((sum, text) => sum + Number(/Short by (\d+)/.exec(text)?.[1] ?? 0), 0);
  const before = await shortOf();
  await page.getByRole('slider', { name: 'Chance of running out' }).fill('0');
  await expect.poll(shortOf, { timeout: 20_000 }).toBeGreaterThan(before);
  await page.getByText('99 afternoons of 100').waitFor();
  await page.getByRole('slider', { name: 'Chance of running out' }).fill('3');
  await expect.poll(shortOf, { timeout: 20_000 }).toBe(before);
});
test('a slider is moved by keys and says its value', async () => {
  const slider = page.getByRole('slider', { name: 'Guests' });
  await slider.focus();
  await page.keyboard.press('ArrowRight');
  expect(await slider.getAttribute('aria-valuetext')).toBe('151');
  await backToBooked();
});
test('"Why …?" opens where the number comes from', async () => {
  await page.getByText(/^Why \d+\?$/).click();
  await page.getByText(/minutes with choosing, making and thanks/).waitFor();
  await page.getByText(/2,000 tries with seed 1/).waitFor();
});
test('charge and packing stand below; what is ticked is ticked at once, and stays', async () => {
  await page.getByRole('table', { name: 'What the price is made of' }).waitFor();
  const boxes = [/260 red/, /260 green/].map((name) => page.getByRole('checkbox', { name }).first());
  const said = await page.locator('p.say').evaluateHandle(listen);
  for (const box of boxes) expect(await box.evaluate(isTickedAtOnce)).toBe(true);
  await expect.poll(packedLines).toBe(2);
  await settled(page);
  // A tick is no reason to doubt the forecast: not even for a moment does it say something else.
  expect(await said.jsonValue()).toEqual([]);
  await page.reload();
  await settled(page);
  for (const box of boxes) expect(await box.isChecked()).toBe(true);
});
/** What a sentence says from now on, as it changes. */
function listen(sentence: Node): string[] {
  const said: string[] = [];
  new MutationObserver(() => said.push(sentence.textContent ?? '')).observe(sentence, {
    subtree: true,
    childList: true,
    characterData: true,
  });
  return said;
}
/** Ticks a box and says how it stands when what follows from that at once is done, before the page turns to anything else. */
async function isTickedAtOnce(box: Node): Promise<boolean> {
  const tick = box as HTMLInputElement;
  tick.click();
  for (let turn = 0; turn < 100; turn++) await undefined;
  return tick.checked;
}
async function packedLines(): Promise<number> {
  const book = (await (await page.request.get(`${url}/api/book`)).json()) as {
    gigs: readonly { readonly id: string; readonly packed?: readonly string[] }[];
  };
  return book.gigs.find((gig) => gig.id === 'harbour-day')?.packed?.length ?? 0;
}
test('advice: artists for the promise, the closing card, a better menu to try', async () => {
  await page.getByRole('button', { name: 'Work it out' }).click();
  await page.getByText(/^So that 90 % of the guests wait at most 20 minutes .* it takes \d artists?\./).waitFor({ timeout: 60_000 });
  await page.getByText('Closing card').click();
  const card = page.getByRole('table', { name: 'How many may still wait, by the clock' });
  const mayWait = (await card.getByRole('cell').allTextContents()).map((text) => Number.parseInt(text, 10));
  expect(mayWait.length).toBeGreaterThan(10);
  expect(mayWait).toEqual([...mayWait].sort((a, b) => b - a));
});
test('nothing went wrong on the way', () => {
  expect(errors).toEqual([]);
});
