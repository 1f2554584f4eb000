// Measures everything in bench/ in one run and writes docs/benchmarks.md. `npm run bench -- line shape` measures only these.
import { existsSync, readFileSync, writeFileSync } from 'node:fs';
import { cpus, totalmem } from 'node:os';
import { join, resolve } from 'node:path';
import type { Measured } from '../bench/measure.ts';

const root = resolve(import.meta.dirname, '..');
const page = join(root, 'docs/benchmarks.md');

interface Bench {
  readonly name: string;
  readonly title: string;
  readonly run: () => Promise<readonly Measured[]>;
}
const benches: readonly Bench[] = [
  { name: 'line', title: 'Line', run: async () => (await import('../bench/line/index.ts')).benchLine() },
  { name: 'purchases', title: 'Purchases', run: async () => (await import('../bench/purchases/index.ts')).benchPurchases() },
  { name: 'kit', title: 'First kit', run: async () => (await import('../bench/kit/index.ts')).benchKit() },
  { name: 'frames', title: 'Frames', run: async () => (await import('../bench/frames/index.ts')).benchFrames() },
  { name: 'shape', title: 'Shape', run: async () => (await import('../bench/shape/bench-shape.ts')).benchShape() },
  {
    name: 'repertoire',
    title: 'Cards, boards and pictures',
    run: async () => (await import('../bench/repertoire/index.ts')).benchRepertoire(),
  },
  { name: 'plan', title: 'The whole', run: async () => (await import('../bench/plan/index.ts')).benchPlan() },
  { name: 'web', title: 'In the browser', run: async () => (await import('../bench/web/index.ts')).benchWeb() },
];

const number = (value: number): string =>
  Math.abs(value) >= 1000 ? Math.round(value).toLocaleString('en') : String(Number(value.toPrecision(3)));
const tableOf = (rows: readonly Measured[]): string =>
  [
    '| what | measured | goal | |',
    '|---|---:|---|---|',
    ...rows.map(
      (row) =>
        `| ${row.what} | ${number(row.value)} ${row.unit} | ${row.goal ?? ''} | ${row.met === undefined ? '' : row.met ? 'met' : '**missed**'} |`,
    ),
  ].join('\n');

const wanted = process.argv.slice(2);
const known = existsSync(page) ? sectionsOf(readFileSync(page, 'utf8')) : new Map<string, string>();
for (const bench of benches) {
  if (wanted.length > 0 && !wanted.includes(bench.name)) continue;
  console.error(`${bench.title} ...`);
  const rows = await bench.run();
  known.set(bench.title, tableOf(rows));
  for (const row of rows)
    console.log(
      `${row.met === false ? 'missed' : row.met === true ? 'met   ' : '      '}  ${number(row.value)} ${row.unit}  ${row.what}${row.goal === undefined ? '' : ` (${row.goal})`}`,
    );
}
const machine = `${cpus().length} cores (${cpus()[0]?.model ?? 'unknown'}), ${Math.round(totalmem() / 2 ** 30)} GiB, Node ${process.version}`;
writeFileSync(
  page,
  `# Benchmarks

Made by \`npm run bench\` in one run on ${machine}. The machine is shared and noisy: only ratios inside one run count, times are there for the order of
magnitude. Goals are those the project has set itself; what is missed says so.

${benches
  .filter((bench) => known.has(bench.title))
  .map((bench) => `## ${bench.title}\n\n${known.get(bench.title)}\n`)
  .join('\n')}`,
);

/** Tables of the page as it is, by heading, so that a part can be measured alone. */
function sectionsOf(text: string): Map<string, string> {
  return new Map(
    text
      .split('\n## ')
      .slice(1)
      .map((section) => {
        const [title = '', ...rest] = section.split('\n');
        return [title, rest.join('\n').trim()];
      }),
  );
}
