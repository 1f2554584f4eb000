import { short } from './path.ts';
import type { Rubber, Tones } from './rubber.ts';
import { lightFrom } from './strand.ts';

/** Balloons that are not tubes, and the tulip: outline in a box of 100 around the middle, its foot down. */
interface Glyph {
  readonly outline: string;
  /** The creases of the rubber, if it has any. */
  readonly creases?: string;
  readonly gloss: string;
  /** How far a tone may move towards the light and stay within the outline, in hundredths of its share. Missing: tones follow the ring. */
  readonly give?: number;
  /** What tones shrink towards, down from the middle. */
  readonly centre?: number;
}

const tulip: Glyph = {
  outline: 'M0 50C-42 46-54 14-49-14C-46-38-30-52-17-47C-9-44-6-36 0-36C6-36 9-44 17-47C30-52 46-38 49-14C54 14 42 46 0 50Z',
  creases: 'M-12-39Q0-24 12-39',
  gloss: 'M-33-30Q-42-8-33 16',
  give: 12,
  centre: 8,
};
const heart: Glyph = {
  outline: 'M0 50C-78-4-52-50-26-50C-10-50-3-40 0-31C3-40 10-50 26-50C52-50 78-4 0 50Z',
  gloss: 'M-32-36Q-44-22-36-2',
  give: 14,
  centre: 16,
};
const flower: Glyph = {
  outline: 'M-15.3 -21.0A19 19 0 1 1 15.3 -21.0A19 19 0 1 1 24.7 8.0A19 19 0 1 1 0.0 26.0A19 19 0 1 1 -24.7 8.0A19 19 0 1 1 -15.3 -21.0Z',
  creases: 'M-6-9L-15-21M6-9L15-21M10 3L25 8M0 11V26M-10 3L-25 8',
  gloss: 'M-12-38Q-9-45-1-46',
  give: 5,
};
const donut: Glyph = {
  outline: 'M0-50A50 50 0 1 0 0 50A50 50 0 1 0 0-50ZM0-17A17 17 0 1 1 0 17A17 17 0 1 1 0-17Z',
  gloss: 'M-36-2A36 36 0 0 1-14-33',
};

export const glyphs: Readonly<Record<'tulip' | 'heart' | 'flower' | 'donut', Glyph>> = { tulip, heart, flower, donut };

/** The tones inside the edge: share of the outline, and how far towards the light as a share of what it gives. */
const layers: readonly (readonly [tone: keyof Tones, share: number, towards: number])[] = [
  ['core', 0.92, 0.25],
  ['dim', 0.86, 0.45],
  ['body', 0.77, 0.75],
  ['half', 0.62, 1.1],
];
/** Where the light lies on a glyph that is no ring: so far from its middle as a share of what it gives, and how large. */
const glow = { towards: 2, radius: 14 } as const;

/** A glyph `size` units high at a place, turned by degrees clockwise. */
export function glyphAt(name: keyof typeof glyphs, x: number, y: number, size: number, degrees: number, rubber: Rubber): string {
  const { outline, creases, gloss, give, centre = 0 } = glyphs[name];
  const { tones } = rubber;
  const k = size / 100;
  const width = (units: number): string => short(units / k);
  const turn = (degrees * Math.PI) / 180;
  // Light comes from the upper left of the picture, however the glyph is turned.
  const [cosine, sine] = [Math.cos(turn), Math.sin(turn)];
  const light = { x: lightFrom.x * cosine + lightFrom.y * sine, y: lightFrom.y * cosine - lightFrom.x * sine };
  const ring = (radius: number, name: keyof Tones, thick: number, towards: number): string =>
    `<circle cx="${short(light.x * towards)}" cy="${short(light.y * towards)}" r="${radius}" stroke="${tones[name]}" stroke-width="${short(thick)}"/>`;
  const tone = (name: keyof Tones, share: number, x: number, y: number): string =>
    `<path d="${outline}" transform="translate(${short(x)} ${short(y)})scale(${share})" fill="${tones[name]}"/>`;
  const shaded =
    give === undefined
      ? layers.map(([name, share, towards]) => ring(33.5, name, 32 * share, 4.5 * towards))
      : [
          ...layers.map(([name, share, towards]) =>
            tone(name, share, light.x * give * towards, light.y * give * towards + centre * (1 - share)),
          ),
          `<circle cx="${short(light.x * give * glow.towards)}" cy="${short(light.y * give * glow.towards)}" r="${glow.radius}" fill="${tones.lit}"/>`,
        ];
  return (
    `<g transform="translate(${short(x)} ${short(y)})rotate(${short(degrees)})scale(${Math.round(k * 1000) / 1000})">` +
    `<path d="${outline}" fill="${tones.back}" fill-rule="evenodd" stroke="${rubber.rim}" stroke-width="${width(1.6)}"/>` +
    shaded.join('') +
    (creases === undefined ? '' : `<path d="${creases}" stroke="${rubber.rim}" stroke-width="${width(1.3)}"/>`) +
    `<path d="${gloss}" stroke="${tones.gloss}" stroke-width="7"/></g>`
  );
}
