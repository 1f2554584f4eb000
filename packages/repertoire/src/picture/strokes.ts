import { pathThrough, type Spot, short } from './path.ts';
import { between, type Rubber, type Tones } from './rubber.ts';
import { glossRange, lightFrom, movedToLight, type Strand } from './strand.ts';

const stroke = (path: string, colour: string, width: number, more = ''): string =>
  `<path d="${path}" stroke="${colour}" stroke-width="${short(width)}"${more}/>`;

/** Thinner strands than this, in picture units, have gloss but no light of their own: it would not be seen. */
const leastLit = 5.8;

/** A strand thinner than this, in picture units, is drawn by its edge alone, which shows on paper whatever its colour. */
const threadRadius = 1.2;

/** Width of the edge on each side, picture units. */
const edge = 1.1;

/** One tone of the rubber: how far its stroke lies towards the light and how wide it is, in radii. Each lies within the one before. */
interface Layer {
  readonly tone: keyof Tones;
  readonly at: number;
  readonly width: number;
}
const layers: readonly Layer[] = [
  { tone: 'core', at: 0.07, width: 0.85 },
  { tone: 'dim', at: 0.15, width: 0.75 },
  { tone: 'body', at: 0.23, width: 0.63 },
  { tone: 'half', at: 0.3, width: 0.47 },
  { tone: 'lit', at: 0.35, width: 0.32 },
];
/** What of it is drawn where the bubble is thin, or thinner still. */
const thinLayers: readonly Layer[] = [
  { tone: 'body', at: 0.16, width: 0.74 },
  { tone: 'lit', at: 0.3, width: 0.4 },
];
const finestLayers: readonly Layer[] = [{ tone: 'lit', at: 0.25, width: 0.35 }];
const glossLayer = { at: 0.46, width: 0.15 } as const;

/** On a thicker bubble than this one would see the steps from tone to tone, so there are twice as many. */
const steppedUpTo = 12;

/** How a bubble is painted: the finish of its balloon, and whether the picture is so small that fewer tones do. */
export interface Paint {
  readonly finish?: string;
  readonly small: boolean;
}

interface Coat {
  readonly colour: string;
  readonly at: number;
  readonly width: number;
}

/** What is drawn inside the edge, each within the one before. The first fills it all. */
function coatsOf(radius: number, { tones }: Rubber, small: boolean): readonly [Coat, ...Coat[]] {
  const ground = (tone: keyof Tones): Coat => ({
    colour: tones[tone],
    at: 0,
    width: Math.max(1 - Math.min(edge / radius, 0.4), 0.3 / radius),
  });
  const coats = (used: readonly Layer[]): readonly Coat[] => used.map(({ tone, at, width }) => ({ colour: tones[tone], at, width }));
  if (radius < 2.6) return [ground('body'), ...coats(finestLayers)];
  if (radius < leastLit || small) return [ground('dim'), ...coats(thinLayers)];
  const first = ground('back');
  if (radius < steppedUpTo) return [first, ...coats(layers)];
  let before = first;
  const fine = coats(layers).flatMap((coat) => {
    const middle = { colour: between(before.colour, coat.colour), at: (before.at + coat.at) / 2, width: (before.width + coat.width) / 2 };
    before = coat;
    return [middle, coat];
  });
  return [first, ...fine];
}

/**
 * A stretch of a strand: edge, tones from the shade to the light, one streak of gloss. `first` and `last` are places on its line; ends that
 * are cut (not the ends of the bubble) are butted so that the next stretch goes on without a seam.
 */
