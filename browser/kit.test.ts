import { readFile } from 'node:fs/promises';
import { AxeBuilder } from '@axe-core/playwright';
import type { Browser, Page } from 'playwright-core';
import { afterAll, beforeAll, describe, expect, inject, test } from 'vitest';
import { errorsOf, launch, openDemo, phone, wide } from './browser.ts';

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
  await page.goto(`${url}/first-kit`);
  await settled(page);
});
afterAll(async () => {
  await browser?.close();
});

/** Waits until the whole answer stands: a search of seconds, and on a busy machine many of them. */
const settled = (of: Page): Promise<void> => of.locator('main[aria-busy="false"]').waitFor({ timeout: 80_000 });
const heading = () => page.getByRole('heading', { level: 1 });
const budget = () => page.getByRole('slider', { name: 'Money there is' });
const numberIn = (text: string | null): number => Number(/about (\d+) of 100/.exec(text ?? '')?.[1]);
async function moveTo(amount: number): Promise<void> {
  await budget().fill(String(amount));
  await page.getByRole('heading', { level: 1, name: new RegExp(`^For £${amount / 100},`) }).waitFor();
}

test('one sentence says what the money meets, the next what to add; the picture has a name that is a sentence', async () => {
  await page.getByRole('heading', { level: 1, name: /^For £\d+, [a-z]+ colours meet about \d+ of 100 requests\.$/ }).waitFor();
  await page.getByText(/^Expect \d+ to \d+ of 100\. /).waitFor();
  await page.getByText(/^Next best: £[\d.]+ more for .*, and \d+ of 100 are met\.$/).waitFor();
  await page
    .getByRole('img', { name: /^Requests met against money from £\d+ to £\d+\. Chosen: £\d+, \d+ of 100 requests met\.$/ })
    .waitFor();
  expect(await page.getByRole('link', { name: 'First kit' }).getAttribute('aria-current')).toBe('page');
});

test('the slider is the axis: its finger stands under the point that is chosen', async () => {
  const finger = await budget().evaluate((input: HTMLInputElement) => {
    const box = input.getBoundingClientRect();
    return box.left + 17 + ((Number(input.value) - Number(input.min)) / (Number(input.max) - Number(input.min))) * (box.width - 34);
  });
  const chosen = await page
    .getByRole('img', { name: /^Requests met against money/ })
    .locator('g[transform*="rotate(90)"]')
    .evaluate((element: SVGGElement) => {
      const box = element.getBoundingClientRect();
      return box.left + box.width / 2;
    });
  expect(Math.abs(chosen - finger)).toBeLessThan(2);
});

test('the slider stays under the finger while the answer changes, and when all of it has come', async () => {
  const top = async (): Promise<number> => (await budget().boundingBox())?.y ?? Number.NaN;
  const before = await top();
  for (const amount of [5000, 12000, 9000]) {
    await moveTo(amount);
    expect(await top()).toBeCloseTo(before, 0);
  }
  await settled(page);
  expect(await top()).toBeCloseTo(before, 0);
});

test('more money never meets less, and what is said is the sum of the list', async () => {
  const met: number[] = [];
  for (const amount of [5000, 9000, 15000]) {
    await moveTo(amount);
    await settled(page);
    met.push(numberIn(await heading().textContent()));
  }
  expect(met).toEqual([...met].sort((a, b) => a - b));
  expect(met[2]).toBeGreaterThan(met[0] ?? 0);
  const together = await page.locator('.together span').last().textContent();
  const pence = (text: string): number => Math.round(Number(text.replace('£', '')) * 100);
  const prices = await page.locator('.kit .num').allTextContents();
  expect(prices.reduce((sum, price) => sum + pence(price), 0)).toBe(pence(together ?? ''));
  expect(await page.getByRole('heading', { name: /^Buy these .* things for/ }).textContent()).toContain(together ?? 'nothing');
});

