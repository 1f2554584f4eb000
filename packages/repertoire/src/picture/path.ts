/** A place in the picture. */
export interface Spot {
  readonly x: number;
  readonly y: number;
}

/** One decimal, without the zero before the point. */
export function short(value: number): string {
  const text = (Math.round(value * 10) / 10).toString();
  return text.replace(/^(-?)0\./u, '$1.').replace(/^-0$/u, '0');
}

const pair = (x: number, y: number): string => {
  const second = short(y);
  return second.startsWith('-') ? `${short(x)}${second}` : `${short(x)} ${second}`;
};

/**
 * SVG path through points `first` to `last` of a line: straight for two points, else cubic curves whose tangents come from the neighbours
 * (Catmull-Rom), also from neighbours outside the stretch, so that stretches of one line join smoothly.
 */
export function pathThrough(line: readonly Spot[], first: number, last: number, closed = false): string {
  const count = line.length;
  const at = (i: number): Spot => {
    const k = closed && count > 2 ? ((i % (count - 1)) + count - 1) % (count - 1) : Math.min(Math.max(i, 0), count - 1);
    return line[i === count - 1 ? count - 1 : k] as Spot;
  };
  const start = line[first] as Spot;
  let text = `M${pair(start.x, start.y)}`;
  // Relative steps are taken from the rounded place, so that rounding does not add up.
  let [x, y] = [round(start.x), round(start.y)];
  if (last === first) return `${text}h.1`;
  if (count === 2) return `${text}l${pair((line[last] as Spot).x - x, (line[last] as Spot).y - y)}`;
  for (let i = first; i < last; i++) {
    const [before, from, to, after] = [at(i - 1), at(i), at(i + 1), at(i + 2)];
    const one = { x: from.x + (to.x - before.x) / 6, y: from.y + (to.y - before.y) / 6 };
    const two = { x: to.x - (after.x - from.x) / 6, y: to.y - (after.y - from.y) / 6 };
    text += `${i === first ? 'c' : joined(short(one.x - x))}${i === first ? pair(one.x - x, one.y - y) : pair(one.x - x, one.y - y)}${spaced(two.x - x, two.y - y)}${spaced(to.x - x, to.y - y)}`;
    x = round(x + round(to.x - x));
    y = round(y + round(to.y - y));
  }
  return text;
}

const round = (value: number): number => Math.round(value * 10) / 10;
const joined = (next: string): string => (next.startsWith('-') ? '' : ' ');
const spaced = (x: number, y: number): string => {
  const text = pair(x, y);
  return text.startsWith('-') ? text : ` ${text}`;
};
