import { execFileSync } from 'node:child_process';
import { readFileSync } from 'node:fs';
import { join, resolve } from 'node:path';
import { layDates } from '@twistwright/books';
import { readBook } from '@twistwright/contract';
import { comingGigs, forecastGig, gigAfter, outlookOf, planBook } from '@twistwright/planner';
import { openSolver } from '@twistwright/solver/node';
import { date } from '@twistwright/units';
import { type Measured, median, millisecondsOf, percentile95 } from '../measure.ts';

const root = resolve(import.meta.dirname, '../..');

/** Plans of the demo, cold and warm, and the answer to a moved slider. */
export async function benchPlan(): Promise<readonly Measured[]> {
  const read = readBook(readFileSync(join(root, 'demo/book.yaml'), 'utf8'), { name: 'book.yaml' });
  if (!read.ok) throw new Error('the demo cannot be read');
  const today = date('2026-06-02');
  const book = layDates(read.value, today);
  const solver = openSolver();
  const now = (): number => performance.now() / 1000;
  const rows: Measured[] = [];
  const plan = (gig?: string) => planBook(book, { today, ...(gig === undefined ? {} : { gig }) }, { solver, seconds: 20, now });
  const cold = await millisecondsOf(1, () => plan(), 0);
  const warm = await millisecondsOf(5, () => plan());
  rows.push({
    what: `plan of all ${book.gigs.length} demo gigs, 2,000 runs each, first time in the process`,
    value: median(cold),
    unit: 'ms',
  });
  rows.push({ what: 'the same, warm', value: median(warm), unit: 'ms' });
  for (const gig of comingGigs(book, today))
    rows.push({
      what: `plan of "${gig.name}" (${gig.kind}), warm`,
      value: median(await millisecondsOf(3, () => plan(gig.id))),
      unit: 'ms',
    });
  const fair = book.gigs.find((gig) => gig.kind === 'line' && (gig.guests ?? 0) > 100);
  if (fair !== undefined) {
    const moves = Array.from({ length: 100 }, (_, i) => 60 + i);
    const answers: number[] = [];
    for (const guests of moves)
      answers.push(...(await millisecondsOf(1, () => forecastGig(book, gigAfter(book, fair, { guests }), { seed: 1, runs: 200 }), 0)));
    const value = percentile95(answers);
    rows.push({
      what: "a slider's first sentence (200 runs of the largest gig), 95th percentile of 100 moves",
      value,
      unit: 'ms',
      goal: 'at most 100',
      met: value <= 100,
    });
    const full = median(await millisecondsOf(5, () => outlookOf({ ...book, gigs: [fair] }, { today, runs: 2000 })));
    rows.push({ what: 'full precision when the slider rests (2,000 runs, needs, packing, charge)', value: full, unit: 'ms' });
  }
  await solver.close();
  const command = await millisecondsOf(
    3,
    () =>
      execFileSync(process.execPath, [join(root, 'apps/command/src/main.ts'), 'plan', join(root, 'demo/book.yaml')], {
        stdio: ['ignore', 'pipe', 'ignore'],
      }),
    0,
  );
  const value = median(command) / 1000;
  rows.push({ what: 'twistwright plan demo/book.yaml, process start included', value, unit: 's', goal: 'under 4', met: value < 4 });
  rows.push({ what: 'memory of this process afterwards', value: process.memoryUsage().rss / 1e6, unit: 'MB' });
  return rows;
}
