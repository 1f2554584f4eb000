/** A size of balloon as it is bought. Inflated and flat lengths are on two different rulers. */
export interface Size {
  /** `260` (2 inches across, 60 long when full), `round-5`, `heart-6`. */
  readonly code: string;
  readonly shape: 'tube' | 'round' | 'heart' | 'flower' | 'ring' | 'link';
  /** Full: diameter of a tube, round or link; width of a heart, flower or ring. */
  readonly diameterInches: number;
  /** Tubes only: nominal inflated length. */
  readonly lengthInches?: number;
  /** Tubes only: flat working length after the knot. */
  readonly flatInches?: number;
  /** Tubes only: inflated inches out of one flat inch. */
  readonly stretch?: number;
  /** Tubes only: flat rubber that one bubble with its twist eats. */
  readonly tailPerBubbleInches?: number;
  /** Where the numbers come from. */
  readonly source: string;
}

/** A tube with its working numbers known. */
export interface Tube extends Size {
  readonly shape: 'tube';
  readonly lengthInches: number;
  readonly flatInches: number;
  readonly stretch: number;
  readonly tailPerBubbleInches: number;
}

export const isTube = (size: Size): size is Tube =>
  size.shape === 'tube' &&
  size.lengthInches !== undefined &&
  size.flatInches !== undefined &&
  size.stretch !== undefined &&
  size.tailPerBubbleInches !== undefined;

/**
 * The size with this code, or undefined.
 * @example sizeOf('260', shippedSizes)?.diameterInches // -> 2
 */
export const sizeOf = (code: string, sizes: readonly Size[]): Size | undefined => sizes.find((size) => size.code === code);
