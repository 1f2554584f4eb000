import { execFileSync } from 'node:child_process';
import { readFileSync } from 'node:fs';
import { join, resolve } from 'node:path';
import { gzipSync } from 'node:zlib';
import { launch, openDemo, settled, wide } from '../../browser/browser.ts';
import { startServer } from '../../browser/server.ts';
import { type Measured, median, percentile95 } from '../measure.ts';

const moves = 100;
const loads = 5;

/** First load of the plan page, and how long a moved slider waits for its sentence, in real Chromium against the real server. */
export async function benchWeb(): Promise<readonly Measured[]> {
  execFileSync(process.execPath, [join(resolve(import.meta.dirname, '../..'), 'scripts/ensure-web.ts')], {
    stdio: 'inherit',
    env: { ...process.env, NODE_ENV: 'production' },
  });
  const server = await startServer();
  const browser = await launch();
  try {
    const context = await browser.newContext({ viewport: wide, reducedMotion: 'reduce' });
    await openDemo(context, server.url);
    const times: number[] = [];
    let bytes = 0;
    for (let load = 0; load < loads; load++) {
      const page = await context.newPage();
      const scripts = new Map<string, number>();
      const arriving: Promise<void>[] = [];
      page.on('response', (answer) => {
        const address = answer.url();
        if (address.endsWith('.js')) arriving.push(answer.body().then((body) => void scripts.set(address, gzipSync(body).length)));
      });
      const started = performance.now();
      await page.goto(`${server.url}/gigs/harbour-day`);
      await page.waitForFunction(() => /will be served/.test(document.querySelector('p.say')?.textContent ?? ''));
      times.push(performance.now() - started);
      await settled(page);
      await Promise.all(arriving);
      bytes = Math.max(
        bytes,
        [...scripts.values()].reduce((sum, size) => sum + size, 0),
      );
      await page.close();
    }
    const page = await context.newPage();
    await page.goto(`${server.url}/gigs/harbour-day`);
    await settled(page);
    const waits = await page.evaluate(slide, moves);
    const heap = await page.evaluate(
      () => (performance as unknown as { memory?: { usedJSHeapSize: number } }).memory?.usedJSHeapSize ?? Number.NaN,
    );
    const p95 = percentile95(waits);
    return [
      {
        what: 'first load of the plan page: script, compressed, worker included',
        value: bytes / 1000,
        unit: 'kB',
        goal: 'under 250',
        met: bytes < 250_000,
      },
      {
        what: `first load to the first sentence, median of ${loads}`,
        value: median(times) / 1000,
        unit: 's',
        goal: 'within 1',
        met: median(times) < 1000,
      },
      { what: `moved slider to changed sentence, median of ${waits.length} moves`, value: median(waits), unit: 'ms' },
      { what: `the same, 95th percentile`, value: p95, unit: 'ms', goal: 'at most 100', met: p95 <= 100 },
      { what: 'memory of the page after that, without its worker', value: heap / 1e6, unit: 'MB' },
      { what: 'memory of the server', value: residentMegabytes(server.pid), unit: 'MB' },
    ];
  } finally {
    await browser.close();
    await server.stop();
  }
}

/** In the page: sets the guests one after another and waits for another sentence each time, in milliseconds. */
async function slide(count: number): Promise<number[]> {
  const slider = document.querySelector<HTMLInputElement>('input[type=range]');
  const said = document.querySelector('p.say');
  if (slider === null || said === null) throw new Error('no slider or no sentence');
  const setValue = Object.getOwnPropertyDescriptor(HTMLInputElement.prototype, 'value')?.set;
  const waits: number[] = [];
  for (let move = 0; move < count; move++) {
    // Two values far apart in turn, so that the sentence always changes.
    const value = 60 + (move % 2) * 150 + Math.floor(move / 2);
    const before = said.textContent;
    const started = performance.now();
    setValue?.call(slider, String(value));
    slider.dispatchEvent(new Event('input', { bubbles: true }));
    while (said.textContent === before && performance.now() - started < 5000) await new Promise((resume) => setTimeout(resume, 1));
    waits.push(performance.now() - started);
    await new Promise((resume) => setTimeout(resume, 30));
  }
  return waits;
}

/** Resident memory of a process on Linux; not a number elsewhere. */
function residentMegabytes(pid: number | undefined): number {
  try {
    return Number(/VmRSS:\s+(\d+)/.exec(readFileSync(`/proc/${pid}/status`, 'utf8'))?.[1]) / 1000;
  } catch {
    return Number.NaN; // another system keeps this elsewhere
  }
}
