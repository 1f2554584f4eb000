import type { Vector } from '@twistwright/repertoire';
import type { FigureBody } from './bodies-of.ts';
import { dot, plus, scaled } from './vectors.ts';

/** Radians about the upright, and about the level line of the picture, from where the flat picture shows a figure. */
export interface Turn {
  readonly about: number;
  readonly over: number;
}

/** What is seen: edges in inches, how deep the scene is to either side, and the figure's place in it as a matrix, row by row. */
export interface Window {
  readonly left: number;
  readonly right: number;
  readonly top: number;
  readonly bottom: number;
  readonly depth: number;
  readonly placed: Matrix;
}
type Matrix = readonly [
  ...(readonly [number, number, number, number]),
  ...(readonly [number, number, number, number]),
  ...(readonly [number, number, number, number]),
  ...(readonly [number, number, number, number]),
];

/** The flat picture's box and the line that a figure stands on in it. */
const box = { width: 200, height: 220 } as const;
const floorLine = 212;
const margin = 8;
/** Turned by this much it has room to be turned any way. */
const turnedWell = 0.8;

/**
 * Where a turned figure is seen. Not turned, it lies exactly as in its flat picture; the more it is turned the more room it is given, so
 * that nothing is cut off from any side.
 */
export function windowOf(
  { camera, frame, high, wide }: FigureBody,
  { about, over }: Turn,
  size: { readonly width: number; readonly height: number },
): Window {
  const middle = high / 2;
  const tilt = Math.asin(Math.max(-1, Math.min(1, camera.near[1]))) + over;
  const halfHigh = middle * Math.abs(Math.cos(tilt)) + wide * Math.abs(Math.sin(tilt));
  const safe = Math.min(frame.scale, (box.width / 2 - margin) / wide, (floorLine - margin) / 2 / halfHigh);
  const share = smooth(Math.min(1, (Math.sqrt(Math.max(0, 2 - 2 * Math.cos(about))) + Math.abs(over)) / turnedWell));
  const scale = frame.scale + (safe - frame.scale) * share;
  // Where the middle of the figure is in the picture: as the flat picture has it, and standing on its floor line in the middle.
  const [x, y] = [middle * camera.right[1], middle * camera.up[1]];
  const flatAt = { x: frame.shift.x + x * frame.scale, y: frame.shift.y - y * frame.scale };
  const at = { x: flatAt.x + (box.width / 2 - flatAt.x) * share, y: flatAt.y + (floorLine - halfHigh * scale - flatAt.y) * share };
  const unit = Math.max(1e-6, Math.min(size.width / box.width, size.height / box.height));
  const [spareX, spareY] = [(size.width / unit - box.width) / 2, (size.height / unit - box.height) / 2];
  return {
    left: (-spareX - at.x) / scale,
    right: (box.width + spareX - at.x) / scale,
    top: (at.y + spareY) / scale,
    bottom: (at.y - box.height - spareY) / scale,
    depth: 2 * (high + wide),
    placed: placed(camera, { about, over }, [0, middle, 0]),
  };
}

const smooth = (share: number): number => share * share * (3 - 2 * share);

/** Turns about the figure's own upright, then as the camera stands, then over towards the viewer; the figure's middle stays at the origin. */
function placed({ right, up, near }: FigureBody['camera'], { about, over }: Turn, middle: Vector): Matrix {
  const [c, s] = [Math.cos(about), -Math.sin(about)];
  // Rows of the turn over, in the directions of the camera.
  const leaning = [
    right,
    plus(scaled(up, Math.cos(over)), scaled(near, -Math.sin(over))),
    plus(scaled(near, Math.cos(over)), scaled(up, Math.sin(over))),
  ];
  const rows = leaning.map(([x, y, z]): Vector => [x * c - z * s, y, x * s + z * c]);
  const row = (k: number): readonly [number, number, number, number] => {
    const direction = rows[k] as Vector;
    return [...direction, -dot(direction, middle)];
  };
  return [...row(0), ...row(1), ...row(2), 0, 0, 0, 1];
}
