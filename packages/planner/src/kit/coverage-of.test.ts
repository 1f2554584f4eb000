import { readdirSync, readFileSync } from 'node:fs';
import { expect, test } from 'vitest';
import { coverageOf, solveCoverage } from './coverage-of.ts';

const folder = new URL('../../../../cases/coverage/', import.meta.url);
const files = readdirSync(folder).filter((file) => file.endsWith('.json'));

test('there are the three problems', () => expect(files).toHaveLength(3));

test.each(files)('%s: proven optimal with the value it expects', (file) => {
  const json = JSON.parse(readFileSync(new URL(file, folder), 'utf8'));
  const coverage = coverageOf(json);
  if (!coverage.ok) throw new Error(coverage.error.map((problem) => problem.sentence).join(' '));
  const answer = solveCoverage(coverage.value);
  expect(answer).toMatchObject({ value: json.expects.value, bound: json.expects.value, proven: json.expects.proven });
  expect(answer.spent).toBeLessThanOrEqual(coverage.value.budget);
  const priceOf = new Map(coverage.value.bags.map((bag) => [bag.name, bag.price]));
  expect(answer.buy.reduce((sum, bag) => sum + (priceOf.get(bag) ?? Number.NaN), 0)).toBe(answer.spent);
  const worthOf = new Map(coverage.value.figures.map((figure) => [figure.name, figure.value]));
  expect(answer.make.reduce((sum, figure) => sum + (worthOf.get(figure) ?? Number.NaN), 0)).toBe(answer.value);
});

test('99 % at once: the start alone, before any branching', () => {
  for (const file of files) {
    const json = JSON.parse(readFileSync(new URL(file, folder), 'utf8'));
    const coverage = coverageOf(json);
    if (!coverage.ok) throw new Error('unreadable');
    expect(solveCoverage(coverage.value, { nodes: 0 }).value).toBeGreaterThanOrEqual(0.99 * json.expects.value);
  }
});

test('says everything that is wrong', () => {
  const answer = coverageOf({
    budget: -1,
    bags: [
      { name: 'a', price: 1.5 },
      { name: 'a', price: 2 },
    ],
    figures: [{ name: 'swan', value: Number.NaN, anyOf: [['b']] }, { value: 1 }],
  });
  expect(answer.ok).toBe(false);
  if (answer.ok) return;
  expect(answer.error.map((problem) => `${problem.code} ${problem.path.join('.')}`)).toEqual([
    'coverage.amount budget',
    'coverage.amount bags.0.price',
    'coverage.twice bags.1.name',
    'coverage.value figures.0.value',
    'coverage.bag figures.0.anyOf.0.0',
    'coverage.list figures.1.anyOf',
  ]);
  expect(coverageOf('nothing').ok).toBe(false);
});
