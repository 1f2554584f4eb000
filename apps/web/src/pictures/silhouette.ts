/** The outline of a balloon as drawn in a swatch, in units of its 60 by 32 box. */
export type Silhouette =
  | { readonly shape: 'tube'; readonly radius: number; readonly length: number }
  | { readonly shape: 'round' | 'heart' | 'flower' | 'ring' | 'link' };

/**
 * The silhouette for a size code: first digit inches across, the other two inches long; named shapes by their first word.
 * @example silhouetteOf('260') // -> { shape: 'tube', radius: 7.5, length: 46 }
 */
export function silhouetteOf(code: string): Silhouette {
  const named = /^(round|heart|flower|ring|link)\b/.exec(code);
  if (named !== null) return { shape: named[1] as 'round' | 'heart' | 'flower' | 'ring' | 'link' };
  const digits = /^(\d)(\d\d)/.exec(code);
  const inches = digits === null ? 2 : Number(digits[1]);
  const long = digits === null ? 60 : Number(digits[2]);
  const radius = [4, 4, 7.5, 10.5, 12, 13, 14, 14.5, 15, 15][inches] ?? 7.5;
  return { shape: 'tube', radius, length: long < 30 ? 24 : inches === 1 ? 52 : 46 - Math.max(0, inches - 2) };
}
