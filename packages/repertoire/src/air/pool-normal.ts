/** The mean of some measurements of one group, with the variance of that mean. */
export interface Observed {
  /** Missing: nobody said which; those belong together too. */
  readonly group?: string;
  readonly value: number;
  readonly variance: number;
}

/** What is believed of the middle of one group, and whose data say so; the three parts sum to 1. */
export interface Pooled {
  readonly mean: number;
  readonly variance: number;
  readonly parts: { readonly own: number; readonly others: number; readonly prior: number };
}

interface Prior {
  readonly mean: number;
  readonly variance: number;
}

/**
 * Normal model of two levels with known variances: an observation lies around the middle of its group, the middles of groups around the
 * middle of all with variance `between`, and that around the prior. Precisions add on the way down as on the way up, so the answer is exact
 * and the order of observations does not matter (Gelman et al., Bayesian Data Analysis, 3rd ed., eq. 5.17 and 5.20, here with a proper
 * prior; a variance of Infinity makes it the flat one of the book).
 * @example poolNormal({ mean: 11, variance: 0.25 }, 0, [{ value: 10.5, variance: 0.125 }]).mean // -> 10.666666666666666
 */
export function poolNormal(prior: Prior, between: number, observed: readonly Observed[], group?: string): Pooled {
  const middles = middlesOf(observed);
  const own = middles.get(group ?? '');
  const others = [...middles].flatMap(([key, middle]) => (key === (group ?? '') ? [] : [middle]));
  const precisionOfPrior = 1 / prior.variance;
  const fromOthers = others.map(({ mean, precision }) => ({ mean, weight: 1 / (between + 1 / precision) }));
  const weightOfOthers = sumOf(fromOthers, ({ weight }) => weight);
  const precisionOfAll = precisionOfPrior + weightOfOthers;
  const isKnown = precisionOfAll > 0;
  const expected = isKnown
    ? (precisionOfPrior * prior.mean + sumOf(fromOthers, ({ mean, weight }) => mean * weight)) / precisionOfAll
    : prior.mean;
  const precisionBefore = isKnown ? 1 / (between + 1 / precisionOfAll) : 0;
  const precisionOwn = own?.precision ?? 0;
  const precision = precisionBefore + precisionOwn;
  const ownPart = precision > 0 ? precisionOwn / precision : 0;
  const othersPart = isKnown ? (1 - ownPart) * (weightOfOthers / precisionOfAll) : 0;
  return {
    mean: own === undefined ? expected : (precisionBefore * expected + precisionOwn * own.mean) / precision,
    variance: 1 / precision,
    parts: { own: ownPart, others: othersPart, prior: 1 - ownPart - othersPart },
  };
}

interface Middle {
  readonly mean: number;
  readonly precision: number;
}

/** Sorted before they are added, so that sums are equal to the last bit whatever the order they came in. */
function middlesOf(observed: readonly Observed[]): ReadonlyMap<string, Middle> {
  const groups = new Map<string, Observed[]>();
  const inOrder = [...observed].sort(
    (a, b) => compare(a.group ?? '', b.group ?? '') || compare(a.value, b.value) || compare(a.variance, b.variance),
  );
  for (const one of inOrder) {
    const known = groups.get(one.group ?? '');
    if (known === undefined) groups.set(one.group ?? '', [one]);
    else known.push(one);
  }
  return new Map(
    [...groups].map(([key, own]) => {
      const precision = sumOf(own, ({ variance }) => 1 / variance);
      return [key, { mean: sumOf(own, ({ value, variance }) => value / variance) / precision, precision }];
    }),
  );
}

const compare = <T extends string | number>(a: T, b: T): number => (a < b ? -1 : a > b ? 1 : 0);
const sumOf = <T>(items: readonly T[], value: (item: T) => number): number => items.reduce((sum, item) => sum + value(item), 0);
