import type { Finishing, Recipe } from '../recipe.ts';
import { axisOf } from '../shape/axis.ts';
import { type Shape, type ShapeBubble, shapeOf } from '../shape/shape-of.ts';
import { minus, plus, times, unit, type Vector } from '../shape/vector.ts';
import { bestView, type Camera, cameraOf, type Seen, seen, type View } from './camera.ts';
import { type Mark, marksOf } from './faces.ts';
import { glyphAt, type glyphs } from './glyphs.ts';
import { drawnMark } from './marks.ts';
import { type Cover, covering, type Drawn, paintersOrder } from './order.ts';
import { pathThrough, short } from './path.ts';
import { pale, type Rubber, rubberOf } from './rubber.ts';
import { type Strand, strandOf } from './strand.ts';
import { nozzle, stretchOf, twist } from './strokes.ts';

export interface PictureOptions {
  /** Width in CSS pixels; the height is 1.1 times as much. Without it the picture fills what it is put into. */
  readonly size?: number;
  readonly view?: View;
  /** Only what is there after so many deeds (moves with repeats written out), the rest as a faint shadow; place and size are those of the whole figure. */
  readonly upToMove?: number;
  /** What was there after so many deeds is drawn pale, so that what is new stands out; left out, nothing is. */
  readonly newAfterMove?: number;
  /** It is drawn so small that fewer tones do, which takes a third of the text. */
  readonly small?: boolean;
  /** The ground it will lie on; left out, light. */
  readonly ground?: 'light' | 'dark';
  /** What the picture shows, for people who do not see it. Without it the picture is hidden from them. */
  readonly title?: string;
}

/** The colour of every role: a plain name or `#rrggbb`. */
export type RoleColours = Readonly<Record<string, string>>;

const boxWidth = 200;
const boxHeight = 220;
/** The line that every figure stands on. */
const floorLine = 212;
const margin = 8;
/** What comes as near to the floor as this, inches, stands on it. */
const touchesFloor = 0.3;
/** How much of a round shadow is seen when the eye is level with the floor. */
const leastFlat = 0.04;
/** A small figure is not blown up beyond this, picture units an inch. */
const largestScale = 24;
/** Bubbles thinner than this, picture units, are drawn whole even where they are woven: nobody sees it, and the picture stays small. */
const thinStrand = 6;
/** With more bubbles than this each is put in order as a whole, so that a recipe of thousands is drawn too. */
const mostStretched = 260;
/** How many stretches from its twist a loop is squeezed by what it meets there. */
const nearTwist = 2;
/** Grey that shows faintly on light and on dark. */
const ghostInk = '#787d82';
const missingColour: Rubber = rubberOf('sky') as Rubber;

/**
 * The figure as a flat SVG picture of 200 x 220 units, standing on the line y = 212, light from the upper left. Text only, no
 * browser needed; safe to set into a page (no ids, no styles, no scripts).
 * @example pictureOf({ pieces: [{ name: 'dog', size: '260', role: 'body', count: 1, run: [{ kind: 'bubble', length: 3 }] }], finishing: [] }, { body: 'red' }).startsWith('<svg') // -> true
 */
export function pictureOf(recipe: Recipe, colours: RoleColours, options: PictureOptions = {}): string {
  return pictureOfShape(shapeOf(recipe), recipe.finishing, colours, options);
}

/** `pictureOf` for a shape that is known already: many steps or colourways of one figure are solved once. */
export function pictureOfShape(shape: Shape, finishing: readonly Finishing[], colours: RoleColours, options: PictureOptions = {}): string {
  const { size, title } = options;
  const room = size === undefined ? '' : ` width="${short(size)}" height="${short((size * boxHeight) / boxWidth)}"`;
  const said = title === undefined ? ' aria-hidden="true"' : ` role="img" aria-label="${escaped(title)}"`;
  return (
    `<svg xmlns="http://www.w3.org/2000/svg" viewBox="0 0 ${boxWidth} ${boxHeight}"${room}${said}>` +
    `<g fill="none" stroke-linecap="round" stroke-linejoin="round">${new Drawing(shape, finishing, colours, options).text()}</g></svg>`
  );
}

