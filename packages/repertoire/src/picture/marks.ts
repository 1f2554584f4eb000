import { across, cross, dot, plus, times, turned, type Vector } from '../shape/vector.ts';
import type { Camera, Seen } from './camera.ts';
import type { Mark } from './faces.ts';
import { pathThrough, short } from './path.ts';
import { type Rubber, showsInk, takesInk } from './rubber.ts';

const ink = '#15171b';

/** How much of a mark has to face the viewer before it is drawn: the cosine of the angle. */
const leastSeen = 0.12;

/** A mark as it shows on the rubber, flattened where the rubber turns away; undefined when it is on the far side. */
export function drawnMark(
  mark: Mark,
  camera: Camera,
  place: (point: Vector) => Seen,
  scale: number,
  rubber: Rubber,
  radius: number,
): string | undefined {
  if (mark.kind === 'stripe') return stripe(mark, camera, place, scale, radius, takesInk(rubber) ? ink : '#fff');
  const facing = dot(mark.normal, camera.near);
  if (facing < leastSeen) return undefined;
  const half = mark.inches / 2;
  const middle = place(mark.at);
  const sideways = cross(mark.upright, mark.normal);
  const right = place(plus(mark.at, times(sideways, half)));
  const top = place(plus(mark.at, times(mark.upright, half)));
  // The mark's own square, 2 wide and 2 high, as it lies on the rubber.
  const [a, b, c, d] = [right.x - middle.x, right.y - middle.y, middle.x - top.x, middle.y - top.y];
  const matrix = `matrix(${[a, b, c, d].map((value) => Math.round(value * 100) / 100).join(' ')} ${short(middle.x)} ${short(middle.y)})`;
  const inside = inner(mark.kind, rubber);
  return scale * mark.inches < 1 ? undefined : `<g transform="${matrix}">${inside}</g>`;
}

/** The half of a stripe round a bubble that can be seen. */
function stripe(
  mark: Mark,
  camera: Camera,
  place: (point: Vector) => Seen,
  scale: number,
  radius: number,
  pen: string,
): string | undefined {
  const ahead = across(camera.near, mark.normal);
  if (ahead === undefined) return undefined;
  const sideways = cross(mark.normal, ahead);
  const points = [-64, -42, -18, 0, 18, 42, 64].map((degrees) => {
    const { sine, cosine } = turned(degrees);
    return place(plus(mark.at, plus(times(ahead, 0.94 * radius * cosine), times(sideways, 0.94 * radius * sine))));
  });
  return `<path d="${pathThrough(points, 0, points.length - 1)}" stroke="${pen}" stroke-width="${short(mark.inches * scale)}" stroke-linecap="butt" opacity=".88"/>`;
}

function inner(kind: Exclude<Mark['kind'], 'stripe'>, rubber: Rubber): string {
  const pen = showsInk(rubber) ? ink : '#fff';
  switch (kind) {
    case 'eye':
      return `<ellipse rx="1.25" ry="1.55" fill="#fff" stroke="${ink}" stroke-width=".18"/><ellipse cy=".35" rx=".78" ry="1.05" fill="${ink}"/><circle cx="-.25" cy="-.15" r=".3" fill="#fff"/>`;
    case 'nose':
      return `<ellipse rx="1" ry=".72" fill="${ink}"/><ellipse cx="-.3" cy="-.28" rx=".28" ry=".18" fill="#fff"/>`;
    case 'nostrils':
      return `<ellipse cx="-.45" rx=".24" ry=".42" fill="${pen}"/><ellipse cx=".45" rx=".24" ry=".42" fill="${pen}"/>`;
    case 'smile':
      return `<path d="M-1-.2Q0 1 1-.2" stroke="${pen}" stroke-width=".34"/>`;
    case 'spot':
      return `<circle r="1" fill="${rubber.deep}" opacity=".75"/>`;
    case 'black spot':
      return `<circle r="1" fill="${ink}"/>`;
    case 'heart':
      return `<path d="M0 1C-1.6-.1-1-1-.5-1C-.2-1 0-.8 0-.6C0-.8.2-1 .5-1C1-1 1.6-.1 0 1Z" fill="${takesInk(rubber) ? '#d61f2e' : '#fff'}"/>`;
    case 'star':
      return `<path d="M0-1L.27-.33L.97-.3L.43.16L.61.84L0 .47L-.61.84L-.43.16L-.97-.3L-.27-.33Z" fill="${takesInk(rubber) ? '#2058cc' : '#fff'}"/>`;
    case 'cheek':
      return `<circle r="1" fill="#f48bb6" opacity=".7"/>`;
    case 'whiskers':
      return `<path d="M-.4 0L-1-.3M-.4.15L-1 .3M.4 0L1-.3M.4.15L1 .3" stroke="${pen}" stroke-width=".12"/>`;
  }
}
