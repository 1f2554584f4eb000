import { AxeBuilder } from '@axe-core/playwright';
import type { Browser, Page } from 'playwright-core';
import { afterAll, beforeAll, describe, expect, inject, test } from 'vitest';
import { launch, openDemo, phone, settled, wide } from './browser.ts';

const url = inject('url');
let browser: Browser;
beforeAll(async () => {
  browser = await launch();
  const context = await browser.newContext();
  await openDemo(context, url);
  await context.close();
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

for (const mode of ['light', 'dark'] as const)
  describe(`${mode}: WCAG 2.2 A and AA by axe`, () => {
    test.each(paths)('%s', async (path) => {
      const context = await browser.newContext({ viewport: wide, colorScheme: mode });
      const page = await context.newPage();
      await open(page, path);
      const found = await new AxeBuilder({ page }).withTags(['wcag2a', 'wcag2aa', 'wcag21a', 'wcag21aa', 'wcag22aa']).analyze();
      expect(found.passes.length).toBeGreaterThan(5);
      expect(
        found.violations.map((violation) => `${violation.id}: ${violation.nodes.map((node) => node.target.join(' ')).join(', ')}`),
      ).toEqual([]);
      await context.close();
    });
  });

describe('phone', () => {
  test.each(paths)('%s fits the width and has targets for a thumb', async (path) => {
    const context = await browser.newContext({ viewport: phone });
    const page = await context.newPage();
    await open(page, path);
    expect(await page.evaluate(() => document.documentElement.scrollWidth - window.innerWidth)).toBeLessThanOrEqual(0);
    const small = await page.evaluate(smallTargets, 44);
    expect(small.seen).toBeGreaterThan(0);
    expect(small.names).toEqual([]);
    await context.close();
  });
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
