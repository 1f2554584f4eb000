import { turned } from './vector.ts';

/** A point of a template: along where the bubble aims, and to the side. */
type Flat = readonly [number, number];

const distance = (a: Flat, b: Flat): number => {
  const [x, y] = [a[0] - b[0], a[1] - b[1]];
  return Math.sqrt(x * x + y * y);
};
const lengthOf = (line: readonly Flat[]): number => line.slice(1).reduce((sum, point, i) => sum + distance(line[i] as Flat, point), 0);

/** `count` equal steps along a line. */
function evenly(line: readonly Flat[], count: number): readonly Flat[] {
  const step = lengthOf(line) / count;
  const found: Flat[] = [line[0] as Flat];
  let [walked, at] = [0, 1];
  for (let k = 1; k < count; k++) {
    while (at < line.length - 1 && walked + distance(line[at - 1] as Flat, line[at] as Flat) < k * step) {
      walked += distance(line[at - 1] as Flat, line[at] as Flat);
      at++;
    }
    const [from, to] = [line[at - 1] as Flat, line[at] as Flat];
    const share = (k * step - walked) / Math.max(distance(from, to), 1e-12);
    found.push([from[0] + (to[0] - from[0]) * share, from[1] + (to[1] - from[1]) * share]);
  }
  return [...found, line[line.length - 1] as Flat];
}

const scaled = (line: readonly Flat[], length: number): readonly Flat[] => {
  const k = length / lengthOf(line);
  return line.map(([x, y]) => [x * k, y * k]);
};

const fine = 120;

/** A drop with its point at the twist: `x = (1 - cos t) / 2, y = width sin t sin(t / 2)`, of the given outline length. */
export function drop(length: number, width: number, count: number): readonly Flat[] {
  const line: Flat[] = [];
  for (let i = 0; i <= fine; i++) {
    const t = (360 * i) / fine;
    line.push([(1 - turned(t).cosine) / 2, width * turned(t).sine * turned(t / 2).sine]);
  }
  return scaled(evenly(scaled(line, length), count), length);
}

/** A hairpin: two sides that touch, as far apart as the balloon is thick, and a round turn. */
export function hairpin(length: number, radius: number, count: number): readonly Flat[] {
  const turn = Math.PI * radius;
  const side = Math.max(radius * 0.6, (length - turn) / 2);
  const half: Flat[] = [
    [0, 0],
    [Math.min(side * 0.5, radius), radius * 0.9],
    [side, radius],
  ];
  const line: Flat[] = [...half];
  for (let i = 1; i < 24; i++) {
    const { sine, cosine } = turned((180 * i) / 24);
    line.push([side + radius * sine, radius * cosine]);
  }
  for (const [x, y] of half.toReversed()) line.push([x, -y]);
  return scaled(evenly(scaled(line, length), count), length);
}

/** A round ring that starts and ends at the twist. */
export function ring(length: number, count: number): readonly Flat[] {
  const line: Flat[] = [];
  for (let i = 0; i <= count; i++) {
    const { sine, cosine } = turned((360 * i) / count);
    line.push([1 - cosine, sine]);
  }
  return scaled(line, length);
}

/** An even bend by `degrees` whose two ends lie along the first axis; it starts away from the second axis and ends towards it. */
export function bend(length: number, degrees: number, count: number): readonly Flat[] {
  const line: Flat[] = [[0, 0]];
  let [x, y] = [0, 0];
  for (let i = 0; i < count; i++) {
    const { sine, cosine } = turned((degrees * (i + 0.5)) / count - degrees / 2);
    x += (cosine * length) / count;
    y += (sine * length) / count;
    line.push([x, y]);
  }
  return line;
}
