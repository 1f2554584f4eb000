import type { Mark, ShapeBubble, Vector } from '@twistwright/repertoire';
import { heartOutline, starOutline } from './outlines.ts';
import type { Flat, SurfaceBuilder } from './surface.ts';
import { aside, cross, minus, nearestOn, plus, scaled, unit } from './vectors.ts';

/**
 * What something on the rubber is drawn with. pen: dark on light rubber, white on dark · band: the same for broad stripes · heart, star:
 * printed, in a colour that shows · shade: the rubber's own, deeper · blush: pink that lets the rubber through.
 */
export type Ink = 'white' | 'black' | 'pen' | 'band' | 'heart' | 'star' | 'shade' | 'blush';

/** Rubber with something on it: its middle line and how thick it is there. */
export interface Ground {
  readonly line: readonly Vector[];
  readonly bubble: ShapeBubble;
}

/** How far what is drawn lies above the rubber, in radii, for each layer. */
const lift = 0.012;

/** Draws a mark on the rubber that it lies on. Corners follow the rubber, so that a mark bends with it. */
export function drawMark(inked: (ink: Ink) => SurfaceBuilder, mark: Mark, ground: Ground): void {
  const pen = new Pen(mark, ground);
  const disc = (ink: Ink, wide: number, high: number, x = 0, y = 0, layer = 1): void =>
    pen.fill(inked(ink), ellipse(wide, high), [x, y], layer);
  switch (mark.kind) {
    case 'eye':
      disc('black', 1.36, 1.66);
      disc('white', 1.22, 1.5, 0, 0, 2);
      disc('black', 0.78, 1.05, 0, -0.35, 3);
      disc('white', 0.3, 0.3, -0.25, 0.15, 4);
      break;
    case 'nose':
      disc('black', 1, 0.72);
      disc('white', 0.28, 0.18, -0.3, 0.28, 2);
      break;
    case 'nostrils':
      for (const side of [-0.45, 0.45]) disc('pen', 0.24, 0.42, side);
      break;
    case 'spot':
      disc('shade', 1, 1);
      break;
    case 'black spot':
      disc('black', 1, 1);
      break;
    case 'cheek':
      disc('blush', 1, 1);
      break;
    case 'heart':
      pen.fill(inked('heart'), sized(heartOutline, 0.02), [0, 0], 1);
      break;
    case 'star':
      pen.fill(inked('star'), sized(starOutline, 0.01), [0, 0], 1);
      break;
    case 'smile':
      pen.stroke(inked('pen'), smile, 0.34);
      break;
    case 'whiskers':
      for (const whisker of whiskers) pen.stroke(inked('pen'), whisker, 0.12);
      break;
    case 'stripe':
      pen.band(inked('band'), mark.inches);
      break;
  }
}

const ellipse = (wide: number, high: number): readonly Flat[] =>
  Array.from({ length: 24 }, (_, k): Flat => [wide * Math.sin((Math.PI * k) / 12), high * Math.cos((Math.PI * k) / 12)]);
const sized = (outline: readonly Flat[], by: number): readonly Flat[] => outline.map(([x, y]): Flat => [x * by, y * by]);

const smile: readonly Flat[] = Array.from({ length: 13 }, (_, k): Flat => {
  const t = k / 12;
  return [2 * t - 1, 0.2 - 2.4 * t * (1 - t)];
});
const whiskers: readonly (readonly Flat[])[] = [-1, 1].flatMap((side) =>
  [-1, 1].map((lean) =>
    Array.from({ length: 5 }, (_, k): Flat => {
      const t = k / 4;
      const x = side * (0.4 + 0.6 * t);
      return [x, lean * (0.07 + 0.23 * t)];
    }).toSorted((one, other) => one[0] - other[0]),
  ),
);

class Pen {
  readonly #mark: Mark;
  readonly #ground: Ground;

  constructor(mark: Mark, ground: Ground) {
    this.#mark = mark;
    this.#ground = ground;
  }

  /** An outline, clockwise and seen whole from its middle, filled. */
  fill(surface: SurfaceBuilder, outline: readonly Flat[], [x, y]: Flat, layer: number): void {
    const rows = [0, 0.5, 1].map((share) =>
      [...outline, outline[0] as Flat].map(([u, v]) => this.#on([x + u * share, y + v * share], layer)),
    );
    surface.sheet(rows);
  }

  /** A line from left to right, as wide as said. */
  stroke(surface: SurfaceBuilder, line: readonly Flat[], width: number): void {
    const row = (by: number) =>
      line.map((_, k) => {
        const [from, to] = [line[Math.max(0, k - 1)] as Flat, line[Math.min(line.length - 1, k + 1)] as Flat];
        const [dx, dy] = [to[0] - from[0], to[1] - from[1]];
        const size = Math.sqrt(dx * dx + dy * dy);
        const [x, y] = line[k] as Flat;
        return this.#on([x - (dy / size) * by, y + (dx / size) * by], 1);
      });
    surface.sheet([row(-width / 2), row(0), row(width / 2)]);
  }

  /** A band round the bubble, whose axis there is the mark's normal. */
  band(surface: SurfaceBuilder, width: number): void {
    const { at, normal: axis } = this.#mark;
    const { radius } = this.#ground.bubble;
    const side = aside(axis);
    const up = cross(axis, side);
    surface.sheet(
      [-0.5, 0, 0.5].map((share) =>
        Array.from({ length: 33 }, (_, k) => {
          const turn = (Math.PI * k) / 16;
          const normal = plus(scaled(side, Math.cos(turn)), scaled(up, Math.sin(turn)));
          return { at: plus(plus(at, scaled(axis, share * width)), scaled(normal, radius * (1 + lift))), normal };
        }),
      ),
    );
  }

  /** A point of the mark on the rubber. The mark is two wide and two high. */
  #on([x, y]: Flat, layer: number): { readonly at: Vector; readonly normal: Vector } {
    const { at, normal, upright, inches } = this.#mark;
    const { line, bubble } = this.#ground;
    const half = inches / 2;
    const right = cross(upright, normal);
    const flat = plus(at, plus(scaled(right, x * half), scaled(upright, y * half)));
    const above = lift * layer * bubble.radius;
    // The front of a cushion is nearly level.
    if (bubble.form === 'heart') return { at: minus(flat, scaled(normal, bubble.radius * (1 - cushionDeep) - above)), normal };
    const middle = nearestOn(line, flat);
    const out = unit(minus(flat, middle), normal);
    return { at: plus(middle, scaled(out, bubble.radius + above)), normal: out };
  }
}

/** Half the thickness of a heart-shaped balloon, as a share of half its width. */
export const cushionDeep = 0.5;
