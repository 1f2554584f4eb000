/**
 * Expected pieces used when demand is Poisson with mean `demand` and there are `pieces`: E[min(D, n)]. Never more than either.
 * The weights are built up from the mode, so that large means neither underflow nor need an exponential.
 * @example expectedUse(2, 1) // -> 0.8646647167633873
 */
export function expectedUse(demand: number, pieces: number): number {
  if (demand <= 0 || pieces <= 0) return 0;
  const spread = Math.sqrt(demand);
  if (pieces >= demand + 9 * spread + 12) return demand;
  if (pieces <= demand - 9 * spread - 12) return pieces;
  const mode = Math.floor(demand);
  let total = 1;
  let used = Math.min(mode, pieces);
  let weight = 1;
  for (let j = mode; j > 0 && weight > 1e-18; j--) {
    weight *= j / demand;
    total += weight;
    used += weight * Math.min(j - 1, pieces);
  }
  weight = 1;
  for (let j = mode + 1; weight > 1e-18; j++) {
    weight *= demand / j;
    total += weight;
    used += weight * Math.min(j, pieces);
  }
  return used / total;
}
