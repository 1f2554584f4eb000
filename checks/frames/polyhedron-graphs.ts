import type { Frame } from '@twistwright/repertoire';

/** The labelled graphs in which the certificates are written: those of a public graph library, edge lists or LCF codes. */
export const tetrahedronGraph = graph(4, [
  [0, 1],
  [0, 2],
  [0, 3],
  [1, 2],
  [1, 3],
  [2, 3],
]);

export const cubeGraph = graph(8, adjacency([[1, 3, 4], [2, 7], [3, 6], [5], [5, 7], [6], [7], []]));

/** LCF code [10, 7, 4, -4, -7, 10, -4, 7, -7, 4] twice (M. Frucht's notation; Coxeter, Frucht, Powers, "Zero-symmetric graphs", 1981). */
export const dodecahedronGraph = lcf(20, [10, 7, 4, -4, -7, 10, -4, 7, -7, 4]);

export const icosahedronGraph = graph(
  12,
  '0-1 0-5 0-7 0-8 0-11 1-2 1-5 1-6 1-8 2-3 2-6 2-8 2-9 3-4 3-6 3-9 3-10 4-5 4-6 4-10 4-11 5-6 5-11 7-8 7-9 7-10 7-11 8-9 9-10 10-11'
    .split(' ')
    .map((pair) => pair.split('-').map(Number) as [number, number]),
);

export const koenigsberg = graph(4, [
  [0, 1],
  [0, 1],
  [0, 2],
  [0, 2],
  [0, 3],
  [1, 3],
  [2, 3],
]);

export function graph(joints: number, edges: readonly (readonly [number, number])[]): Frame {
  return {
    joints: Array.from({ length: joints }, (_, index) => ({ name: `${index}` })),
    edges: edges.map(([from, to]) => ({ from: `${from}`, to: `${to}`, lengthInches: 1 })),
  };
}

function adjacency(higher: readonly (readonly number[])[]): readonly (readonly [number, number])[] {
  return higher.flatMap((list, from) => list.map((to) => [from, to] as const));
}

function lcf(joints: number, code: readonly number[]): Frame {
  const edges = new Map<string, readonly [number, number]>();
  for (let joint = 0; joint < joints; joint++) {
    for (const jump of [1, code[joint % code.length] as number]) {
      const other = (joint + jump + joints) % joints;
      const pair = [Math.min(joint, other), Math.max(joint, other)] as const;
      edges.set(pair.join(' '), pair);
    }
  }
  return graph(joints, [...edges.values()]);
}

/** Whether two simple graphs are the same up to names; a plain search, quick for graphs as even as solids. */
export function sameGraph(a: Frame, b: Frame): boolean {
  const [first, second] = [neighbours(a), neighbours(b)];
  const count = first.length;
  const image: number[] = [];
  const place = (joint: number): boolean => {
    if (joint === count) return true;
    for (let candidate = 0; candidate < count; candidate++) {
      if (image.includes(candidate) || first[joint]?.size !== second[candidate]?.size) continue;
      const fits = image.every((other, earlier) => first[joint]?.has(earlier) === second[candidate]?.has(other));
      if (!fits) continue;
      image.push(candidate);
      if (place(joint + 1)) return true;
      image.pop();
    }
    return false;
  };
  return count === second.length && a.edges.length === b.edges.length && place(0);
}

function neighbours(frame: Frame): readonly ReadonlySet<number>[] {
  const numbers = new Map(frame.joints.map(({ name }, index) => [name, index]));
  const sets = frame.joints.map(() => new Set<number>());
  for (const { from, to } of frame.edges) {
    sets[numbers.get(from) as number]?.add(numbers.get(to) as number);
    sets[numbers.get(to) as number]?.add(numbers.get(from) as number);
  }
  return sets;
}
