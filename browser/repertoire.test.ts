import { AxeBuilder } from '@axe-core/playwright';
import type { Browser, BrowserContext, Page } from 'playwright-core';
import { afterAll, beforeAll, expect, inject, test } from 'vitest';
import { errorsOf, launch, openDemo, phone, settled, wide } from './browser.ts';

const url = inject('url');
let browser: Browser;
let context: BrowserContext;
beforeAll(async () => {
  browser = await launch();
  context = await browser.newContext({ viewport: wide });
  await openDemo(context, url);
});
afterAll(() => browser?.close());

async function open(path: string, size: { readonly width: number; readonly height: number } = wide): Promise<Page> {
  const page = await context.newPage();
  await page.setViewportSize(size);
  await page.goto(url + path);
  await page.locator('main h1').waitFor();
  return page;
}
async function violations(page: Page): Promise<readonly string[]> {
  const found = await new AxeBuilder({ page }).withTags(['wcag2a', 'wcag2aa', 'wcag21a', 'wcag21aa', 'wcag22aa']).analyze();
  expect(found.passes.length).toBeGreaterThan(5);
  return found.violations.map((violation) => `${violation.id}: ${violation.nodes.map((node) => node.target.join(' ')).join(', ')}`);
}
const tooWide = (page: Page): Promise<number> => page.evaluate(() => document.documentElement.scrollWidth - window.innerWidth);

