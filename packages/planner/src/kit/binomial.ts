/**
 * Smallest k with P(Bin(count, chance) <= k) >= share: nine times in ten there are at least `binomialQuantile(n, p, 0.1)`.
 * @example binomialQuantile(100, 0.1, 0.1) // -> 6
 */
export function binomialQuantile(count: number, chance: number, share: number): number {
  if (chance <= 0 || count <= 0) return 0;
  if (chance >= 1) return count;
  // Weights are built up from the mode, so that nothing underflows.
  const mode = Math.min(count, Math.floor((count + 1) * chance));
  const odds = chance / (1 - chance);
  const weights = new Float64Array(count + 1);
  weights[mode] = 1;
  for (let k = mode; k > 0; k--) weights[k - 1] = ((weights[k] as number) * k) / ((count - k + 1) * odds);
  for (let k = mode; k < count; k++) weights[k + 1] = ((weights[k] as number) * (count - k) * odds) / (k + 1);
  const total = weights.reduce((sum, weight) => sum + weight, 0);
  let below = 0;
  for (let k = 0; k <= count; k++) {
    below += weights[k] as number;
    if (below >= share * total) return k;
  }
  return count;
}
