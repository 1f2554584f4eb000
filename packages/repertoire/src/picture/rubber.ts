/** Shades that draw one rubber: body, shade to the lower right, light to the upper left, and the edge that parts it from a light ground. */
export interface Rubber {
  readonly body: string;
  readonly deep: string;
  readonly lite: string;
  /**
   * The rubber from its edge on the side of the shade towards the light, as the eye sees it: light that the surroundings throw back, core of
   * the shade, half shade, body, half light, light, gloss. Opaque, so that one stroke may overlap another.
   */
  readonly tones: Tones;
  readonly rim: string;
  /** The edge on a dark ground. */
  readonly rimOnDark: string;
}

export interface Tones {
  readonly back: string;
  readonly core: string;
  readonly dim: string;
  readonly body: string;
  readonly half: string;
  readonly lit: string;
  readonly gloss: string;
}

type Channels = readonly [number, number, number];

const channelsOf = (hex: string): Channels => [1, 3, 5].map((i) => Number.parseInt(hex.slice(i, i + 2), 16)) as unknown as Channels;
const hexOf = (channels: Channels): string => `#${channels.map((value) => Math.round(value).toString(16).padStart(2, '0')).join('')}`;

function mixed(from: string, to: Channels, share: number): string {
  return hexOf(channelsOf(from).map((value, i) => value * (1 - share) + (to[i] as number) * share) as unknown as Channels);
}

/** Relative luminance by WCAG 2.2, approximated with a square for the power 2.4; enough to choose an edge. */
const lightness = (hex: string): number => {
  const [r, g, b] = channelsOf(hex).map((value) => (value / 255) * (value / 255)) as unknown as Channels;
  return 0.2126 * r + 0.7152 * g + 0.0722 * b;
};

/** Darker than this, rubber is told from the rubber behind it by the light on its edge. */
const darkRubber = 0.04;

function tonesOf(body: string, deep: string, lite: string): Tones {
  const shade = (share: number): string => mixed(body, channelsOf(deep), share);
  const light = (share: number): string => mixed(body, channelsOf(lite), share);
  return {
    back: lightness(body) < darkRubber ? light(0.42) : shade(0.14),
    core: shade(0.46),
    dim: shade(0.24),
    body,
    half: light(0.24),
    lit: light(0.5),
    gloss: mixed(lite, [255, 255, 255], 0.84),
  };
}

function rubber(body: string, deep: string, lite: string, rimOnDark = deep, rim = deep): Rubber {
  return { body, deep, lite, tones: tonesOf(body, deep, lite), rim, rimOnDark };
}

/** The tone half way between two. */
export const between = (one: string, other: string): string => mixed(one, channelsOf(other), 0.5);

/** How much of the paper shows through rubber that is drawn pale. */
const paleShare = 0.55;

/** The rubber of what was there before, so that what is new stands out: paler on light, darker on dark. */
export function pale(of: Rubber, ground: 'light' | 'dark'): Rubber {
  const paper: Channels = ground === 'light' ? [255, 255, 255] : [26, 27, 30];
  const shown = (hex: string, share = paleShare): string => mixed(hex, paper, share);
  const { tones, body, deep, lite, rim, rimOnDark } = of;
  return {
    body: shown(body),
    deep: shown(deep),
    lite: shown(lite),
    rim: shown(rim, paleShare / 2),
    rimOnDark: shown(rimOnDark, paleShare / 2),
    tones: {
      back: shown(tones.back),
      core: shown(tones.core),
      dim: shown(tones.dim),
      body: shown(tones.body),
      half: shown(tones.half),
      lit: shown(tones.lit),
      gloss: shown(tones.gloss),
    },
  };
}

/** Fourteen rubbers by plain name. Edge or body reaches 3 : 1 on the ground. */
export const rubbers: Readonly<Record<string, Rubber>> = {
  white: rubber('#f8f8f5', '#7f8380', '#ffffff'),
  black: rubber('#24252b', '#000000', '#7a7e88', '#656972'),
  red: rubber('#d61f2e', '#8c0f1b', '#ff7f82'),
  orange: rubber('#f07a1c', '#a04a06', '#ffbd80'),
  yellow: rubber('#ffd01f', '#8f6900', '#fff0a0'),
  green: rubber('#1d9450', '#0b5a2d', '#86d9a6'),
  sky: rubber('#57b6ee', '#1c6c9c', '#c3e7ff'),
  blue: rubber('#2058cc', '#0e2c7a', '#86aaf8', '#2c62d1'),
  violet: rubber('#7c40c4', '#43187c', '#c09af0', '#844bc9'),
  pink: rubber('#f48bb6', '#ab3f70', '#ffd6e6'),
  rose: rubber('#de1f7d', '#8a0a48', '#ff8cc0'),
  brown: rubber('#70432a', '#3a2110', '#bd8a6a', '#8f5f44'),
  blush: rubber('#ecc09e', '#92643c', '#ffe8d6'),
  grey: rubber('#9da3a9', '#555b61', '#dadee2'),
};

/** Whether dark pen shows on the rubber; on darker rubber one draws in white. */
export const takesInk = ({ body }: Rubber): boolean => lightness(body) > 0.22;

/** Whether a fine black line shows on the rubber. */
export const showsInk = ({ body }: Rubber): boolean => lightness(body) > 0.1;

/** Body this light or lighter gets an edge that is darkened until it shows on paper. */
const lightEdge = 0.26;

/** Body darker than this gets an edge that is lightened until it shows on a dark ground. */
const darkEdge = 0.12;

/**
 * The rubber of a plain name, or of a body colour `#rrggbb`: shade 50 % towards black, light 55 % towards white, and an edge that is dark
 * enough for a light ground. Undefined for anything else.
 * @example rubberOf('red')?.body // -> '#d61f2e'
 */
export function rubberOf(colour: string): Rubber | undefined {
  const named = rubbers[colour.toLowerCase()];
  if (named !== undefined) return named;
  if (!/^#[0-9a-f]{6}$/iu.test(colour)) return undefined;
  const body = colour.toLowerCase();
  const deep = mixed(body, [0, 0, 0], 0.5);
  let rim = deep;
  for (let step = 0; step < 10 && lightness(rim) > lightEdge; step++) rim = mixed(rim, [0, 0, 0], 0.1);
  let rimOnDark = lightness(body) >= darkEdge ? deep : body;
  for (let step = 0; step < 12 && lightness(body) < darkEdge && lightness(rimOnDark) < darkEdge; step++)
    rimOnDark = mixed(rimOnDark, [255, 255, 255], 0.08);
  return rubber(body, deep, mixed(body, [255, 255, 255], 0.55), rimOnDark, rim);
}
