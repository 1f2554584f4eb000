import type { Vector } from '@twistwright/repertoire';
import { aside, cross, dot, minus, plus, scaled, unit } from './vectors.ts';

/** Triangles of one body, ready for a graphics card. */
export interface Surface {
  /** Three numbers a corner, inches in the figure's frame. */
  readonly places: Float32Array;
  /** Which way the rubber faces, length 1. */
  readonly normals: Float32Array;
  /**
   * Four numbers a corner: which way the bubble runs there, and how far along it the corner is, 0 to 1; below 0 where gloss does not depend
   * on it.
   */
  readonly runs: Float32Array;
  /** How much of the light reaches the corner, 0 to 1: less where bubbles are pressed together. */
  readonly light: Float32Array;
  readonly corners: Uint32Array;
  /** Corners that are there after so many deeds, in the order of the deeds. */
  readonly stages: readonly { readonly deed: number; readonly corners: number }[];
}

/** Corners round a tube, and rings in each round end. */
const around = 24;
const inCap = 6;

/** A point of an outline: across, and up. */
export type Flat = readonly [number, number];

/** Where something lies that has a front: its middle, and three directions of length 1. */
export interface Stand {
  readonly at: Vector;
  readonly right: Vector;
  readonly up: Vector;
  readonly front: Vector;
}

/** Where bubbles are pressed together: joints, and how far from them it is still dark. */
export interface Pressed {
  readonly joints: readonly Vector[];
  readonly radius: number;
}
const nowhere: Pressed = { joints: [], radius: 1 };
/** Light that reaches a twist, and how far from it, in radii, all of it does. */
const atTwist = 0.45;
const lightAgain = 0.95;

const noRun: readonly [number, number, number, number] = [0, 0, 0, -1];

/** Gathers the triangles of a body, bubble by bubble in the order in which they are made. */
export class SurfaceBuilder {
  readonly #places: number[] = [];
  readonly #normals: number[] = [];
  readonly #runs: number[] = [];
  readonly #light: number[] = [];
  readonly #corners: number[] = [];
  readonly #stages: { deed: number; corners: number }[] = [];

  /** All that was added so far is there after so many deeds. */
  stage(deed: number): void {
    const last = this.#stages.at(-1);
    if (last?.deed === deed) last.corners = this.#corners.length;
    else this.#stages.push({ deed, corners: this.#corners.length });
  }

  /** A round tube along a line with round ends; of one point a ball. */
  tube(line: readonly Vector[], radius: number, pressed = nowhere): void {
    const first = line[0];
    if (first === undefined) return;
    if (line.length === 1) {
      this.#ball(first, radius, pressed);
      return;
    }
    const reach = [0];
    for (let k = 1; k < line.length; k++) {
      const step = minus(line[k] as Vector, line[k - 1] as Vector);
      reach.push((reach[k - 1] as number) + Math.sqrt(dot(step, step)));
    }
    const whole = (reach.at(-1) as number) + 2 * radius;
    const isStraight = line.length === 2;
    let along = unit(minus(line[1] as Vector, first), [0, 1, 0]);
    let side = aside(along);
    const start = this.#count();
    let rings = 0;
    line.forEach((at, k) => {
      along = unit(minus(line[Math.min(line.length - 1, k + 1)] as Vector, line[Math.max(0, k - 1)] as Vector), along);
      side = unit(minus(side, scaled(along, dot(side, along))), side);
      const ring = (wide: number, forth: number): void => {
        const share = ((reach[k] as number) + radius * (1 + forth)) / whole;
        this.#ring(at, along, side, wide, forth, radius, isStraight ? [...along, share] : [...along, -1], pressed);
        rings++;
      };
      if (k === 0) for (let c = inCap; c > 0; c--) ring(Math.cos((c / inCap) * (Math.PI / 2)), -Math.sin((c / inCap) * (Math.PI / 2)));
      ring(1, 0);
      if (k === line.length - 1)
        for (let c = 1; c <= inCap; c++) ring(Math.cos((c / inCap) * (Math.PI / 2)), Math.sin((c / inCap) * (Math.PI / 2)));
    });
    this.#skin(start, rings, around);
  }

