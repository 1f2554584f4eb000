import { Chance, exp } from '@twistwright/units';
import type { CoverModel } from './cover-model.ts';
import { free } from './cover-open.ts';
import { CoverState } from './cover-state.ts';

/**
 * A good purchase soon: simulated annealing over "add a bag, and give back others until the money is enough" (S. Kirkpatrick, C. D.
 * Gelatt, M. P. Vecchi, "Optimization by simulated annealing", Science 220 (1983) 671-680). Deterministic for a seed, unless `mustStop`
 * ends it early. Only bags that are free in `fixed` are drawn. The best purchase met as 0/1 for each bag; undefined if the bags that are
 * in are too dear by themselves.
 */
export function startOf(model: CoverModel, moves: number, seed: number, mustStop: () => boolean, fixed: Int8Array): Int8Array | undefined {
  const state = new CoverState(model);
  for (let bag = 0; bag < fixed.length; bag++) if (fixed[bag] === 1) state.toggle(bag);
  if (!state.isAffordable()) return undefined;
  const movable: number[] = [];
  for (let bag = 0; bag < fixed.length; bag++) if (fixed[bag] === free) movable.push(bag);
  let value = state.value;
  let best = value;
  let bought = state.bought.slice();
  if (movable.length === 0) return bought;
  const chance = new Chance(seed, 0, 77);
  const total = model.values.reduce((sum, one) => sum + one, 0);
  const hot = total / Math.max(8, model.goalCount) / 2;
  const undo: number[] = [];
  for (let move = 0; move < moves; move++) {
    if (move % lookEvery === 0 && mustStop()) break;
    const temperature = hot * (1 - move / moves) ** 2 + 1e-12;
    const bag = movable[chance.next() % movable.length] as number;
    undo.length = 0;
    if (chance.uniform() < 0.6) {
      reachGoal(state, fixed, chance, undo);
      if (undo.length === 0) continue;
    } else flip(state, bag, undo);
    makeRoom(state, movable, undo, chance);
    const luck = chance.uniform();
    const next = state.isAffordable() ? state.value : Number.NEGATIVE_INFINITY;
    if (next < value && luck >= exp((next - value) / temperature)) {
      for (let k = undo.length - 1; k >= 0; k--) state.toggle(undo[k] as number);
      continue;
    }
    value = next;
    if (value > best) {
      best = value;
      bought = state.bought.slice();
    }
  }
  return bought;
}
/** Moves between two looks at the clock. */
const lookEvery = 100;

function flip(state: CoverState, bag: number, undo: number[]): void {
  state.toggle(bag);
  undo.push(bag);
}

/** Buys what the cheapest alternative of a goal taken by chance still lacks. */
function reachGoal(state: CoverState, fixed: Int8Array, chance: Chance, undo: number[]): void {
  const model = state.model;
  const goal = chance.next() % model.goalCount;
  if (state.isReached(goal)) return;
  const first = model.alternativeStart[goal] as number;
  const count = (model.alternativeStart[goal + 1] as number) - first;
  if (count === 0) return;
  const alternative = first + (chance.next() % count);
  for (let r = model.rowsStart[alternative] as number; r < (model.rowsStart[alternative + 1] as number); r++) {
    const row = model.rowsOfAlternative[r] as number;
    const start = model.bagsStart[row] as number;
    const size = (model.bagsStart[row + 1] as number) - start;
    let has = false;
    for (let b = start; b < start + size && !has; b++) has = state.has(model.bagsOfRow[b] as number);
    if (has) continue;
    const bag = model.bagsOfRow[start + (size === 1 ? 0 : chance.next() % size)] as number;
    if (fixed[bag] !== 0) flip(state, bag, undo);
  }
}

/** Gives back bags taken by chance, those just bought aside, until the money is enough; of a few, the one that loses least. */
function makeRoom(state: CoverState, movable: readonly number[], undo: number[], chance: Chance): void {
  const bought = undo.length;
  for (let tries = 0; tries < 40 && !state.isAffordable(); tries++) {
    let least = Number.POSITIVE_INFINITY;
    let chosen = -1;
    for (let look = 0; look < 3; look++) {
      const bag = owned(state, movable, undo, bought, chance);
      if (bag < 0) return;
      const loss = state.lossWithout(bag) / Math.max(1, state.model.costs[bag] as number);
      if (loss < least) {
        least = loss;
        chosen = bag;
      }
    }
    flip(state, chosen, undo);
  }
}
function owned(state: CoverState, movable: readonly number[], undo: readonly number[], bought: number, chance: Chance): number {
  const from = chance.next() % movable.length;
  for (let k = 0; k < movable.length; k++) {
    const bag = movable[(from + k) % movable.length] as number;
    if (!state.has(bag)) continue;
    let fresh = false;
    for (let b = 0; b < bought && !fresh; b++) fresh = undo[b] === bag;
    if (!fresh) return bag;
  }
  return -1;
}
