import { short } from './path.ts';
import type { Rubber } from './rubber.ts';

/** Balloons that are not tubes, and the tulip: outline in a box of 100 around the middle, its foot down. */
interface Glyph {
  readonly outline: string;
  readonly shade: string;
  readonly gloss: string;
}

const tulip: Glyph = {
  outline: 'M0 50C-42 46-54 14-49-14C-46-38-30-52-17-47C-9-44-6-36 0-36C6-36 9-44 17-47C30-52 46-38 49-14C54 14 42 46 0 50Z',
  shade: 'M-12-39Q0-24 12-39M34-28C46-2 36 28 10 40',
  gloss: 'M-33-30Q-42-8-33 16',
};
const heart: Glyph = {
  outline: 'M0 50C-78-4-52-50-26-50C-10-50-3-40 0-31C3-40 10-50 26-50C52-50 78-4 0 50Z',
  shade: 'M38-34C48-12 28 14 4 36',
  gloss: 'M-32-36Q-44-22-36-2',
};
const flower: Glyph = {
  outline: 'M0-12C-24-60 24-60 0-12C42-48 60-6 12-4C60 12 36 52 8 10C16 62-34 56-8 10C-42 44-60 6-12-4C-60-20-36-56 0-12Z',
  shade: 'M22 4Q34 14 28 26',
  gloss: 'M-34-20Q-28-30-18-30',
};
const donut: Glyph = {
  outline: 'M0-50A50 50 0 1 0 0 50A50 50 0 1 0 0-50ZM0-17A17 17 0 1 1 0 17A17 17 0 1 1 0-17Z',
  shade: 'M36 6A36 36 0 0 1 4 36',
  gloss: 'M-36-2A36 36 0 0 1-14-33',
};

export const glyphs: Readonly<Record<'tulip' | 'heart' | 'flower' | 'donut', Glyph>> = { tulip, heart, flower, donut };

/** A glyph `size` units high at a place, turned by degrees clockwise. */
export function glyphAt(name: keyof typeof glyphs, x: number, y: number, size: number, degrees: number, rubber: Rubber): string {
  const { outline, shade, gloss } = glyphs[name];
  const k = size / 100;
  const width = (units: number): string => short(units / k);
  return (
    `<g transform="translate(${short(x)} ${short(y)})rotate(${short(degrees)})scale(${Math.round(k * 1000) / 1000})">` +
    `<path d="${outline}" fill="${rubber.body}" fill-rule="evenodd" stroke="${rubber.rim}" stroke-width="${width(1.6)}"/>` +
    `<path d="${shade}" stroke="${rubber.deep}" stroke-width="9" opacity=".32"/>` +
    `<path d="${gloss}" stroke="#fff" stroke-width="8" opacity=".9"/></g>`
  );
}
