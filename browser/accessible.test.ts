import { AxeBuilder } from '@axe-core/playwright';
import type { Browser, BrowserContext, Page } from 'playwright-core';
import { afterAll, beforeAll, expect, inject, test } from 'vitest';
import { launch, openDemo, phone, settled, wide } from './browser.ts';

const url = inject('url');
let browser: Browser;
let shared: BrowserContext;
beforeAll(async () => {
  browser = await launch();
  shared = await browser.newContext();
  await openDemo(shared, url);
});
afterAll(() => browser?.close());

const paths = [
  '/diary',
  '/gigs',
  '/gigs/new',
  '/gigs/harbour-day',
  '/gigs/arden-birthday',
  '/gigs/saltings-tables',
  '/gigs/library-class',
  '/gigs/harbour-day/edit',
  '/repertoire',
  '/repertoire/dog',
  '/repertoire/dog/edit',
  '/store',
  '/store/260-red',
  '/store/new',
  '/shopping',
  '/shopping/suppliers',
  '/shopping/suppliers/fernhallow',
  '/book',
  '/places',
  '/start',
  '/nowhere',
] as const;

async function open(page: Page, path: string): Promise<void> {
  await page.goto(`${url}${path}`);
  await page.getByRole('heading', { level: 1 }).waitFor();
  await settled(page);
}

/** What axe finds against WCAG 2.2 A and AA, one line a rule. */
async function violations(page: Page): Promise<readonly string[]> {
  const found = await new AxeBuilder({ page }).withTags(['wcag2a', 'wcag2aa', 'wcag21a', 'wcag21aa', 'wcag22aa']).analyze();
  expect(found.passes.length).toBeGreaterThan(5);
  return found.violations.map((violation) => `${violation.id}: ${violation.nodes.map((node) => node.target.join(' ')).join(', ')}`);
}

test.each(paths)('%s: no violation in light and dark, fits a phone, targets for a thumb', async (path) => {
  const page = await shared.newPage();
  await page.setViewportSize(wide);
  await page.emulateMedia({ colorScheme: 'light' });
  await open(page, path);
  expect(await violations(page)).toEqual([]);
  await page.emulateMedia({ colorScheme: 'dark' });
  expect(await violations(page)).toEqual([]);
  await page.setViewportSize(phone);
  await expect.poll(() => page.evaluate(() => document.documentElement.scrollWidth - window.innerWidth)).toBeLessThanOrEqual(0);
  const small = await page.evaluate(smallTargets, 44);
  expect(small.seen).toBeGreaterThan(0);
  expect(small.names).toEqual([]);
  await page.close();
});

test('the whole plan page can be walked with the keyboard, and focus is always seen', async () => {
  const context = await browser.newContext({ viewport: wide });
  const page = await context.newPage();
  await open(page, '/gigs/harbour-day');
  await page.keyboard.press('Tab');
  expect(await page.evaluate(() => document.activeElement?.textContent)).toBe('Go to the page');
  const reached = new Set<string>();
  for (let step = 0; step < 40; step++) {
    await page.keyboard.press('Tab');
    const at = await page.evaluate(() => {
      const element = document.activeElement as HTMLElement;
      const style = getComputedStyle(element);
      const thumb = getComputedStyle(element, '::-webkit-slider-thumb');
      return {
        name: element.getAttribute('aria-label') ?? element.id ?? element.textContent,
        type: element.getAttribute('type') ?? element.tagName,
        shadow: style.boxShadow !== 'none' || thumb.boxShadow !== 'none',
      };
    });
    reached.add(at.type);
    if (at.type !== 'range' && at.type !== 'BODY') expect(at.shadow, `${at.type} ${at.name}`).toBe(true);
  }
  expect([...reached]).toEqual(expect.arrayContaining(['A', 'range', 'checkbox', 'SELECT', 'SUMMARY']));
  await context.close();
});

/** Things to press that are lower than `least` pixels; a row that is one label counts as its row. */
function smallTargets(least: number): { readonly seen: number; readonly names: readonly string[] } {
  const pressed = [
    ...document.querySelectorAll<HTMLElement>('a[href], button, select, summary, input:not([type=hidden]), textarea'),
  ].filter((element) => element.getClientRects().length > 0 && !element.classList.contains('skip'));
  const names = pressed
    .filter((element) => {
      const row = element.closest('label') ?? element;
      const box = row.getBoundingClientRect();
      return box.height < least || box.width < 24;
    })
    .map(
      (element) => `${element.tagName} ${element.textContent?.slice(0, 40) ?? ''} ${Math.round(element.getBoundingClientRect().height)}`,
    );
  return { seen: pressed.length, names };
}
