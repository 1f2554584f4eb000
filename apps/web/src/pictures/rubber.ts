import type { Colour } from '@twistwright/books';

/** What a balloon is painted with: CSS colours that follow light and dark. */
export interface Rubber {
  readonly body: string;
  /** Shade to the lower right. */
  readonly deep: string;
  /** Light from the upper left. */
  readonly lite: string;
  /** Edge; with the body it reaches 3 : 1 on the ground in both modes. */
  readonly rim: string;
}

/** Shades that ship; every one is a plain word. */
export const shippedShades = [
  'white',
  'black',
  'red',
  'orange',
  'yellow',
  'green',
  'sky',
  'blue',
  'violet',
  'pink',
  'rose',
  'brown',
  'blush',
  'grey',
] as const;

const grounds = { light: '#f2f3ef', dark: '#141619' } as const;

/**
 * The paint of a colour. A body colour of the business's own is shaded half towards black and lit 55 % towards white; without one, the shipped shade
 * of that name, or the last shipped word in the name ("lime green" is a green); else grey, since the name is always written beside it.
 */
export function rubberOf(colour: Colour | undefined): Rubber {
  const shade = shadeOf(colour);
  if (shade.startsWith('#')) return ownRubber(shade);
  return { body: `var(--b-${shade})`, deep: `var(--deep-${shade})`, lite: `var(--lite-${shade})`, rim: `var(--rim-${shade})` };
}

/** The body colour as `#rrggbb`, or the name of a shipped shade. */
function shadeOf(colour: Colour | undefined): string {
  if (colour?.body !== undefined && readHex(colour.body) !== undefined) return colour.body;
  return shadeNamed(colour?.id ?? '') ?? shadeNamed(colour?.name ?? '') ?? 'grey';
}

function shadeNamed(name: string): string | undefined {
  const words = name.toLowerCase().split(/[^a-z]+/);
  return words.reverse().find((word) => (shippedShades as readonly string[]).includes(word));
}

function ownRubber(body: string): Rubber {
  const deep = mix(body, '#000000', 0.5);
  const lite = mix(body, '#ffffff', 0.55);
  return { body, deep, lite, rim: `light-dark(${edge(body, deep, '#000000', 'light')}, ${edge(body, deep, '#ffffff', 'dark')})` };
}

/** The shade, or the body moved towards ink until it stands out from the ground. */
function edge(body: string, deep: string, ink: string, mode: keyof typeof grounds): string {
  const ground = grounds[mode];
  if (contrast(deep, ground) >= 3.2 || contrast(body, ground) >= 3.2) return deep;
  for (let part = 0.05; part < 1; part += 0.05) {
    const moved = mix(body, ink, part);
    if (contrast(moved, ground) >= 3.25) return moved;
  }
  return ink;
}

function readHex(text: string): readonly [number, number, number] | undefined {
  const match = /^#([0-9a-f]{2})([0-9a-f]{2})([0-9a-f]{2})$/i.exec(text);
  if (match === null) return undefined;
  const part = (index: number): number => Number.parseInt(match[index] ?? '0', 16) / 255;
  return [part(1), part(2), part(3)];
}

function mix(from: string, to: string, part: number): string {
  const [a, b] = [readHex(from) ?? [0, 0, 0], readHex(to) ?? [0, 0, 0]];
  const channel = (index: 0 | 1 | 2): string =>
    Math.round(((a[index] ?? 0) * (1 - part) + (b[index] ?? 0) * part) * 255)
      .toString(16)
      .padStart(2, '0');
  return `#${channel(0)}${channel(1)}${channel(2)}`;
}

/**
 * Contrast of two colours, 1 to 21 (WCAG 2.2, "contrast ratio" and "relative luminance").
 * @example contrast('#000000', '#ffffff') // -> 21
 */
export function contrast(a: string, b: string): number {
  const [high, low] = [luminance(a), luminance(b)].sort((x, y) => y - x) as [number, number];
  return (high + 0.05) / (low + 0.05);
}
function luminance(colour: string): number {
  const rgb = readHex(colour);
  if (rgb === undefined) throw new RangeError(`not a colour as #rrggbb: ${colour}`);
  const [red, green, blue] = rgb.map((c) => (c <= 0.04045 ? c / 12.92 : ((c + 0.055) / 1.055) ** 2.4)) as [number, number, number];
  return 0.2126 * red + 0.7152 * green + 0.0722 * blue;
}
