/** A set of edges as a whole number below 2^52: a low and a high half of 26 bits. */
export type EdgeSet = number;
export const mostEdgesInSet = 52;
const halfBits = 26;
const half = 2 ** halfBits;

/** `subset` must lie in `set`. */
export const without = (set: EdgeSet, subset: EdgeSet): EdgeSet => set - subset;

export function edgesOf(set: EdgeSet): readonly number[] {
  const edges: number[] = [];
  addBits(set % half, 0, edges);
  addBits(Math.floor(set / half), halfBits, edges);
  return edges;
}

function addBits(bits: number, from: number, edges: number[]): void {
  for (let rest = bits; rest !== 0; rest &= rest - 1) edges.push(from + 31 - Math.clz32(rest & -rest));
}