export function stretchOf(strand: Strand, first: number, last: number, rubber: Rubber, paint: Paint): string {
  const { finish, small } = paint;
  const { line, radius, straight } = strand;
  if (line.length === 1) return ballOf(line[0] as Spot, radius, rubber, paint);
  const end = line.length - 1;
  const [startCut, endCut] = [first > 0, last < end];
  const cut = startCut || endCut ? ' stroke-linecap="butt"' : '';
  // A stretch that is cut at one end is butted at both: the round end that it has is set on.
  const ended = cut !== '' && startCut !== endCut;
  const path = (spots: readonly Spot[]): string =>
    straight && spots.length > 1 ? pathThrough([spots[first] as Spot, spots[last] as Spot], 0, 1) : pathThrough(spots, first, last);
  let laps = 0;
  // Each stroke laps over a little more than the one below, so that no hairline of that is left across the bubble.
  const along = (towards: number, colour: string, width: number, more = ''): string => {
    const spots = towards === 0 ? line : movedToLight(strand, towards);
    const d = path(lapped(spots, startCut ? first : -1, endCut ? last : -1, lap * laps++));
    return stroke(d, colour, width, `${cut}${more}`) + (ended ? cap(line, spots, startCut, width, colour, more) : '');
  };
  const { tones } = rubber;
  if (radius < threadRadius) return along(0, rubber.rim, Math.max(2 * radius, 1.2));
  let text = along(0, rubber.rim, 2 * radius);
  const seeThrough = finish === 'clear' || finish === 'jewel';
  for (const { colour, at, width } of coatsOf(radius, rubber, small)) text += along(at, colour, 2 * width * radius);
  if (radius < 2.6) return text;
  if (seeThrough) text += along(0, '#fff', radius * 1.1, ' opacity=".42"');
  if (finish === 'pearl') text += along(0.31, '#fff', radius * 0.9, ' opacity=".38"');
  if (finish === 'mirror' || finish === 'metallic') text += along(-0.42, '#fff', radius * 0.2, ' opacity=".8"');
  return text + glossOf(strand, first, last, tones.gloss);
}

/** The outer half of a round end, `width` across: at the last spot if the start is cut, else at the first. */
function cap(line: readonly Spot[], spots: readonly Spot[], startCut: boolean, width: number, colour: string, more: string): string {
  const end = line.length - 1;
  const [at, inner] = startCut ? [end, end - 1] : [0, 1];
  const { x, y } = spots[at] as Spot;
  const [tip, before] = [line[at] as Spot, line[inner] as Spot];
  const [dx, dy] = [tip.x - before.x, tip.y - before.y];
  const half = width / 2 / Math.max(1e-6, Math.sqrt(dx * dx + dy * dy));
  const [nx, ny] = [-dy * half, dx * half];
  return `<path d="M${short(x - nx)} ${short(y - ny)}A${short(width / 2)} ${short(width / 2)} 0 0 1 ${short(x + nx)} ${short(y + ny)}" fill="${colour}"${more}/>`;
}

/** How far the strokes of a stretch lap over where it is cut, each more than the one below, picture units. */
const lap = 0.2;

/** The line with the points at the two cuts (-1: not cut) moved outwards. */
function lapped(spots: readonly Spot[], startCut: number, endCut: number, by: number): readonly Spot[] {
  if ((startCut < 0 && endCut < 0) || by === 0) return spots;
  const beyond = (at: number, inner: number): Spot => {
    const [spot, other] = [spots[at] as Spot, spots[inner] as Spot];
    const [dx, dy] = [spot.x - other.x, spot.y - other.y];
    const size = Math.max(1e-6, Math.sqrt(dx * dx + dy * dy));
    return { x: spot.x + (dx / size) * by, y: spot.y + (dy / size) * by };
  };
  return spots.map((spot, i) => (i === startCut ? beyond(i, i + 1) : i === endCut ? beyond(i, i - 1) : spot));
}

/** A round: edge, tones from the shade to the light, a short streak of gloss. */
function ballOf({ x, y }: Spot, radius: number, rubber: Rubber, { finish, small }: Paint): string {
  const disc = (r: number, fill: string, towards = 0, more = ''): string =>
    `<circle cx="${short(x + towards * radius * lightFrom.x)}" cy="${short(y + towards * radius * lightFrom.y)}" r="${short(r)}" fill="${fill}"${more}/>`;
  const arc = (r: number, [ax, ay]: readonly [number, number], [bx, by]: readonly [number, number]): string =>
    `M${short(x + ax * r)} ${short(y + ay * r)}A${short(r)} ${short(r)} 0 0 1 ${short(x + bx * r)} ${short(y + by * r)}`;
  const { tones } = rubber;
  let text = disc(radius, rubber.rim);
  for (const { colour, at, width } of coatsOf(radius, rubber, small)) text += disc(width * radius, colour, at);
  if (finish === 'clear' || finish === 'jewel') text += disc(radius * 0.6, '#fff', 0, ' opacity=".4"');
  if (finish === 'pearl') text += disc(radius * 0.42, '#fff', 0.4, ' opacity=".45"');
  return text + stroke(arc(radius * 0.64, [-0.95, -0.31], [-0.45, -0.89]), tones.gloss, radius * 0.17);
}

