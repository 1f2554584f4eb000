import type { Tube } from '../sizes/size.ts';

/** What is believed about a number of the balloon in hand: normal with this mean and standard deviation. */
export interface Belief {
  readonly mean: number;
  readonly sd: number;
}

/** The three numbers of a tube that decide whether a piece fits. */
export interface Working {
  /** Flat working length after the knot, flat inches. */
  readonly flat: Belief;
  /** Inflated inches out of one flat inch. */
  readonly stretch: Belief;
  /** Flat inches that one bubble with its twist eats. */
  readonly tailPerBubble: Belief;
}

/**
 * The belief before anything was measured. Spreads: common practice, no published source: a 260's flat length 10 to 12 in, stretch 5 to 6,
 * tail 0.16 to 0.54 in a bubble, each read as two standard deviations to either side; other tubes in proportion.
 * @example defaultWorking({ code: '260', shape: 'tube', diameterInches: 2, lengthInches: 60, flatInches: 11, stretch: 5.4, tailPerBubbleInches: 0.3, source: '' }).flat // -> { mean: 11, sd: 0.5 }
 */
export function defaultWorking(size: Tube): Working {
  return {
    flat: { mean: size.flatInches, sd: (0.5 / 11) * size.flatInches },
    stretch: { mean: size.stretch, sd: (0.25 / 5.4) * size.stretch },
    tailPerBubble: { mean: size.tailPerBubbleInches, sd: (0.095 / 0.3) * size.tailPerBubbleInches },
  };
}

/**
 * Lowest tail a bubble was ever said to need, as a share of the usual one: 0.16 of 0.30. Common practice, no published source. It differs by
 * the kind of figure and the hand as well as by the balloon, so that measuring balloons moves the band with its middle and does not close it.
 */
export const leastTailShare = 0.16 / 0.3;
/** Highest: 0.54 of 0.30. Common practice. */
export const mostTailShare = 0.54 / 0.3;