test('the shelf says what can be made from the case, and the filter narrows it', async () => {
  const page = await open('/repertoire');
  const errors = errorsOf(page);
  await expect
    .poll(() => page.getByRole('heading', { level: 1 }).textContent())
    .toMatch(/^You can make \d+ figures[;,] .* is in the refill case\.$/u);
  const stands = page.locator('.figs > li');
  const all = await stands.count();
  expect(all).toBeGreaterThan(40);
  await page.locator('.figs svg path').first().waitFor({ timeout: 20_000 });
  await page.getByLabel('Minutes').selectOption('1');
  await page.getByLabel('Balloons').selectOption('1');
  await page.getByLabel('Which', { exact: true }).selectOption('can');
  await expect.poll(() => stands.count()).toBeLessThan(all);
  const shown = await stands.allTextContents();
  expect(shown.length).toBeGreaterThan(3);
  for (const text of shown) {
    expect(text).toMatch(/(0\.\d|1\.0) min \(/u);
    expect(text).not.toContain('none can be made');
  }
  expect(errors).toEqual([]);
  await page.close();
});

test('a figure opens as a body that turns, steps and colours change it, and the card is a PDF', async () => {
  const page = await open('/repertoire/dog');
  const errors = errorsOf(page);
  await expect.poll(() => page.getByRole('heading', { level: 1 }).textContent()).toMatch(/^Dog, \d/u);
  const body = page.getByRole('img', { name: /as a body that can be turned/u });
  await body.waitFor({ timeout: 20_000 });
  await turns(page);
  const before = await body.screenshot();
  await page.getByRole('button', { name: 'Turn left' }).click();
  await expect.poll(async () => (await body.screenshot()).equals(before)).toBe(false);
  await page.getByRole('button', { name: 'Begin' }).click();
  await page.getByRole('button', { name: 'Next step' }).click();
  expect(await page.getByRole('status').first().textContent()).toMatch(/^Step 2 of \d+\.$/u);
  await page.getByRole('button', { name: 'Show the flat picture' }).click();
  const whole = page.locator('.stage svg');
  await whole.waitFor();
  const some = await whole.innerHTML();
  await page.getByRole('radio', { name: 'Red' }).check();
  await expect.poll(() => whole.innerHTML()).toContain('#d61f2e');
  expect(await whole.innerHTML()).not.toBe(some);
  const card = await page.request.get(url + ((await page.getByRole('link', { name: 'Print the card' }).getAttribute('href')) ?? ''));
  expect([card.status(), card.headers()['content-type']]).toEqual([200, 'application/pdf']);
  expect(errors).toEqual([]);
  await page.close();
});

test('without WebGL the flat picture is there, from every side', async () => {
  const page = await context.newPage();
  await page.addInitScript(() => {
    const real = HTMLCanvasElement.prototype.getContext as (this: HTMLCanvasElement, kind: string, ...more: unknown[]) => unknown;
    HTMLCanvasElement.prototype.getContext = function (this: HTMLCanvasElement, kind: string, ...more: unknown[]) {
      return kind.startsWith('webgl') ? null : real.call(this, kind, ...more);
    } as never;
  });
  await page.goto(`${url}/repertoire/dog`);
  await page.locator('.stage svg path').first().waitFor({ timeout: 20_000 });
  expect(await page.getByRole('button', { name: 'Turn left' }).count()).toBe(0);
  const best = await page.locator('.stage svg').innerHTML();
  await page.getByLabel('Side').selectOption('front');
  await expect.poll(() => page.locator('.stage svg').innerHTML()).not.toBe(best);
  await page.close();
});

/** Keeps every graphics context that a page makes where a test can reach it. */
const keepContexts = (): void => {
  const kept: WebGL2RenderingContext[] = [];
  Object.assign(globalThis, { kept });
  const real = HTMLCanvasElement.prototype.getContext as (this: HTMLCanvasElement, kind: string, ...more: unknown[]) => unknown;
  HTMLCanvasElement.prototype.getContext = function (this: HTMLCanvasElement, kind: string, ...more: unknown[]) {
    const context = real.call(this, kind, ...more);
    if (kind === 'webgl2' && context !== null && !kept.includes(context as WebGL2RenderingContext))
      kept.push(context as WebGL2RenderingContext);
    return context;
  } as never;
};
const contexts = (page: Page): Promise<readonly boolean[]> =>
  page.evaluate(() => (globalThis as unknown as { kept: WebGL2RenderingContext[] }).kept.map((context) => context.isContextLost()));
const turns = (page: Page): Promise<unknown> =>
  page.waitForFunction(() => performance.getEntriesByName('figure turns').length > 0, undefined, { timeout: 30_000 });

test('when the graphics card is taken away the flat picture is there; a page that is left gives it back', async () => {
  const page = await context.newPage();
  await page.addInitScript(keepContexts);
  await page.goto(`${url}/repertoire/bear`);
  await turns(page);
  expect(await contexts(page)).toEqual([false]);
  await page.evaluate(() => {
    const [first] = (globalThis as unknown as { kept: WebGL2RenderingContext[] }).kept;
    first?.getExtension('WEBGL_lose_context')?.loseContext();
  });
  await page.locator('.stage svg').waitFor();
  expect(await page.getByRole('button', { name: 'Turn left' }).count()).toBe(0);
  await page.goto(`${url}/repertoire/bear`);
  await turns(page);
  await page.getByRole('link', { name: 'Repertoire' }).first().click();
  await page.locator('.figs').waitFor();
  await expect.poll(() => contexts(page)).toEqual([true]);
  expect(await page.locator('canvas').count()).toBe(0);
  await page.close();
});

test('no page of the repertoire logs a warning or an error', async () => {
  const page = await context.newPage();
  const said: string[] = [];
  page.on('pageerror', (error) => said.push(error.message));
  page.on('console', (message) => {
    // A browser without a graphics card says this of itself, whoever draws.
    const isOfBrowser = message.text().includes('GL Driver Message');
    if (['warning', 'error'].includes(message.type()) && !isOfBrowser) said.push(`${message.type()}: ${message.text()}`);
  });
  await page.goto(`${url}/repertoire`);
  await page.locator('.figs svg path').first().waitFor({ timeout: 20_000 });
  for (const figure of ['dog', 'bee', 'heart-wand']) {
    await page.goto(`${url}/repertoire/${figure}`);
    await turns(page);
    await page.getByRole('button', { name: 'Turn right' }).click();
    await page.getByRole('button', { name: 'Begin' }).click();
    await page.getByRole('button', { name: 'Next step' }).click();
    await page.getByRole('button', { name: 'Show the flat picture' }).click();
    await page.getByRole('button', { name: 'Show the body to turn' }).click();
    await page.locator('.turn canvas').waitFor();
    for (const way of (await page.getByRole('radio').all()).slice(-1)) await way.check();
    await page.getByRole('link', { name: 'Change it' }).click();
    await page.locator('.outcome svg').waitFor();
  }
  await page.goto(`${url}/repertoire/new`);
  await page.locator('.outcome svg').waitFor();
  expect(said).toEqual([]);
  await page.close();
});

test('the editor says what is wrong in place, draws what is right, undoes, and keeps the figure', async () => {
  const page = await open('/repertoire/new');
  const errors = errorsOf(page);
  const recipe = page.getByLabel('Recipe');
  await page.getByLabel('Name', { exact: true }).fill('Test worm');
  await recipe.fill('balloon worm: 260 in body\n  bubbel 10 worm\n');
  const mistake = page.getByRole('button', { name: /^Line 2\. .*bubbel/u });
  await mistake.waitFor();
  expect(await recipe.getAttribute('aria-invalid')).toBe('true');
  await mistake.click();
  expect(await recipe.evaluate((field: HTMLTextAreaElement) => field.value.slice(field.selectionStart, field.selectionEnd))).toBe(
    'bubbel 10 worm',
  );
  await page.getByRole('button', { name: 'Save the figure' }).click();
  await page.getByText('The recipe has mistakes; nothing was saved.').waitFor();
  await recipe.fill('balloon worm: 260 in body\n  bubble 60 worm\n  bubble 20 tail\n');
  await page.getByText('does not fit its balloon').waitFor();
  await recipe.fill('balloon worm: 260 in body\n  bubble 10 worm\n');
  await page.getByText('It fits.').waitFor();
  await page.getByRole('button', { name: 'Undo' }).click();
  await expect.poll(() => recipe.inputValue()).toContain('bubble 60');
  await page.getByRole('button', { name: 'Do it again' }).click();
  await page.getByRole('button', { name: 'Save the figure' }).click();
  await page.waitForURL('**/repertoire/test-worm');
  const kept = (await (await page.request.get(`${url}/api/figures/test-worm`)).json()) as { recipe: string };
  expect(kept.recipe).toContain('bubble 10 worm');
  await page.getByRole('link', { name: 'Change it' }).click();
  await page.getByRole('button', { name: 'Take it off the shelf' }).click();
  await page.waitForURL('**/repertoire');
  expect((await page.request.get(`${url}/api/figures/test-worm`)).status()).toBe(404);
  expect(errors.filter((error) => !error.includes('404'))).toEqual([]);
  await page.close();
});

test('a word of the list is written where the cursor is, ready to be written over, and can be undone', async () => {
  const page = await open('/repertoire/new');
  const errors = errorsOf(page);
  const recipe = page.getByLabel('Recipe');
  await recipe.fill('balloon worm: 260 in body\n  bubble 10 worm\n  bubble 2 tip');
  await recipe.evaluate((field: HTMLTextAreaElement) => field.setSelectionRange(40, 40));
  await page.getByRole('button', { name: /^pinch 1 ear/u }).click();
  expect(await recipe.inputValue()).toBe('balloon worm: 260 in body\n  bubble 10 worm\n  pinch 1 ear\n  bubble 2 tip');
  await page.getByText('Line 3: pinch 1 ear').waitFor();
  await page.keyboard.type('2 eye');
  expect(await recipe.inputValue()).toContain('\n  pinch 2 eye\n');
  await page.getByRole('radio', { name: 'Bubbles' }).focus();
  for (const key of ['ArrowRight', 'ArrowRight', 'ArrowRight', 'ArrowRight', 'Tab', 'Enter']) await page.keyboard.press(key);
  await expect.poll(() => recipe.inputValue()).toContain('\n  pinch 2 eye, up\n');
  await page.getByText('It fits.').waitFor();
  await page.getByRole('button', { name: 'Undo' }).click();
  await expect.poll(() => recipe.inputValue()).toContain('\n  pinch 2 eye\n');
  expect(errors).toEqual([]);
  await page.close();
});

test('a frame becomes a recipe with the fewest balloons', async () => {
  const page = await open('/repertoire/new');
  await page.getByText('Begin with a frame?').click();
  await page.getByLabel('Frame', { exact: true }).selectOption('octahedron');
  await page.getByText('Twelve edges').waitFor();
  await page.getByRole('button', { name: 'Use it as the recipe' }).click();
  await expect.poll(() => page.getByLabel('Recipe').inputValue()).toMatch(/^balloon /u);
  await page.locator('.outcome svg path').first().waitFor();
  await page.close();
});

test('a figure is made from another size, and the change can be undone', async () => {
  const page = await open('/repertoire/dog/edit');
  const recipe = page.getByLabel('Recipe');
  const before = await recipe.inputValue();
  await page.getByText('Make it from another size?').click();
  await page.getByLabel('take', { exact: true }).selectOption('160');
  await page.getByRole('button', { name: 'Make it from 160' }).click();
  await expect.poll(() => recipe.inputValue()).toMatch(/: 160 in /u);
  await page.getByRole('button', { name: 'Undo' }).click();
  expect(await recipe.inputValue()).toBe(before);
  await page.close();
});

test('the menu board of a gig opens as a PDF', async () => {
  const page = await open('/repertoire');
  await page.getByText('Print the menu board').click();
  await page.getByLabel('Paper').selectOption('A3');
  const menus = await page.getByLabel('Menu', { exact: true }).locator('option').allTextContents();
  await page.getByLabel('Menu', { exact: true }).selectOption({ label: menus[1] ?? '' });
  const board = await page.request.get(url + ((await page.getByRole('link', { name: 'Open the board' }).getAttribute('href')) ?? ''));
  expect([board.status(), board.headers()['content-type']]).toEqual([200, 'application/pdf']);
  await page.close();
});

test.each(['/repertoire', '/repertoire/dog', '/repertoire/dog/edit'])('%s: no violation in light and dark, fits a phone', async (path) => {
  const page = await open(path);
  await settled(page);
  await page.locator('main svg path').first().waitFor({ timeout: 20_000 });
  for (const colorScheme of ['light', 'dark'] as const) {
    await page.emulateMedia({ colorScheme });
    expect(await violations(page)).toEqual([]);
  }
  await page.setViewportSize(phone);
  await expect.poll(() => tooWide(page)).toBeLessThanOrEqual(0);
  const small = await page.evaluate(() =>
    [...document.querySelectorAll('main button, main a.btn, main select, main summary')].flatMap((element) => {
      const { width, height } = element.getBoundingClientRect();
      return width > 0 && (height < 44 || width < 44)
        ? [`${element.textContent?.slice(0, 30)} ${Math.round(width)} x ${Math.round(height)}`]
        : [];
    }),
  );
  expect(small).toEqual([]);
  await page.close();
});
