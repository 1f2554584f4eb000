import type { Vector } from './vector.ts';

/**
 * How a bubble lies. straight: from twist to twist · ball: a pinch, both ends in one twist · loop, fold: both ends in one twist, open or
 * closed · ring: a long bubble whose ends were locked together · bent: curved by hand · tulip, apple: knot pushed inside · round, heart,
 * flower, donut: a balloon that is not a tube · flat, tail: rubber without air.
 */
export type Form =
  | 'straight'
  | 'ball'
  | 'loop'
  | 'fold'
  | 'ring'
  | 'bent'
  | 'tulip'
  | 'apple'
  | 'round'
  | 'heart'
  | 'flower'
  | 'donut'
  | 'flat'
  | 'tail';

/** One bubble between two joints. Directions are unit vectors in the figure's frame (x forward, y up, z right). */
export interface SkeletonBubble {
  readonly from: number;
  readonly to: number;
  readonly form: Form;
  /** Inflated inches (flat inches for `flat` and `tail`). */
  readonly length: number;
  readonly radius: number;
  readonly role: string;
  readonly piece: number;
  readonly size: string;
  readonly finish?: string;
  readonly print?: string;
  readonly label?: string;
  readonly aim?: Vector;
  readonly facing?: Vector;
  readonly bendDegrees?: number;
  readonly bendToward?: Vector;
  /** Burst in the end: nothing is left of it but two free ends. */
  readonly popped?: true;
  /** After how many deeds (moves with repeats written out) it is there. */
  readonly deed: number;
}

/** Bubbles and the joints between them: what the solver is given. Joints that were locked together are one joint. */
export interface Skeleton {
  readonly joints: readonly { readonly names: readonly string[] }[];
  readonly bubbles: readonly SkeletonBubble[];
  /** The knot of each balloon: its joint and the bubble that starts there. */
  readonly knots: readonly { readonly joint: number; readonly bubble: number }[];
  /** Bubbles that were pushed into others, without a twist. */
  readonly tucks: readonly { readonly bubbles: readonly number[]; readonly into: readonly number[] }[];
  /** How many deeds it takes altogether. */
  readonly deeds: number;
}
