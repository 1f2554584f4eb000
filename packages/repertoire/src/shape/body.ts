/**
 * What the solver moves: points, rods that keep two points at a distance, capsules that may not enter one another, leanings that turn a
 * pair of points towards a direction. All plain arrays, so that a body can be handed to a worker or drawn as it is.
 */
export interface Body {
  /** Coordinates, three a point. Changed in place by `relax`. */
  readonly points: Float64Array;
  readonly rods: Rods;
  readonly capsules: Capsules;
  readonly leanings: Leanings;
  /** Height of the floor; absent where the figure does not stand. Points keep their radius above it. */
  readonly floor?: { readonly height: number; readonly points: Int32Array; readonly radius: Float64Array };
  /** Pairs of points that are mirror images of one another in the plane z = 0 (a point in the plane is its own image). */
  readonly mirror?: Int32Array;
}

/** Distances to keep. `stiffness` 1 is a length that must be met; below 1 it only steers and fades out. */
export interface Rods {
  readonly a: Int32Array;
  readonly b: Int32Array;
  readonly length: Float64Array;
  readonly stiffness: Float64Array;
}

/** Axes with a radius. Each end knows how far along the balloon it is from the joint that closes that end of its bubble. */
export interface Capsules {
  readonly a: Int32Array;
  readonly b: Int32Array;
  readonly radius: Float64Array;
  /** Length of the axis at rest. */
  readonly length: Float64Array;
  /** Number of the bubble that the capsule is part of. */
  readonly bubble: Int32Array;
  readonly startJoint: Int32Array;
  readonly endJoint: Int32Array;
  /** Inches of balloon from the start joint to `a`, and from the end joint to `b`. */
  readonly toStart: Float64Array;
  readonly toEnd: Float64Array;
  /** How far from a shared joint the bubble is squeezed by its neighbours, inches. */
  readonly squeeze: Float64Array;
  /** Bubbles with the same number lie side by side between the same two joints and collide over their whole length. */
  readonly bundle: Int32Array;
  /** False where bubbles are not kept apart at all. */
  readonly apart?: false;
  /** Joints with only a short bubble between them, and its length, by `pairKey`: what meets at one is squeezed at the other too. */
  readonly near?: ReadonlyMap<number, number>;
  /** Bubbles pushed into one another, which pass: `pairKey` of their numbers. */
  readonly through?: ReadonlySet<number>;
}

/** One number for two bubbles, whichever comes first. */
export const pairKey = (a: number, b: number): number => (a < b ? a * 65536 + b : b * 65536 + a);

/** Pairs of points that should lie along a vector (whose length is the wanted distance). */
export interface Leanings {
  readonly a: Int32Array;
  readonly b: Int32Array;
  readonly vector: Float64Array;
  readonly strength: Float64Array;
}

export const noLeanings: Leanings = {
  a: new Int32Array(0),
  b: new Int32Array(0),
  vector: new Float64Array(0),
  strength: new Float64Array(0),
};
