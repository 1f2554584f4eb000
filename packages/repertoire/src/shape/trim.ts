import { type Capsules, pairKey } from './body.ts';

/** Two stretches of one bubble with less balloon than this between them, in radii, are one bend: half a turn round the bubble's own edge. */
const bentRadii = 3.3;

/**
 * The pairs of capsules that do not collide over the whole of both axes, because they are of one bubble, meet at a joint, or pass. Pairs
 * that are not listed do.
 */
export interface Trims {
  /** Where in `other` the pairs of each capsule with higher ones begin, and after the last where they end. */
  readonly from: Int32Array;
  readonly other: Int32Array;
  /** Four shares a pair: low and high of the first axis and of the second between which they may collide. Low above high: nowhere. */
  readonly cuts: Float64Array;
}

/** All trims of a body. They depend on joints and lengths, not on places. */
export function trimsOf(capsules: Capsules): Trims {
  const count = capsules.a.length;
  const keys = relatedPairs(capsules);
  const from = new Int32Array(count + 1);
  const other = new Int32Array(keys.length);
  const cuts = new Float64Array(4 * keys.length);
  let found = 0;
  let before = -1;
  let capsule = 0;
  for (const key of keys) {
    if (key === before) continue;
    before = key;
    const i = Math.floor(key / keyStep);
    const j = key - keyStep * i;
    while (capsule < i) from[++capsule] = found;
    if (!isTrimmed(capsules, i, j, cuts, 4 * found)) continue;
    other[found++] = j;
  }
  while (capsule < count) from[++capsule] = found;
  return { from, other: other.subarray(0, found), cuts: cuts.subarray(0, 4 * found) };
}

/** From one first number of a `pairKey` to the next. */
const keyStep = pairKey(1, 1) - 1;

/** Pairs of capsules that share a joint or have joints near one another, or whose bubbles pass: their keys in order, some of them twice. */
function relatedPairs({ a, bubble, startJoint, endJoint, near, through }: Capsules): Float64Array {
  const atJoint = new Map<number, number[]>();
  const ofBubble = new Map<number, number[]>();
  for (let i = 0; i < a.length; i++) {
    put(atJoint, startJoint[i] as number, i);
    if (startJoint[i] !== endJoint[i]) put(atJoint, endJoint[i] as number, i);
    if (through !== undefined) put(ofBubble, bubble[i] as number, i);
  }
  const keys: number[] = [];
  for (const list of atJoint.values())
    for (let k = 0; k < list.length; k++)
      for (let l = k + 1; l < list.length; l++) keys.push(pairKey(list[k] as number, list[l] as number));
  const pairUp = (lists: ReadonlyMap<number, readonly number[]>, key: number): void => {
    const first = Math.floor(key / keyStep);
    for (const i of lists.get(first) ?? []) for (const j of lists.get(key - keyStep * first) ?? []) if (i !== j) keys.push(pairKey(i, j));
  };
  for (const key of near?.keys() ?? []) pairUp(atJoint, key);
  for (const key of through ?? []) pairUp(ofBubble, key);
  return Float64Array.from(keys).sort();
}

function put(lists: Map<number, number[]>, key: number, capsule: number): void {
  const list = lists.get(key);
  if (list === undefined) lists.set(key, [capsule]);
  else list.push(capsule);
}

/**
 * How much of two axes may collide: false for all of both, else the shares are written into `cuts`, low above high where nothing may
 * because they are one stretch of balloon, both lie where a joint squeezes them, or pass one another.
 */
function isTrimmed(capsules: Capsules, i: number, j: number, cuts: Float64Array, at: number): boolean {
  const { startJoint, endJoint, toStart, toEnd, bubble, bundle } = capsules;
  const ofBundle = bundle[i] as number;
  const squeezed = Math.max(capsules.squeeze[i] as number, capsules.squeeze[j] as number);
  if (capsules.through?.has(pairKey(bubble[i] as number, bubble[j] as number))) return nowhere(cuts, at);
  if (bubble[i] === bubble[j]) {
    const between = (toStart[j] as number) - (toStart[i] as number) - lengthOf(capsules, i);
    if (between < bentRadii * (capsules.radius[i] as number)) return nowhere(cuts, at);
    if (startJoint[i] !== endJoint[i]) return false;
    return (toStart[i] as number) + (toEnd[j] as number) < 1.5 * squeezed && nowhere(cuts, at);
  }
  if (ofBundle >= 0 && ofBundle === bundle[j]) return false;
  let meets = false;
  cuts[at] = 0;
  cuts[at + 1] = 1;
  cuts[at + 2] = 0;
  cuts[at + 3] = 1;
  for (let ends = 0; ends < 4; ends++) {
    const atEndI = ends >> 1;
    const atEndJ = ends & 1;
    const one = (atEndI === 0 ? startJoint[i] : endJoint[i]) as number;
    const other = (atEndJ === 0 ? startJoint[j] : endJoint[j]) as number;
    const between = one === other ? 0 : capsules.near?.get(pairKey(one, other));
    if (between === undefined) continue;
    meets = true;
    cut(cuts, at, atEndI, (squeezed - between - ((atEndI === 0 ? toStart[i] : toEnd[i]) as number)) / lengthOf(capsules, i));
    cut(cuts, at + 2, atEndJ, (squeezed - between - ((atEndJ === 0 ? toStart[j] : toEnd[j]) as number)) / lengthOf(capsules, j));
  }
  return meets;
}

function nowhere(cuts: Float64Array, at: number): true {
  cuts[at] = 1;
  cuts[at + 1] = 0;
  return true;
}

/** Cuts a share off the start or the end of what is left of an axis. */
function cut(cuts: Float64Array, at: number, atEnd: number, share: number): void {
  if (atEnd === 0) cuts[at] = Math.max(cuts[at] as number, share);
  else cuts[at + 1] = Math.min(cuts[at + 1] as number, 1 - share);
}

const lengthOf = (capsules: Capsules, i: number): number => Math.max(capsules.length[i] as number, 1e-9);