  #ball(at: Vector, radius: number, pressed: Pressed): void {
    const start = this.#count();
    const rows = 2 * inCap + 4;
    for (let r = 0; r <= rows; r++) {
      const turn = (Math.PI * r) / rows;
      this.#ring(at, [0, 1, 0], [1, 0, 0], Math.sin(turn), -Math.cos(turn), radius, noRun, pressed);
    }
    this.#skin(start, rows + 1, around);
  }

  /** One ring of corners round a line; `wide` and `forth` say how its normals lean. */
  #ring(
    at: Vector,
    along: Vector,
    side: Vector,
    wide: number,
    forth: number,
    radius: number,
    run: readonly [number, number, number, number],
    pressed: Pressed,
  ): void {
    const up = cross(along, side);
    for (let k = 0; k <= around; k++) {
      const angle = (2 * Math.PI * k) / around;
      const [c, s] = [Math.cos(angle) * wide, Math.sin(angle) * wide];
      const normal = plus(plus(scaled(side, c), scaled(up, s)), scaled(along, forth));
      this.#corner(plus(at, scaled(normal, radius)), normal, run, pressed);
    }
  }

  /** A closed ring without ends: the balloon that is bought as one. */
  ring({ at, right, up, front }: Stand, radius: number, thick: number): void {
    const start = this.#count();
    const rings = 40;
    for (let r = 0; r <= rings; r++) {
      const turn = (2 * Math.PI * r) / rings;
      const out = plus(scaled(right, Math.cos(turn)), scaled(up, Math.sin(turn)));
      const along = plus(scaled(right, -Math.sin(turn)), scaled(up, Math.cos(turn)));
      for (let k = 0; k <= around; k++) {
        const angle = (2 * Math.PI * k) / around;
        const normal = plus(scaled(out, Math.cos(angle)), scaled(front, -Math.sin(angle)));
        this.#corner(plus(plus(at, scaled(out, radius)), scaled(normal, thick)), normal, [...along, -1], nowhere);
      }
    }
    this.#skin(start, rings + 1, around);
  }

  /** A cushion with an outline, clockwise as seen from ahead, that can be seen whole from its middle: a heart. `deep` is half its thickness in the middle. */
  cushion({ at, right, up, front }: Stand, outline: readonly Flat[], middle: Flat, deep: number): void {
    const start = this.#count();
    const rows = 16;
    // From the middle of the front over the edge to the middle of the back.
    const place = (r: number, k: number): Vector => {
      const turn = (Math.PI * r) / rows;
      const [x, y] = outline[((k % outline.length) + outline.length) % outline.length] as Flat;
      const out = Math.sin(turn);
      return [middle[0] + (x - middle[0]) * out, middle[1] + (y - middle[1]) * out, deep * Math.cos(turn)];
    };
    for (let r = 0; r <= rows; r++)
      for (let k = 0; k <= outline.length; k++) {
        const [x, y, z] = place(r, k);
        const inner = Math.min(Math.max(r, 0.02), rows - 0.02);
        const round = minus(place(inner, k + 1), place(inner, k - 1));
        const down = minus(place(inner + 0.02, k), place(inner - 0.02, k));
        const flat: Vector = r === 0 ? [0, 0, 1] : r === rows ? [0, 0, -1] : unit(cross(round, down), [0, 0, 1]);
        const outward = dot(flat, [x - middle[0], y - middle[1], z]) < 0 ? -1 : 1;
        const inSpace = (v: Vector): Vector => plus(plus(scaled(right, v[0]), scaled(up, v[1])), scaled(front, v[2]));
        this.#corner(plus(at, inSpace([x, y, z])), scaled(inSpace(flat), outward), noRun, nowhere);
      }
    this.#skin(start, rows + 1, outline.length);
  }

  /** What is got by turning an outline about the upright: a rolled end. From its lowest point to its highest, across never below 0. */
  turned({ at, right, up, front }: Stand, outline: readonly Flat[]): void {
    const start = this.#count();
    outline.forEach(([wide, high], r) => {
      const [before, after] = [outline[Math.max(0, r - 1)] as Flat, outline[Math.min(outline.length - 1, r + 1)] as Flat];
      const lean = unit([after[1] - before[1], before[0] - after[0], 0], [1, 0, 0]);
      for (let k = 0; k <= around; k++) {
        const angle = (2 * Math.PI * k) / around;
        const out = plus(scaled(right, Math.cos(angle)), scaled(front, -Math.sin(angle)));
        const normal = plus(scaled(out, lean[0]), scaled(up, lean[1]));
        this.#corner(plus(at, plus(scaled(out, wide), scaled(up, high))), normal, noRun, nowhere);
      }
    });
    this.#skin(start, outline.length, around);
  }

  /** A bloom: an outline turned about the upright, from its foot to its dimple, whose rim rises to lobes and falls between them. */
  bloom({ at, right, up, front }: Stand, outline: readonly Flat[], lobes: number, rise: number): void {
    const start = this.#count();
    const [widest, highest] = [0, 1].map((axis) => Math.max(...outline.map((point) => point[axis] as number))) as [number, number];
    const place = (r: number, angle: number): Vector => {
      const row = Math.min(outline.length - 1, Math.max(0, r));
      const [below, above] = [outline[Math.floor(row)] as Flat, outline[Math.ceil(row)] as Flat];
      const [wide, high] = [0, 1].map(
        (axis) => (below[axis] as number) + ((above[axis] as number) - (below[axis] as number)) * (row % 1),
      ) as [number, number];
      const lift = rise * Math.max(0, high / highest) ** 2 * (wide / widest);
      return [Math.cos(angle) * wide, high - lift * Math.cos(lobes * angle), -Math.sin(angle) * wide];
    };
    for (let r = 0; r < outline.length; r++)
      for (let k = 0; k <= 2 * around; k++) {
        const angle = (Math.PI * k) / around;
        // At foot and dimple a row is one point; the normal is taken just beside it.
        const row = Math.min(outline.length - 1.02, Math.max(0.02, r));
        const along = minus(place(row + 0.02, angle), place(row - 0.02, angle));
        const round = minus(place(row, angle + 0.02), place(row, angle - 0.02));
        const [x, y, z] = place(r, angle);
        const [nx, ny, nz] = unit(cross(round, along), [0, 1, 0]);
        const inSpace = (a: number, b: number, c: number): Vector => plus(plus(scaled(right, a), scaled(up, b)), scaled(front, c));
        this.#corner(plus(at, inSpace(x, y, z)), inSpace(nx, ny, nz), noRun, nowhere);
      }
    this.#skin(start, outline.length, 2 * around);
  }

  /** A ball that is not equally wide along its three directions. */
  lump({ at, right, up, front }: Stand, [wide, high, deep]: Vector): void {
    const start = this.#count();
    const rows = 14;
    for (let r = 0; r <= rows; r++)
      for (let k = 0; k <= around; k++) {
        const [v, u] = [(Math.PI * r) / rows, (2 * Math.PI * k) / around];
        const [x, y, z] = [Math.sin(v) * Math.cos(u), -Math.cos(v), -Math.sin(v) * Math.sin(u)];
        const place = plus(plus(scaled(right, x * wide), scaled(up, y * high)), scaled(front, z * deep));
        const normal = plus(plus(scaled(right, x / wide), scaled(up, y / high)), scaled(front, z / deep));
        this.#corner(plus(at, place), unit(normal, up), noRun, nowhere);
      }
    this.#skin(start, rows + 1, around);
  }

  /** Rows of points that are spanned by a sheet, all rows equally long. */
  sheet(rows: readonly (readonly { readonly at: Vector; readonly normal: Vector }[])[]): void {
    const start = this.#count();
    for (const row of rows) for (const { at, normal } of row) this.#corner(at, normal, noRun, nowhere);
    this.#skin(start, rows.length, (rows[0]?.length ?? 1) - 1);
  }

  #count(): number {
    return this.#light.length;
  }

  #corner(at: Vector, normal: Vector, run: readonly [number, number, number, number], { joints, radius }: Pressed): void {
    this.#places.push(...at);
    this.#normals.push(...normal);
    this.#runs.push(...run);
    let light = 1;
    for (const joint of joints) {
      const off = minus(at, joint);
      const share = Math.min(1, Math.sqrt(dot(off, off)) / (lightAgain * radius));
      light = Math.min(light, atTwist + (1 - atTwist) * share * share * (3 - 2 * share));
    }
    this.#light.push(light);
  }

  #skin(start: number, rows: number, columns: number): void {
    const row = columns + 1;
    for (let r = 0; r < rows - 1; r++)
      for (let k = 0; k < columns; k++) {
        const a = start + r * row + k;
        this.#corners.push(a, a + 1, a + row, a + 1, a + row + 1, a + row);
      }
  }

  surface(): Surface {
    return {
      places: Float32Array.from(this.#places),
      normals: Float32Array.from(this.#normals),
      runs: Float32Array.from(this.#runs),
      light: Float32Array.from(this.#light),
      corners: Uint32Array.from(this.#corners),
      stages: this.#stages,
    };
  }
}