test('with fewer colours the curve ends earlier; back again it is as before', async () => {
  const most = async (): Promise<number> => Number(await budget().getAttribute('max'));
  const before = await most();
  const colours = page.getByRole('slider', { name: 'Colours at most' });
  await colours.fill('2');
  await expect.poll(most, { timeout: 60_000 }).toBeLessThan(before);
  await colours.fill((await colours.getAttribute('max')) ?? '');
  await expect.poll(most, { timeout: 60_000 }).toBe(before);
  await moveTo(9000);
  await settled(page);
});

test('what is taken out leaves the list, the loss is said, and it comes back', async () => {
  const name = 'Take out 260 green';
  await page.getByRole('button', { name }).click();
  await page.getByRole('heading', { name: 'What you have decided.' }).waitFor();
  await page
    .getByText(/^What you have taken out costs (\d+ of 100 requests: without it \d+ would be met|no request)\.$/)
    .waitFor({ timeout: 60_000 });
  await page.getByRole('button', { name: /^Put it back: 260 green, \d+ in a bag$/ }).click();
  await settled(page);
  await page.getByRole('button', { name }).waitFor();
});

test('a figure that is left out can be brought in', async () => {
  const bring = page.getByRole('button', { name: /^Bring in / }).first();
  const figure = /^Bring in (.*)$/.exec((await bring.getAttribute('aria-label')) ?? '')?.[1] ?? '';
  await bring.click();
  await page.getByText(/^What you have put in costs /).waitFor({ timeout: 60_000 });
  expect(await page.getByRole('button', { name: `Bring in ${figure}` }).count()).toBe(0);
  // A figure may have brought in several bags, and each that is let go leaves the list.
  const letGo = page.getByRole('button', { name: /^Let it go/ });
  while ((await letGo.count()) > 0) {
    const before = await letGo.count();
    await letGo.first().click();
    await expect.poll(() => letGo.count()).toBeLessThan(before);
  }
  await settled(page);
});

test('every number opens to its reasons, and things are called by their names', async () => {
  await page
    .getByText(/^Why \d+\?$/)
    .first()
    .click();
  await page.getByText(/^Of 100 guests \d+ get the colour they ask for first and \d+ another one that will do\./).waitFor();
  await page
    .getByText(/^It rests on 8 guests an hour at parties, so about 96 in the 12 hours; on 8 in 10 who take another colour/)
    .waitFor();
  const line = page.getByRole('listitem').filter({ hasText: '260 green' }).first();
  await line.getByText(/Without it (\d+|under 1) of 100 requests (are|is) lost\./).click();
  await line.getByText(/^(Not without it|Used in): [A-Z]/).waitFor();
  await page.getByText('Already has nothing').click();
  const there = page.getByLabel('Balloons that are there already');
  expect(await there.locator('option').allTextContents()).toEqual(expect.arrayContaining(['260 green', '5-inch red round']));
  await page.getByText('Put a bag in, whatever it costs').click();
  expect(await page.getByLabel('Put a bag in').locator('option').allTextContents()).toEqual(
    expect.arrayContaining([expect.stringMatching(/^260 green, \d+ in a bag, £\d+\.\d\d, [A-Z]/)]),
  );
});

test('cautions stand beside the list, with the wording that the law prescribes', async () => {
  await page.getByRole('heading', { name: 'Take care, and hand this over with the kit.' }).waitFor();
  await page.getByText(/^Warning! Children under eight years can choke/).waitFor();
  await page.getByRole('listitem').filter({ hasText: 'Inflate with a pump, not with the mouth' }).waitFor();
});

