import { existsSync } from 'node:fs';
import { type Browser, type BrowserContext, chromium, type Page } from 'playwright-core';

/** Where a Chromium may be, in the order in which it is looked for. */
const candidates = [
  process.env.CHROMIUM,
  '/usr/bin/chromium',
  '/usr/bin/chromium-browser',
  '/usr/bin/google-chrome-stable',
  '/usr/bin/google-chrome',
];

export function launch(): Promise<Browser> {
  const executablePath = candidates.find((path) => path !== undefined && existsSync(path));
  if (executablePath === undefined) throw new Error('no Chromium was found: install the package chromium, or name one in CHROMIUM');
  return chromium.launch({
    executablePath,
    args: [
      '--no-sandbox',
      '--disable-quic',
      '--no-first-run',
      '--disable-background-networking',
      '--disable-component-update',
      '--disable-sync',
    ],
  });
}

export const wide = { width: 1280, height: 900 } as const;
export const phone = { width: 390, height: 844 } as const;

/**
 * Errors that a page raised or logged; a test that opens pages ends with an empty list. A change that finds the book moved on, because one that was sent
 * before the page was left has only just arrived, is refused with 412, looks again and is sent once more: the browser logs that, and nothing is wrong.
 */
export function errorsOf(page: Page): readonly string[] {
  const errors: string[] = [];
  page.on('pageerror', (error) => errors.push(error.message));
  page.on('console', (message) => {
    if (message.type() === 'error' && !message.text().includes('status of 412')) errors.push(message.text());
  });
  return errors;
}

/** Puts the demo into the server, whatever it held before. */
export async function openDemo(context: BrowserContext, url: string): Promise<void> {
  const health = (await (await context.request.get(`${url}/api/health`)).json()) as { hasBook: boolean };
  if (!health.hasBook) await expectOk(context.request.post(`${url}/api/start`, { data: { from: 'demo' }, headers: { origin: url } }));
}

/** Waits until the forecast of a page has settled. */
export const settled = (page: Page): Promise<void> => page.locator('main[aria-busy="false"]').waitFor({ timeout: 30_000 });

async function expectOk(answer: ReturnType<BrowserContext['request']['post']>): Promise<void> {
  const got = await answer;
  if (!got.ok()) throw new Error(`${got.url()} answered ${got.status()}: ${await got.text()}`);
}