/** A streak shorter than this, in radii, is straight. */
const shortGloss = 3;

function glossOf(strand: Strand, first: number, last: number, colour: string): string {
  const { line, radius, straight } = strand;
  const end = line.length - 1;
  // The tones of this stretch lap over what its neighbours have of the gloss, so it laps over that in turn.
  const gloss = lapped(movedToLight(strand, glossLayer.at), first > 0 ? first : -1, last < end ? last : -1, lap * (2 * layers.length + 2));
  const white = (path: string): string => stroke(path, colour, 2 * glossLayer.width * radius);
  if (straight) {
    const found = straightGloss(strand, gloss, first, last);
    return found === undefined ? '' : white(pathThrough(found, 0, 1));
  }
  const range = glossRange(strand);
  if (range === undefined) return '';
  const from = Math.max(first, range[0] === 0 ? 1 : range[0]);
  const to = Math.min(last, range[1] === end ? end - 1 : range[1]);
  if (to <= from) return '';
  const [start, stop] = [gloss[from] as Spot, gloss[to] as Spot];
  const chord = Math.sqrt((stop.x - start.x) * (stop.x - start.x) + (stop.y - start.y) * (stop.y - start.y));
  return white(chord < shortGloss * radius ? pathThrough([start, stop], 0, 1) : pathThrough(gloss, from, to));
}

/** From 12 to 56 hundredths of the bubble, counted from the end nearer the light; the part of it that this stretch shows. */
function straightGloss({ line }: Strand, gloss: readonly Spot[], first: number, last: number): readonly Spot[] | undefined {
  const end = line.length - 1;
  const [start, stop] = [gloss[0] as Spot, gloss[end] as Spot];
  const fromStart = start.x * 0.62 + start.y * 0.78 <= stop.x * 0.62 + stop.y * 0.78;
  const wanted = fromStart ? [0.12, 0.56] : [0.44, 0.88];
  // The gloss is the middle line moved towards the light, so also along itself: where the stretch is cut it is cut at the same place.
  const [lineStart, lineStop] = [line[0] as Spot, line[end] as Spot];
  const [dx, dy] = [lineStop.x - lineStart.x, lineStop.y - lineStart.y];
  const along = ((start.x - lineStart.x) * dx + (start.y - lineStart.y) * dy) / Math.max(dx * dx + dy * dy, 1e-6);
  const over = (2 * layers.length * lap) / Math.max(Math.sqrt(dx * dx + dy * dy), 1);
  const from = Math.max(wanted[0] as number, first === 0 ? 0 : first / end - along - over);
  const to = Math.min(wanted[1] as number, last === end ? 1 : last / end - along + over);
  if (to - from < 0.02) return undefined;
  const at = (share: number): Spot => ({ x: start.x + (stop.x - start.x) * share, y: start.y + (stop.y - start.y) * share });
  return [at(from), at(to)];
}

/** The darkened twist. */
export const twist = (x: number, y: number, radius: number, rubber: Rubber): string =>
  `<ellipse cx="${short(x)}" cy="${short(y)}" rx="${short(radius)}" ry="${short(radius * 0.8)}" fill="${rubber.tones.core}"/>`;

/** The rolled end of the balloon at its knot; `angle` in degrees is where it points. */
export function nozzle(x: number, y: number, angle: number, scale: number, rubber: Rubber): string {
  return `<path transform="translate(${short(x)} ${short(y)})rotate(${short(angle + 180)})scale(${short(scale)})" d="M2 0L-7-5Q-9 0-7 5Z" fill="${rubber.body}" stroke="${rubber.rim}" stroke-width="1.4"/>`;
}