test('growth answers its sliders', async () => {
  await page.getByRole('heading', { name: /^The kit has paid for itself after \d+ gigs?( \(\d+ to \d+\))?\.$/ }).waitFor();
  await page.getByText(/^Why £\d+\.\d\d a gig\?$/).click();
  await page.getByText(/^£64\.00 of fee and £\d+\.\d\d of tips from about \d+ guests served, less £\d\.\d\d for the balloons/).waitFor();
  await page.getByRole('row', { name: /^Spare pump in week \d+.* 8\.95$/ }).waitFor();
  await page.getByRole('slider', { name: 'Fee an hour' }).fill('0');
  await page.getByRole('slider', { name: 'Tip of a guest' }).fill('0');
  await page.getByRole('heading', { name: 'On these fees and tips the kit never pays for itself.' }).waitFor();
});

test('two kits side by side', async () => {
  await page.getByRole('button', { name: 'Keep this one beside' }).click();
  await page
    .getByRole('heading', { name: /^This kit meets as many requests as the kit for £90 and costs the same\.$/ })
    .waitFor({ timeout: 60_000 });
  await moveTo(15000);
  await page
    .getByRole('heading', { name: /^This kit meets \d+ of 100 requests more than the kit for £90 and costs £\d+\.\d\d more\.$/ })
    .waitFor({ timeout: 60_000 });
  await moveTo(9000);
  await settled(page);
});

test('the papers come as files: a PDF, a page that opens without the app, a spreadsheet', async () => {
  await page.getByRole('textbox', { name: 'Name of the kit' }).fill('For Bea');
  for (const [button, file, starts] of [
    ['Print the list', 'first-kit.pdf', '%PDF-'],
    ['Print the figures to learn', 'figures-to-learn.pdf', '%PDF-'],
    ['Save as one page to hand over', 'first-kit.html', '<!doctype html>'],
    ['Save for a spreadsheet', 'first-kit.csv', 'bought,where'],
  ] as const) {
    const [download] = await Promise.all([page.waitForEvent('download'), page.getByRole('button', { name: button }).click()]);
    expect(download.suggestedFilename()).toBe(file);
    const path = await download.path();
    expect((await readFile(path)).subarray(0, starts.length).toString()).toBe(starts);
    if (file === 'first-kit.html') {
      const alone = await (await browser.newContext({ offline: true, javaScriptEnabled: false })).newPage();
      await alone.setContent(await readFile(path, 'utf8'));
      await alone.getByRole('heading', { level: 1, name: /^For Bea: \d+ things for £/ }).waitFor();
      const box = alone.getByRole('checkbox').first();
      await box.check();
      expect(await box.isChecked()).toBe(true);
      await alone.context().close();
    }
  }
});

test('a kit is kept in the book, opened again, and deleted', async () => {
  await page.getByRole('button', { name: 'Keep this kit' }).click();
  await page.getByRole('heading', { name: 'One kit in the book.' }).waitFor();
  await expect.poll(async () => (await (await page.request.get(`${url}/api/kits`)).json()) as unknown, { timeout: 20_000 }).toHaveLength(1);
  await moveTo(5000);
  await page.reload();
  await settled(page);
  await page.getByRole('button', { name: 'Open For Bea' }).click();
  await page.getByRole('heading', { level: 1, name: /^For £90, / }).waitFor();
  await settled(page);
  await page.getByRole('button', { name: 'Delete For Bea' }).click();
  await page.getByRole('heading', { name: 'Keep this kit in the book.' }).waitFor();
});

test('the orders are the newcomer’s own: a text to send, and nothing of it comes into the store of the book', async () => {
  await page.getByRole('textbox', { name: 'Name of the kit' }).fill('For Bea');
  await page.getByText('For Bea: the newcomer orders and pays; nothing of it comes into your store.').waitFor();
  const [download] = await Promise.all([
    page.waitForEvent('download'),
    page
      .getByRole('button', { name: /^Save the order for/ })
      .first()
      .click(),
  ]);
  const text = await readFile(await download.path(), 'utf8');
  expect(text).toMatch(/^Order, For Bea: .+\n\n(\d+ x .+: £\d+\.\d\d\n)+(Carriage: £\d+\.\d\d\n)?In all: £\d+\.\d\d\n$/);
  expect(await kitOrders()).toEqual([]);
});