const escaped = (text: string): string =>
  text.replace(/&/gu, '&amp;').replace(/</gu, '&lt;').replace(/>/gu, '&gt;').replace(/"/gu, '&quot;');

interface Thing extends Drawn {
  /** Stretch of a strand, or something drawn in one go. */
  readonly stretch?: { readonly first: number; readonly last: number };
  readonly draw?: () => string;
}

class Drawing {
  readonly #shape: Shape;
  readonly #colours: RoleColours;
  readonly #camera: Camera;
  readonly #finishing: readonly Finishing[];
  readonly #upTo: number;
  readonly #dark: boolean;
  readonly #small: boolean;
  readonly #newAfter: number;
  readonly #scale: number;
  readonly #shift: { readonly x: number; readonly y: number };
  readonly #strands = new Map<number, Strand>();
  readonly #things: Thing[] = [];
  /** The bubble that was drawn last, whole, with nothing drawn after it. */
  #fresh: number | undefined;

  constructor(shape: Shape, finishing: readonly Finishing[], colours: RoleColours, options: PictureOptions) {
    this.#shape = shape;
    this.#finishing = finishing;
    this.#colours = colours;
    this.#camera = cameraOf(options.view ?? bestView(shape));
    this.#dark = options.ground === 'dark';
    this.#small = options.small === true;
    this.#newAfter = options.newAfterMove ?? 0;
    this.#upTo = options.upToMove ?? Number.POSITIVE_INFINITY;
    ({ scale: this.#scale, shift: this.#shift } = pictureFrame(shape, this.#camera));
  }

  text(): string {
    this.#shape.bubbles.forEach((bubble, index) => {
      if (bubble.line.length > 0 && bubble.deed <= this.#upTo) this.#bubble(bubble, index);
    });
    const ghost = this.#ghost();
    this.#twists();
    this.#nozzles();
    if (this.#upTo >= this.#shape.deeds) for (const mark of marksOf(this.#finishing, this.#shape)) this.#mark(mark);
    return this.#shadow() + ghost + this.#inOrder();
  }

  /** On the floor, under every bubble that touches it. */
  #shadow(): string {
    const there = this.#shape.bubbles.filter((bubble) => bubble.line.length > 0 && bubble.deed <= this.#upTo);
    const all = this.#shape.bubbles.flatMap((bubble) => axisOf(bubble).map(([, y]) => y - bubble.radius));
    const floor = Math.min(...all);
    const flat = Math.max(leastFlat, this.#camera.up[0] * this.#camera.up[0] + this.#camera.up[2] * this.#camera.up[2]);
    const paths = there.flatMap((bubble) => {
      const feet = axisOf(bubble).filter(([, y]) => y - bubble.radius < floor + touchesFloor);
      const spots = feet.map(([x, , z]) => this.#seen([x, floor, z]));
      const [left, right] = [Math.min(...spots.map(({ x }) => x)), Math.max(...spots.map(({ x }) => x))];
      const radius = bubble.radius * this.#scale;
      const lowest = Math.max(...spots.map(({ y }) => y));
      const across = Math.min(Math.max(2.2, 0.75 * radius * Math.sqrt(flat)), boxHeight - lowest);
      return spots.length === 0
        ? []
        : right - left < radius
          ? [
              `<ellipse cx="${short((left + right) / 2)}" cy="${short((spots[0] as Seen).y)}" rx="${short((right - left) / 2 + 0.9 * radius)}" ry="${short(across)}"/>`,
            ]
          : [`<path d="${pathThrough(spots, 0, spots.length - 1)}" stroke="#000" stroke-width="${short(2 * across)}" fill="none"/>`];
    });
    return paths.length === 0 ? '' : `<g fill="#000" opacity="${this.#dark ? '.5' : '.15'}">${paths.join('')}</g>`;
  }

  /** What is still to be made, as a faint shadow behind what is there. */
  #ghost(): string {
    const later = this.#shape.bubbles.filter((bubble) => bubble.line.length > 0 && bubble.deed > this.#upTo);
    if (later.length === 0) return '';
    const paths = later.map((bubble) => {
      const { line, radius, straight } = strandOf(bubble, this.#camera, this.#place, this.#scale);
      const ends = straight && line.length > 1 ? [line[0] as Seen, line.at(-1) as Seen] : line;
      return `<path d="${pathThrough(ends, 0, ends.length - 1)}" stroke-width="${short(2 * radius)}"/>`;
    });
    return `<g stroke="${ghostInk}" opacity=".13">${paths.join('')}</g>`;
  }

  #place = (point: Seen): Seen => ({
    x: point.x * this.#scale + this.#shift.x,
    y: point.y * this.#scale + this.#shift.y,
    near: point.near * this.#scale,
  });

  #seen(point: Vector): Seen {
    return this.#place(seen(point, this.#camera));
  }

  #rubber({ role, deed }: Pick<ShapeBubble, 'role' | 'deed'>): Rubber {
    const colour = this.#colours[role];
    const named = (colour === undefined ? undefined : rubberOf(colour)) ?? missingColour;
    const rubber = deed > this.#newAfter ? named : pale(named, this.#dark ? 'dark' : 'light');
    return this.#dark ? { ...rubber, rim: rubber.rimOnDark } : rubber;
  }

  #bubble(bubble: ShapeBubble, index: number): void {
    const { form } = bubble;
    if (form === 'tulip' || form === 'heart' || form === 'flower' || form === 'donut') {
      this.#glyph(bubble, index, form);
      return;
    }
    const strand = strandOf(bubble, this.#camera, this.#place, this.#scale);
    this.#strands.set(index, strand);
    const { line, radius } = strand;
    const last = line.length - 1;
    if (last <= 0) {
      this.#things.push({ strand: index, place: 0, covers: [{ ...(line[0] as Seen), radius }], stretch: { first: 0, last: 0 } });
      return;
    }
    if (radius < thinStrand || this.#shape.bubbles.length > mostStretched) {
      const covers = line.slice(1).flatMap((to, k) => coversOf(line[k] as Seen, to, radius));
      this.#things.push({ strand: index, place: 0, covers, stretch: { first: 0, last } });
      return;
    }
    for (let k = 0; k < last; k++) {
      const [from, to] = [line[k] as Seen, line[k + 1] as Seen];
      this.#things.push({
        strand: index,
        place: k,
        ...(bubble.from === bubble.to && (k < nearTwist || k >= last - nearTwist) ? { twist: bubble.from } : {}),
        covers: coversOf(from, to, radius),
        stretch: { first: k, last: k + 1 },
      });
    }
  }

  #glyph(bubble: ShapeBubble, index: number, form: keyof typeof glyphs): void {
    const { line } = bubble;
    const [foot, top] = form === 'tulip' ? [line.at(-1) as Vector, line[0] as Vector] : [line[0] as Vector, line.at(-1) as Vector];
    const [low, high] = [this.#seen(foot), this.#seen(top)];
    const [dx, dy] = [high.x - low.x, high.y - low.y];
    const span = Math.sqrt(dx * dx + dy * dy);
    const size = 2 * bubble.radius * this.#scale * (form === 'tulip' ? 1.12 : 1);
    const upright = span < 0.5 * size || form === 'flower' || form === 'donut';
    const middle = { x: (low.x + high.x) / 2, y: (low.y + high.y) / 2, near: (low.near + high.near) / 2 };
    const degrees = upright ? 0 : (Math.atan2(dx, -dy) * 180) / Math.PI;
    this.#things.push({
      strand: index,
      place: 0,
      covers: [{ ...middle, radius: size * 0.45 }],
      draw: () => glyphAt(form, middle.x, middle.y, size, degrees, this.#rubber(bubble)),
    });
  }

  /** Every joint where bubbles meet is dark, where it can be seen. */
  #twists(): void {
    this.#shape.joints.forEach(({ at }, joint) => {
      const meeting = this.#shape.bubbles.filter(
        (bubble) =>
          bubble.line.length > 0 && bubble.deed <= this.#upTo && (bubble.from === joint || bubble.to === joint) && bubble.form !== 'tail',
      );
      const ends = meeting.reduce((sum, bubble) => sum + (bubble.from === bubble.to ? 2 : 1), 0);
      const first = meeting[0];
      if (first === undefined || ends < 3) return;
      const radius = Math.min(...meeting.map((bubble) => bubble.radius)) * this.#scale * 0.22;
      const spot = this.#seen(at);
      const rubber = this.#rubber(first);
      this.#things.push({
        strand: -1 - joint,
        place: 0,
        minor: true,
        covers: [{ ...spot, near: spot.near - 2 * radius, radius }],
        draw: () => twist(spot.x, spot.y, radius, rubber),
      });
    });
  }

  /** The rolled ends of balloons whose knot is not hidden in a joint. */
  #nozzles(): void {
    for (const { at, bubble: index } of this.#shape.knots) {
      const bubble = this.#shape.bubbles[index] as ShapeBubble;
      if (bubble.line.length < 2 || bubble.deed > this.#upTo || bubble.form === 'tulip' || bubble.form === 'flat') continue;
      if (!isFreeKnot(this.#shape, index)) continue;
      const [knot, inner] = [this.#seen(at), this.#seen(bubble.line[1] as Vector)];
      const [dx, dy] = [knot.x - inner.x, knot.y - inner.y];
      const size = Math.sqrt(dx * dx + dy * dy);
      if (size < 0.35 * bubble.radius * this.#scale && bubble.form !== 'round') continue;
      const scale = Math.min(1.2, (bubble.form === 'round' ? 0.8 : 1) * (this.#scale / 13));
      const angle = (Math.atan2(dy, dx) * 180) / Math.PI;
      this.#things.push({
        strand: -1_000_000 - index,
        place: 0,
        minor: true,
        covers: [{ ...knot, near: knot.near - bubble.radius * this.#scale, radius: 3 }],
        draw: () => nozzle(knot.x, knot.y, angle, scale, this.#rubber(bubble)),
      });
    }
  }

  #mark(mark: Mark): void {
    if (!this.#strands.has(mark.bubble)) return;
    const bubble = this.#shape.bubbles[mark.bubble] as ShapeBubble;
    const text = drawnMark(mark, this.#camera, (point) => this.#seen(point), this.#scale, this.#rubber(bubble), bubble.radius);
    if (text === undefined) return;
    const spot = this.#seen(mark.at);
    this.#things.push({
      strand: -2_000_000 - this.#things.length,
      place: 0,
      on: mark.bubble,
      minor: true,
      covers: [{ ...spot, radius: mark.kind === 'stripe' ? bubble.radius * this.#scale * 0.9 : (mark.inches * this.#scale) / 2 }],
      draw: () => text,
    });
  }

  /**
   * A bubble is drawn whole when its first stretch is due; a stretch that is due later, because something lies between, is drawn again on
   * top. So nothing is ever cut where it can be seen.
   */
  #inOrder(): string {
    let text = '';
    const whole = new Set<number>();
    let open: { strand: number; first: number; last: number } | undefined;
    const since: number[] = [];
    const close = (): void => {
      if (open !== undefined) text += this.#stretch(open.strand, open.first, open.last);
      open = undefined;
    };
    for (const index of paintersOrder(this.#things)) {
      since.push(index);
      const { strand, stretch, draw } = this.#things[index] as Thing;
      if (stretch === undefined) {
        close();
        text += draw?.() ?? '';
      } else if (!whole.has(strand)) {
        close();
        whole.add(strand);
        text += this.#stretch(strand, 0, (this.#strands.get(strand) as Strand).line.length - 1);
        open = undefined;
        this.#fresh = strand;
      } else if (this.#fresh === strand || !this.#hidden(index, since)) continue;
      else if (open?.strand === strand && open.last === stretch.first) open.last = stretch.last;
      else if (open?.strand === strand && open.first === stretch.last) open.first = stretch.first;
      else {
        close();
        open = { strand, ...stretch };
      }
      if (strand !== this.#fresh) this.#fresh = undefined;
    }
    close();
    return text;
  }

  /** Whether something of another bubble was drawn over this stretch since its bubble was drawn whole. */
  #hidden(index: number, since: readonly number[]): boolean {
    const thing = this.#things[index] as Thing;
    const from = since.findIndex((other) => (this.#things[other] as Thing).strand === thing.strand);
    return since.slice(from + 1).some((other) => {
      const one = this.#things[other] as Thing;
      return one.strand !== thing.strand && one.on !== thing.strand && covering(one, thing);
    });
  }

  #stretch(strand: number, first: number, last: number): string {
    const bubble = this.#shape.bubbles[strand] as ShapeBubble;
    return stretchOf(this.#strands.get(strand) as Strand, first, last, this.#rubber(bubble), {
      ...(bubble.finish === undefined ? {} : { finish: bubble.finish }),
      small: this.#small,
    });
  }
}

/** Room for the rolled end of a balloon, inches. */
const nozzleInches = 0.65;

/** Whether the balloon that starts with this bubble has a knot that hangs free. */
function isFreeKnot(shape: Shape, index: number): boolean {
  const bubble = shape.bubbles[index] as ShapeBubble;
  if (bubble.from === bubble.to) return false;
  return !shape.bubbles.some((other, i) => i !== index && (other.from === bubble.from || other.to === bubble.from));
}

/** Round spots along a stretch, near enough together that nothing slips between. */
function coversOf(from: Seen, to: Seen, radius: number): readonly Cover[] {
  const [dx, dy, dz] = [to.x - from.x, to.y - from.y, to.near - from.near];
  const count = Math.min(6, Math.max(1, Math.ceil(Math.sqrt(dx * dx + dy * dy + dz * dz) / (0.8 * radius))));
  return Array.from({ length: count + 1 }, (_, k) => ({
    x: from.x + (dx * k) / count,
    y: from.y + (dy * k) / count,
    near: from.near + (dz * k) / count,
    radius,
  }));
}

/** How a figure lies in its picture of 200 x 220 units: units an inch, and where the figure's origin is. */
export interface PictureFrame {
  readonly scale: number;
  readonly shift: { readonly x: number; readonly y: number };
}

/**
 * Where a flat picture puts a figure, for whoever draws the same figure some other way in the same place. A point is drawn at `shift` plus
 * `scale` times what is seen of it.
 * @example pictureFrame(shapeOf({ pieces: [], finishing: [] }), cameraOf('front')).shift.y // -> 212
 */
export function pictureFrame(shape: Shape, camera: Camera): PictureFrame {
  const extent = extentOf(shape, camera);
  const room = { width: boxWidth - 2 * margin, height: floorLine - margin };
  const scale = Math.min(largestScale, room.width / extent.width, room.height / extent.height);
  return { scale, shift: { x: boxWidth / 2 - extent.middle * scale, y: floorLine - extent.bottom * scale } };
}

interface Extent {
  readonly width: number;
  readonly height: number;
  readonly middle: number;
  readonly bottom: number;
}

/** The room that a figure takes as seen, in inches; at least an inch. */
function extentOf(shape: Shape, camera: Camera): Extent {
  let [left, right, top, bottom] = [Number.POSITIVE_INFINITY, Number.NEGATIVE_INFINITY, Number.POSITIVE_INFINITY, Number.NEGATIVE_INFINITY];
  for (const { line, radius, form } of shape.bubbles) {
    const inner = line.length > 2 && line.length <= 4 && form !== 'tulip' ? line.slice(1, -1) : line;
    for (const point of inner) {
      const { x, y } = seen(point, camera);
      left = Math.min(left, x - radius);
      right = Math.max(right, x + radius);
      top = Math.min(top, y - radius);
      bottom = Math.max(bottom, y + radius);
    }
  }
  for (const { at, bubble: index } of shape.knots) {
    const inner = shape.bubbles[index]?.line[1];
    if (inner === undefined || !isFreeKnot(shape, index)) continue;
    const outwards = unit(minus(at, inner)) ?? [0, 0, 0];
    const { x, y } = seen(plus(at, times(outwards, nozzleInches)), camera);
    left = Math.min(left, x);
    right = Math.max(right, x);
    top = Math.min(top, y);
    bottom = Math.max(bottom, y);
  }
  if (left > right) return { width: 1, height: 1, middle: 0, bottom: 0 };
  return { width: Math.max(1, right - left), height: Math.max(1, bottom - top), middle: (left + right) / 2, bottom };
}
