import { globSync, readFileSync } from 'node:fs';
import { join, resolve, sep } from 'node:path';
import { expect, test } from 'vitest';

const root = resolve(import.meta.dirname, '..');

/** Rank of each workspace (docs/map.md). A workspace may import those of lower rank; apps import no app. */
const ranks: Readonly<Record<string, number>> = {
  units: 0,
  repertoire: 1,
  books: 2,
  planner: 3,
  contract: 4,
  store: 4,
  paper: 4,
  solver: 4,
  server: 5,
  command: 5,
  web: 5,
};
const webMayNot = ['store', 'paper'];
const pure = ['units', 'repertoire', 'books', 'planner'];
const forbiddenNames = /(^|\/)(utils?|common|shared|helpers?|types|misc)(\.tsx?$|\/)/;

interface Import {
  readonly file: string;
  readonly from: string;
  readonly target: string;
}
const importPattern =
  /(?:^|\n)\s*(?:import|export)\s[^;'"]*?from\s*['"]([^'"]+)['"]|import\(\s*['"]([^'"]+)['"]\s*\)|(?:^|\n)\s*import\s+['"]([^'"]+)['"]/g;

function importsOf(file: string, text: string): readonly Import[] {
  const from = file.split('/')[1] ?? '';
  return [...text.matchAll(importPattern)].map((match) => ({ file, from, target: match[1] ?? match[2] ?? match[3] ?? '' }));
}

/** What is wrong with one import, as a sentence; undefined if nothing is. */
function complaint({ file, from, target }: Import): string | undefined {
  const isTest = file.endsWith('.test.ts') || file.includes('/testing/');
  const ours = /^@twistwright\/([a-z]+)(\/.*)?$/.exec(target);
  if (ours) {
    const [, to = '', door] = ours;
    const [mine, theirs] = [ranks[from], ranks[to]];
    if (mine === undefined || theirs === undefined) return `${file} imports ${target}, which has no rank.`;
    if (door !== undefined && !['/testing', '/node'].includes(door))
      return `${file} goes through a side door: ${target}. Only index.ts is imported from outside.`;
    if (door === '/testing' && !isTest) return `${file} is no test and imports ${target}.`;
    if (theirs >= mine && from !== to) return `${file} imports ${target}, but ${from} (rank ${mine}) may not enter ${to} (rank ${theirs}).`;
    if (from === 'web' && webMayNot.includes(to)) return `${file} imports ${target}, which does not run in a browser.`;
    return undefined;
  }
  if (target.startsWith('.')) {
    const home = file.split('/').slice(0, 2).join('/');
    const reached = join(file, '..', target).split(sep).join('/');
    return reached.startsWith(`${home}/`) ? undefined : `${file} reaches out of its workspace: ${target}.`;
  }
  if (pure.includes(from) && !isTest)
    return `${file} imports ${target}; ${from} is plain functions on plain data and needs nothing from outside.`;
  return undefined;
}

const files = globSync(['packages/*/src/**/*.{ts,tsx}', 'apps/*/src/**/*.{ts,tsx}'], { cwd: root }).map((file) =>
  file.split(sep).join('/'),
);

test('every import goes down a rank, through the front door', () => {
  const imports = files.flatMap((file) => importsOf(file, readFileSync(join(root, file), 'utf8')));
  expect(imports.map(complaint).filter((sentence) => sentence !== undefined)).toEqual([]);
  expect(files.length).toBeGreaterThan(100);
  expect(imports.length).toBeGreaterThan(300);
});

test('planted violations are seen', () => {
  const planted = [
    importsOf('packages/books/src/x.ts', "import { planGig } from '@twistwright/planner';"),
    importsOf('packages/store/src/x.ts', "import type { Route } from '@twistwright/contract';"),
    importsOf('apps/web/src/x.tsx', "const paper = await import('@twistwright/paper');"),
    importsOf('packages/planner/src/x.ts', "import { readFileSync } from 'node:fs';"),
    importsOf('packages/planner/src/x.ts', "import { date } from '@twistwright/units/src/calendar.ts';"),
    importsOf('packages/planner/src/x.ts', "import { date } from '../../units/src/calendar.ts';"),
    importsOf('packages/planner/src/x.ts', "export * from '@twistwright/units/testing';"),
  ].flat();
  expect(planted.length).toBe(7);
  expect(planted.map(complaint).filter((sentence) => sentence === undefined)).toEqual([]);
});

test('the pure packages ask neither clock nor chance nor console', () => {
  const asks = /\b(Date\.now|new Date\(|Math\.random|performance\.now|Temporal\.Now|console\.|process\.|setTimeout|fetch\()/;
  const plain = files.filter(
    (file) => pure.includes(file.split('/')[1] ?? '') && !file.endsWith('.test.ts') && !file.includes('/testing/'),
  );
  const guilty = plain.filter((file) => asks.test(readFileSync(join(root, file), 'utf8').replace(/\/\*[\s\S]*?\*\/|\/\/.*/g, '')));
  expect(guilty).toEqual([]);
  expect(plain.length).toBeGreaterThan(60);
});

test('no dumping ground', () => {
  expect(files.filter((file) => forbiddenNames.test(file))).toEqual([]);
  expect(forbiddenNames.test('packages/units/src/utils.ts')).toBe(true);
});

test('no lone, skipped or empty tests without a reason in them', () => {
  const tests = globSync(['{packages,apps,checks,browser,test}/**/*.test.ts'], { cwd: root, exclude: ['**/node_modules/**'] });
  const bad = tests.filter((file) => /\b(it|test|describe)\.(only|todo|skip)\s*\(/.test(readFileSync(join(root, file), 'utf8')));
  expect(bad.filter((file) => !file.endsWith('architecture.test.ts'))).toEqual([]);
  expect(tests.length).toBeGreaterThan(30);
});
