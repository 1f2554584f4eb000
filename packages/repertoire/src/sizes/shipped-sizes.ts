import type { Size } from './size.ts';

/**
 * Flat working length 11 in, stretch 5.4 and 0.30 in of tail per bubble are the starting values for a 260: common practice, no published
 * source; everybody calibrates them on their own balloons. Other tubes keep the share of the 260's flat length in its nominal length
 * (11/60 of it, less by the ratio of stretches), and need tail in proportion to their radius, because the neck of a twist grows with it.
 */
const derived = 'derived from the 260 by proportion: starting value, calibrate on your own balloons';

const tube = (code: string, diameterInches: number, lengthInches: number, source = derived): Size => ({
  code,
  shape: 'tube',
  diameterInches,
  lengthInches,
  flatInches: Number(((lengthInches * 11) / 60).toFixed(2)),
  stretch: 5.4,
  tailPerBubbleInches: Number((0.15 * diameterInches).toFixed(3)),
  source,
});
const sized = (
  shape: 'round' | 'heart' | 'flower' | 'ring' | 'link',
  diameterInches: number,
  source = 'nominal width, common practice',
): Size => ({
  code: `${shape}-${diameterInches}`,
  shape,
  diameterInches,
  source,
});

export const shippedSizes: readonly Size[] = [
  tube('130', 1, 30),
  tube('160', 1, 60),
  tube('260', 2, 60, 'common practice, no published source: flat 10-12 in, stretch 5-6, tail 0.16-0.54 in a bubble'),
  tube('321', 3, 21),
  tube('350', 3, 50),
  tube('360', 3, 60),
  tube('646', 6, 46),
  sized('round', 5),
  sized('round', 9),
  sized('round', 11),
  sized('round', 12),
  sized('round', 16),
  sized('round', 24),
  sized('round', 36),
  sized('heart', 5),
  sized('heart', 6),
  sized('heart', 11),
  sized('heart', 15),
  sized('flower', 6),
  sized('flower', 16),
  sized('ring', 5, 'from memory: a small ring with a hole, width over all'),
  sized('ring', 16, 'from memory: a large ring with a hole, width over all'),
  sized('link', 6),
  sized('link', 12),
];
