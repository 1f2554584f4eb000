import type { TimeLaw } from '@twistwright/books';
import { exp, log, normalQuantile } from '@twistwright/units';

/** 10th, 50th and 90th percentile of the minutes that a figure takes. */
export interface MinutesSpread {
  readonly p10: number;
  readonly p50: number;
  readonly p90: number;
}

const z = normalQuantile(0.9);

/**
 * The spread of a time law in closed form; of a gamma law by Wilson and Hilferty's cube (Proc. Natl. Acad. Sci. 17, 1931, 684-688).
 * @example minutesSpread({ law: 'fixed', minutes: 3 }) // -> { p10: 3, p50: 3, p90: 3 }
 */
export function minutesSpread(law: TimeLaw): MinutesSpread {
  switch (law.law) {
    case 'fixed':
      return { p10: law.minutes, p50: law.minutes, p90: law.minutes };
    case 'log-normal':
      return { p10: law.median * exp(-z * law.sigma), p50: law.median, p90: law.median * exp(z * law.sigma) };
    case 'exponential':
      return { p10: -law.mean * log(0.9), p50: -law.mean * log(0.5), p90: -law.mean * log(0.1) };
    case 'gamma': {
      const at = (quantile: number): number => {
        const root = 1 - 1 / (9 * law.shape) + quantile / (3 * Math.sqrt(law.shape));
        return law.mean * Math.max(0, root * root * root);
      };
      return { p10: at(-z), p50: at(0), p90: at(z) };
    }
  }
}
