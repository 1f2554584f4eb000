import { type Money, money, roundToMoney } from '@twistwright/units';

export interface BreakEven {
  /** Price less variable cost. */
  readonly margin: Money;
  /** Margin as a share of the price. */
  readonly marginShare: number;
  /** Units at which nothing is lost, with the fraction, and the whole units needed. */
  readonly units: number;
  readonly wholeUnits: number;
  /** Sales at `units`, rounded to the minor unit. */
  readonly sales: Money;
}
/**
 * Break-even = fixed cost / (price - variable cost). Undefined where each unit loses money or earns none.
 * @example breakEven(money(2_000_000), money(40_000), money(25_000))?.wholeUnits // -> 134
 */
export function breakEven(fixed: Money, price: Money, variable: Money): BreakEven | undefined {
  const margin = money(price - variable);
  if (margin <= 0) return undefined;
  const units = fixed / margin;
  return { margin, marginShare: margin / price, units, wholeUnits: Math.ceil(units - 1e-9), sales: roundToMoney((fixed * price) / margin) };
}
/** Margin share of a price that was made with a mark-up on cost. @example marginOfMarkUp(0.5) // -> 0.3333333333333333 */
export const marginOfMarkUp = (markUp: number): number => markUp / (1 + markUp);
/** Mark-up on cost that gives a margin share of the price, below 1. @example markUpOfMargin(0.6) // -> 1.5 */
export const markUpOfMargin = (marginShare: number): number => marginShare / (1 - marginShare);
