const pi = Math.PI;

/** Cosine of a share of a full turn; the same bits on every machine, which `Math.cos` does not promise. */
export function cosineOfTurn(turn: number): number {
  const folded = Math.abs(turn - Math.round(turn));
  if (folded > 0.25) return -cosineOfTurn(0.5 - folded);
  return folded > 0.125 ? series(0.25 - folded, 1) : series(folded, 0);
}

export const sineOfTurn = (turn: number): number => cosineOfTurn(turn - 0.25);

/** Taylor series of the cosine (`power` 0) or sine (1) up to an eighth of a turn, error below 1e-16. */
function series(turn: number, power: 0 | 1): number {
  const angle = 2 * pi * turn;
  let term = power === 0 ? 1 : angle;
  let sum = term;
  for (let order = power + 2; order < 24; order += 2) {
    term *= -(angle * angle) / (order * (order - 1));
    sum += term;
  }
  return sum;
}