test('only a coach who says so has the kit among the orders of the store', async () => {
  await page.getByText('It is for your own store').click();
  const mark = page.getByRole('button', { name: /^Mark as ordered at/ });
  expect(await mark.count()).toBeGreaterThan(0);
  await mark.first().click();
  await expect.poll(() => page.getByRole('button', { name: /^Mark as ordered at/, disabled: true }).count()).toBe(1);
  const mine = await kitOrders();
  expect(mine).toHaveLength(1);
  for (const order of mine) await page.request.delete(`${url}/api/orders/${order.id}`, { headers: { origin: url } });
});
async function kitOrders(): Promise<readonly { readonly id: string }[]> {
  const placed = (await (await page.request.get(`${url}/api/orders`)).json()) as readonly { readonly id: string }[];
  return placed.filter((order) => order.id.startsWith('kit-'));
}

test('nothing went wrong on the way', () => {
  expect(errors).toEqual([]);
});

describe('for everybody', () => {
  test.each(['light', 'dark'] as const)('%s: WCAG 2.2 A and AA by axe', async (colorScheme) => {
    const context = await browser.newContext({ viewport: wide, colorScheme });
    const own = await context.newPage();
    await own.goto(`${url}/first-kit`);
    await settled(own);
    const found = await new AxeBuilder({ page: own }).withTags(['wcag2a', 'wcag2aa', 'wcag21a', 'wcag21aa', 'wcag22aa']).analyze();
    expect(found.passes.length).toBeGreaterThan(5);
    expect(found.violations.map((one) => `${one.id}: ${one.nodes.map((node) => node.target.join(' ')).join(', ')}`)).toEqual([]);
    await context.close();
  });
  test('a phone: nothing is wider than the screen, targets are large enough for a thumb', async () => {
    const context = await browser.newContext({ viewport: phone });
    const own = await context.newPage();
    await own.goto(`${url}/first-kit`);
    await settled(own);
    expect(await own.evaluate(() => document.documentElement.scrollWidth - window.innerWidth)).toBeLessThanOrEqual(0);
    const heights = await own.evaluate(() =>
      [...document.querySelectorAll<HTMLElement>('a[href], button, select, summary, input')]
        .filter((element) => element.getClientRects().length > 0 && !element.classList.contains('skip'))
        .map((element) => ({
          name: element.getAttribute('aria-label') ?? element.textContent ?? '',
          height: (element.closest('label') ?? element).getBoundingClientRect().height,
        })),
    );
    expect(heights.length).toBeGreaterThan(20);
    expect(heights.filter(({ height }) => height < 44)).toEqual([]);
    await context.close();
  });
  test('keyboard alone: the slider moves by arrows, and focus is seen on everything', async () => {
    const context = await browser.newContext({ viewport: wide });
    const own = await context.newPage();
    await own.goto(`${url}/first-kit`);
    await settled(own);
    const slider = own.getByRole('slider', { name: 'Money there is' });
    await slider.focus();
    const before = await slider.inputValue();
    await own.keyboard.press('ArrowRight');
    expect(Number(await slider.inputValue())).toBeGreaterThan(Number(before));
    const unseen: string[] = [];
    for (let step = 0; step < 40; step++) {
      await own.keyboard.press('Tab');
      const at = await own.evaluate(() => {
        const element = document.activeElement as HTMLElement;
        return {
          name: `${element.tagName} ${element.getAttribute('aria-label') ?? element.textContent ?? ''}`.slice(0, 60),
          isSeen:
            getComputedStyle(element).boxShadow !== 'none' || getComputedStyle(element, '::-webkit-slider-thumb').boxShadow !== 'none',
          isRange: element.getAttribute('type') === 'range',
        };
      });
      if (!at.isSeen && !at.isRange) unseen.push(at.name);
    }
    expect(unseen).toEqual([]);
    await context.close();
  });
});
