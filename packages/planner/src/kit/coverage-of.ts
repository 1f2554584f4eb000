import { fail, type Money, money, ok, type Problem, type Result } from '@twistwright/units';
import type { CoverProblem } from './cover-model.ts';
import { type CoverLimits, solveCover } from './solve-cover.ts';

/** Codes of the problems that {@link coverageOf} reports. */
export const coverageProblemCodes = [
  'coverage.form',
  'coverage.amount',
  'coverage.twice',
  'coverage.value',
  'coverage.bag',
  'coverage.list',
] as const;
export type CoverageProblemCode = (typeof coverageProblemCodes)[number];

/** A plain coverage problem: which bags to buy so that the figures that can be made are worth the most. */
export interface Coverage {
  readonly name: string;
  /** Minor units. */
  readonly budget: Money;
  readonly bags: readonly { readonly name: string; readonly price: Money }[];
  readonly figures: readonly {
    readonly name: string;
    /** What it is worth to be able to make this figure, for example requests for it; not negative. */
    readonly value: number;
    /** Any one of these bag sets is enough: indices into `bags`. */
    readonly anyOf: readonly (readonly number[])[];
  }[];
}
export interface CoverageAnswer {
  /** Names of the bags to buy. */
  readonly buy: readonly string[];
  /** Names of the figures that can be made from them. */
  readonly make: readonly string[];
  readonly value: number;
  readonly spent: Money;
  /** No purchase is worth more; equals `value` when `proven`. */
  readonly bound: number;
  readonly proven: boolean;
}

/**
 * Reads a plain coverage problem, for example from a file: `budget` and each bag's `price` in whole minor units, each figure's
 * `anyOf` as lists of bag names. Everything that is wrong is said at once.
 * @example
 * coverageOf({ budget: 900, bags: [{ name: 'white 260', price: 800 }], figures: [{ name: 'swan', value: 5, anyOf: [['white 260']] }] }).ok // -> true
 */
export function coverageOf(json: unknown): Result<Coverage> {
  const problems: Problem[] = [];
  const wrong: Wrong = (code, path, sentence, todo) => {
    problems.push({ code: `coverage.${code}` satisfies CoverageProblemCode, path, sentence, todo, weight: 'error' });
  };
  if (!isRecord(json)) {
    wrong('form', [], `A coverage problem is an object with budget, bags and figures, not ${show(json)}.`, 'Give an object.');
    return fail(problems);
  }
  const budget = amountOf(json.budget, ['budget'], 'The budget', wrong);
  const bags = listOf(json.bags, ['bags'], wrong).map((bag, b) => ({
    name: nameOf(bag, `bag ${b + 1}`),
    price: amountOf(isRecord(bag) ? bag.price : undefined, ['bags', b, 'price'], `The price of bag ${b + 1}`, wrong),
  }));
  const indexOf = new Map<string, number>();
  for (const [b, bag] of bags.entries()) {
    if (indexOf.has(bag.name)) wrong('twice', ['bags', b, 'name'], `Two bags are called ${bag.name}.`, 'Give each bag its own name.');
    indexOf.set(bag.name, b);
  }
  const figures = listOf(json.figures, ['figures'], wrong).map((figure, f) => {
    const record = isRecord(figure) ? figure : {};
    const name = nameOf(figure, `figure ${f + 1}`);
    const value = record.value;
    if (typeof value !== 'number' || !Number.isFinite(value) || value < 0)
      wrong('value', ['figures', f, 'value'], `The value of ${name} is ${show(value)}.`, 'Give a number of 0 or more.');
    const anyOf = listOf(record.anyOf, ['figures', f, 'anyOf'], wrong).map((set, s) =>
      listOf(set, ['figures', f, 'anyOf', s], wrong).map((bag, k) => {
        const index = indexOf.get(textOf(bag) ?? '');
        if (index === undefined)
          wrong(
            'bag',
            ['figures', f, 'anyOf', s, k],
            `${name} needs ${show(bag)}, which is no bag of this problem.`,
            'Name a bag that is listed under bags.',
          );
        return index ?? 0;
      }),
    );
    return { name, value: typeof value === 'number' ? value : 0, anyOf };
  });
  const name = typeof json.name === 'string' ? json.name : 'coverage';
  return problems.length > 0 ? fail(problems) : ok({ name, budget, bags, figures });
}

/** The problem in the form of the search. */
export const coverProblemOf = (coverage: Coverage): CoverProblem => ({
  costs: coverage.bags.map((bag) => bag.price),
  budget: coverage.budget,
  goals: coverage.figures.map((figure) => ({ value: figure.value, alternatives: figure.anyOf.map((set) => set.map((bag) => [bag])) })),
});

/** The best purchase of a plain coverage problem, proven unless a limit stops the search first. */
export function solveCoverage(coverage: Coverage, limits: CoverLimits = {}): CoverageAnswer {
  const answer = solveCover(coverProblemOf(coverage), limits);
  const has = new Set(answer.bought.flatMap((count, bag) => (count > 0 ? [bag] : [])));
  return {
    buy: coverage.bags.filter((_, bag) => has.has(bag)).map((bag) => bag.name),
    make: coverage.figures.filter((figure) => figure.anyOf.some((set) => set.every((bag) => has.has(bag)))).map((figure) => figure.name),
    value: answer.value,
    spent: money(answer.spent),
    bound: answer.bound,
    proven: answer.proven,
  };
}

type Bare<Code> = Code extends `coverage.${infer Rest}` ? Rest : never;
type Wrong = (code: Bare<CoverageProblemCode>, path: readonly (string | number)[], sentence: string, todo: string) => void;
const isRecord = (value: unknown): value is Readonly<Record<string, unknown>> =>
  typeof value === 'object' && value !== null && !Array.isArray(value);
const show = (value: unknown): string =>
  value === undefined ? 'missing' : typeof value === 'number' ? String(value) : JSON.stringify(value);
/** A name; one that is a size code may be written as a number. */
const textOf = (value: unknown): string | undefined =>
  typeof value === 'string' ? value : typeof value === 'number' ? String(value) : undefined;
const nameOf = (value: unknown, otherwise: string): string => (isRecord(value) ? textOf(value.name) : undefined) ?? otherwise;
function amountOf(value: unknown, path: readonly (string | number)[], what: string, wrong: Wrong): Money {
  if (typeof value === 'number' && Number.isSafeInteger(value) && value >= 0) return money(value);
  wrong('amount', path, `${what} is ${show(value)}.`, 'Give a whole number of minor units (cents, pence), 0 or more.');
  return money(0);
}
function listOf(value: unknown, path: readonly (string | number)[], wrong: Wrong): readonly unknown[] {
  if (Array.isArray(value)) return value;
  wrong('list', path, `${path.join(' ')} is ${show(value)}.`, 'Give a list.');
  return [];
}
