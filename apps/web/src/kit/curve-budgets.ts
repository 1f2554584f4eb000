import { type Money, money } from '@twistwright/units';
import type { BudgetRange } from './kit-ask.ts';

/** Where little money makes much difference the points stand closer. */
const bend = 1.7;

/**
 * Budgets at which the curve is worked out, from the cheapest kit that works to everything.
 * @example curveBudgets({ cheapest: money(1000), everything: money(9000) }, 3) // -> [1000, 3462, 9000]
 */
export const curveBudgets = ({ cheapest, everything }: BudgetRange, points: number): readonly Money[] =>
  Array.from({ length: points }, (_, index) =>
    money(Math.round(cheapest + (everything - cheapest) * (index / Math.max(1, points - 1)) ** bend)),
  );
