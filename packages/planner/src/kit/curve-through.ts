import type { Money } from '@twistwright/units';

/**
 * The curve with the chosen kit on it. The whole answer for one budget can be better than what was found soon for its neighbours; what a
 * smaller budget buys can be had for a larger one too, so the curve never falls.
 */
export function curveThrough<P extends { readonly budget: Money; readonly met: number }>(
  points: readonly P[],
  chosen: P | undefined,
): readonly P[] {
  const all = chosen === undefined ? points : [...points.filter((point) => point.budget !== chosen.budget), chosen];
  let best: P | undefined;
  return [...all]
    .sort((a, b) => a.budget - b.budget)
    .map((point) => {
      if (best === undefined || point.met >= best.met) best = point;
      return point === best ? point : { ...best, budget: point.budget };
    });
}
