import { pathThrough, type Spot, short } from './path.ts';
import type { Rubber } from './rubber.ts';
import { glossRange, type Strand } from './strand.ts';

const stroke = (path: string, colour: string, width: number, more = ''): string =>
  `<path d="${path}" stroke="${colour}" stroke-width="${short(width)}"${more}/>`;

/** Thinner strands than this, in picture units, have gloss but no light of their own: it would not be seen. */
const leastLit = 5.8;

/** Width of the edge on each side, picture units. */
const edge = 1.1;

/**
 * A stretch of a strand in five strokes: edge, body, shade, light, one streak of gloss. `first` and `last` are places on its line; ends that
 * are cut (not the ends of the bubble) are butted so that the next stretch goes on without a seam.
 */
export function stretchOf(strand: Strand, first: number, last: number, rubber: Rubber, finish: string | undefined): string {
  const { line, radius, straight } = strand;
  if (line.length === 1) return ballOf(line[0] as Spot, radius, rubber, finish);
  const end = line.length - 1;
  const [startCut, endCut] = [first > 0, last < end];
  const cut = startCut || endCut ? ' stroke-linecap="butt"' : '';
  const path = (spots: readonly Spot[]): string =>
    straight && spots.length > 1 ? pathThrough([spots[first] as Spot, spots[last] as Spot], 0, 1) : pathThrough(spots, first, last);
  const through = (spots: readonly Spot[]): string => path(lapped(spots, startCut ? first : -1, endCut ? last : -1));
  const rimWidth = 2 * radius;
  const bodyWidth = Math.max(2 * radius - 2 * Math.min(edge, radius * 0.4), 0.6);
  const d = through(line);
  // The edge stops where it is cut, everything else laps over a little, so that no hairline of edge colour is left across the bubble.
  const edged = path(line);
  // A stretch that is cut at one end is butted at both: the round end that it has is set on.
  const ended = cut !== '' && startCut !== endCut;
  const capped = (spots: readonly Spot[], d: string, colour: string, width: number, more = ''): string =>
    stroke(d, colour, width, `${cut}${more}`) + (ended ? cap(line, spots, startCut, width, colour, more) : '');
  const along = (spots: readonly Spot[], colour: string, width: number, more = ''): string =>
    capped(spots, through(spots), colour, width, more);
  let text = capped(line, edged, rubber.rim, rimWidth) + capped(line, d, rubber.body, bodyWidth);
  if (radius < 2.6) return text + along(strand.light, rubber.lit, radius * 0.6);
  if (finish === 'clear' || finish === 'jewel') text += along(line, '#fff', radius * 1.1, ' opacity=".42"');
  text += along(strand.shade, rubber.dim, radius * 0.95);
  if (radius > leastLit) text += along(strand.light, rubber.lit, radius);
  if (finish === 'pearl') text += along(strand.light, '#fff', radius * 0.9, ' opacity=".38"');
  if (finish === 'mirror' || finish === 'metallic') text += along(strand.shade, '#fff', radius * 0.2, ' opacity=".8"');
  return text + glossOf(strand, first, last);
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

/** How far a stretch laps over where it is cut, picture units. */
const lap = 0.8;

/** The line with the points at the two cuts (-1: not cut) moved outwards by the lap. */
function lapped(spots: readonly Spot[], startCut: number, endCut: number): readonly Spot[] {
  if (startCut < 0 && endCut < 0) return spots;
  const beyond = (at: number, inner: number): Spot => {
    const [spot, other] = [spots[at] as Spot, spots[inner] as Spot];
    const [dx, dy] = [spot.x - other.x, spot.y - other.y];
    const size = Math.max(1e-6, Math.sqrt(dx * dx + dy * dy));
    return { x: spot.x + (dx / size) * lap, y: spot.y + (dy / size) * lap };
  };
  return spots.map((spot, i) => (i === startCut ? beyond(i, i + 1) : i === endCut ? beyond(i, i - 1) : spot));
}

/** A round: edge, body, a crescent of shade, a patch of light, a short streak. */
function ballOf({ x, y }: Spot, radius: number, rubber: Rubber, finish: string | undefined): string {
  const disc = (r: number, fill: string, dx = 0, more = ''): string =>
    `<circle cx="${short(x + dx * radius)}" cy="${short(y + dx * 1.15 * radius)}" r="${short(r)}" fill="${fill}"${more}/>`;
  const arc = (r: number, [ax, ay]: readonly [number, number], [bx, by]: readonly [number, number]): string =>
    `M${short(x + ax * r)} ${short(y + ay * r)}A${short(r)} ${short(r)} 0 0 1 ${short(x + bx * r)} ${short(y + by * r)}`;
  let text = disc(radius, rubber.rim) + disc(radius - Math.min(edge, radius * 0.3), rubber.body);
  if (finish === 'clear' || finish === 'jewel') text += disc(radius * 0.6, '#fff', 0, ' opacity=".4"');
  text += stroke(arc(radius * 0.7, [0.98, -0.2], [-0.2, 0.98]), rubber.deep, radius * 0.42, ' opacity=".26"');
  text += disc(radius * 0.42, rubber.lite, -0.26, ` opacity="${finish === 'pearl' ? '.65' : '.42'}"`);
  return text + stroke(arc(radius * 0.62, [-0.94, -0.34], [-0.45, -0.89]), '#fff', radius * 0.2, ' opacity=".9"');
}

function glossOf(strand: Strand, first: number, last: number): string {
  const { line, radius, straight, gloss } = strand;
  const white = (path: string): string => stroke(path, '#fff', radius * 0.3, ' opacity=".9"');
  const end = line.length - 1;
  if (straight) return straightGloss(strand, first, last);
  const range = glossRange(strand);
  if (range === undefined) return '';
  const from = Math.max(first, range[0] === 0 ? 1 : range[0]);
  const to = Math.min(last, range[1] === end ? end - 1 : range[1]);
  return to > from ? white(pathThrough(gloss, from, to)) : '';
}

/** From 14 to 58 hundredths of the bubble, counted from the end nearer the light; the part of it that this stretch shows. */
function straightGloss({ line, radius, gloss }: Strand, first: number, last: number): string {
  const end = line.length - 1;
  const [start, stop] = [gloss[0] as Spot, gloss[end] as Spot];
  const fromStart = start.x * 0.62 + start.y * 0.78 <= stop.x * 0.62 + stop.y * 0.78;
  const wanted = fromStart ? [0.12, 0.56] : [0.44, 0.88];
  // The gloss is the middle line moved towards the light, so also along itself: where the stretch is cut it is cut at the same place.
  const [lineStart, lineStop] = [line[0] as Spot, line[end] as Spot];
  const [dx, dy] = [lineStop.x - lineStart.x, lineStop.y - lineStart.y];
  const along = ((start.x - lineStart.x) * dx + (start.y - lineStart.y) * dy) / Math.max(dx * dx + dy * dy, 1e-6);
  const from = Math.max(wanted[0] as number, first === 0 ? 0 : first / end - along);
  const to = Math.min(wanted[1] as number, last === end ? 1 : last / end - along);
  if (to - from < 0.02) return '';
  const at = (share: number): Spot => ({ x: start.x + (stop.x - start.x) * share, y: start.y + (stop.y - start.y) * share });
  return stroke(pathThrough([at(from), at(to)], 0, 1), '#fff', radius * 0.3, ' opacity=".9"');
}

/** The darkened twist. */
export const twist = (x: number, y: number, radius: number, rubber: Rubber): string =>
  `<ellipse cx="${short(x)}" cy="${short(y)}" rx="${short(radius)}" ry="${short(radius * 0.8)}" fill="${rubber.deep}" opacity=".6"/>`;

/** The rolled end of the balloon at its knot; `angle` in degrees is where it points. */
export function nozzle(x: number, y: number, angle: number, scale: number, rubber: Rubber): string {
  return `<path transform="translate(${short(x)} ${short(y)})rotate(${short(angle + 180)})scale(${short(scale)})" d="M2 0L-7-5Q-9 0-7 5Z" fill="${rubber.body}" stroke="${rubber.rim}" stroke-width="1.4"/>`;
}
