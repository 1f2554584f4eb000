import type { CoverModel } from './cover-model.ts';

/** Mark of a bag that is neither in (1) nor out (0). */
export const free = -1;

const unknown = -1;
const dead = 0;
const open = 1;
const reached = 2;

/**
 * What bags that are fixed leave open of a coverage problem, numbered compactly: the goals not yet reached, their alternatives that
 * can still be reached with the money left, and the rows these still need. Works on one model again and again without making garbage.
 */
export class OpenPart {
  readonly #model: CoverModel;
  /** Value that is reached whatever else is bought. */
  base = 0;
  goalCount = 0;
  rowCount = 0;
  /** Goal by number; its alternatives are `alternativesFrom[k]` to `alternativesFrom[k + 1]`. */
  readonly goals: Int32Array;
  readonly alternativesFrom: Int32Array;
  /** The rows of alternative `a` are `rowList[rowsFrom[a]]` to `rowList[rowsFrom[a + 1] - 1]`. */
  readonly rowsFrom: Int32Array;
  readonly rowList: Int32Array;
  /** For each row its number in the model, and its only free bag; -1 where several are free, `bagList[bagsFrom[k]]` and on. */
  readonly rows: Int32Array;
  readonly bagOf: Int32Array;
  readonly bagsFrom: Int32Array;
  readonly bagList: Int32Array;
  readonly #states: Int8Array;
  readonly #numbers: Int32Array;
  /** For each bag the row of the goal at hand that needs just this bag. */
  readonly #rowOfBag: Int32Array;

  constructor(model: CoverModel) {
    this.#model = model;
    this.goals = new Int32Array(model.goalCount);
    this.alternativesFrom = new Int32Array(model.goalCount + 1);
    this.rowsFrom = new Int32Array(model.goalOfAlternative.length + 1);
    this.rowList = new Int32Array(model.rowsOfAlternative.length);
    this.rows = new Int32Array(model.rowCount);
    this.bagOf = new Int32Array(model.rowCount);
    this.bagsFrom = new Int32Array(model.rowCount + 1);
    this.bagList = new Int32Array(model.bagsOfRow.length);
    this.#states = new Int8Array(model.rowCount);
    this.#numbers = new Int32Array(model.rowCount);
    this.#rowOfBag = new Int32Array(model.bagCount);
  }

  /** Takes up what is open under `fixed` with so much money left for free bags. */
  narrow(fixed: Int8Array, money: number): void {
    const { goalCount, alternativeStart, values, valueOfAlways } = this.#model;
    this.#states.fill(unknown);
    this.#numbers.fill(-1);
    this.#rowOfBag.fill(-1);
    this.base = valueOfAlways;
    this.rowCount = 0;
    let [goals, alternatives, listed] = [0, 0, 0];
    for (let goal = 0; goal < goalCount; goal++) {
      const [alternativesBefore, listedBefore, rowsBefore] = [alternatives, listed, this.rowCount];
      let won = false;
      const end = alternativeStart[goal + 1] as number;
      for (let a = alternativeStart[goal] as number; a < end && !won; a++) {
        if (!this.#canReach(a, fixed, money)) continue;
        const before = listed;
        listed = this.#list(a, fixed, listed, rowsBefore);
        won = listed === before;
        this.rowsFrom[alternatives++] = before;
      }
      if (won) {
        // Reached whatever else is bought: its value is safe and its alternatives are of no more interest.
        this.base += values[goal] as number;
        [alternatives, listed, this.rowCount] = [alternativesBefore, listedBefore, rowsBefore];
      } else if (alternatives > alternativesBefore) {
        this.alternativesFrom[goals] = alternativesBefore;
        this.goals[goals++] = goal;
      }
    }
    this.alternativesFrom[goals] = alternatives;
    this.rowsFrom[alternatives] = listed;
    this.goalCount = goals;
  }

  /** True if no row of the alternative is dead, and the bags that it needs in any case are not dearer than the money. */
  #canReach(alternative: number, fixed: Int8Array, money: number): boolean {
    const { rowsStart, rowsOfAlternative, bagsStart, bagsOfRow, costs } = this.#model;
    const end = rowsStart[alternative + 1] as number;
    let cost = 0;
    for (let r = rowsStart[alternative] as number; r < end; r++) {
      const row = rowsOfAlternative[r] as number;
      const state = this.#stateOf(row, fixed);
      if (state === dead) return false;
      const first = bagsStart[row] as number;
      if (state === open && bagsStart[row + 1] === first + 1) cost += costs[bagsOfRow[first] as number] as number;
    }
    return cost <= money;
  }
  #stateOf(row: number, fixed: Int8Array): number {
    const known = this.#states[row] as number;
    if (known !== unknown) return known;
    const { bagsStart, bagsOfRow } = this.#model;
    let state = dead;
    for (let b = bagsStart[row] as number; b < (bagsStart[row + 1] as number); b++) {
      const is = fixed[bagsOfRow[b] as number] as number;
      if (is === 1) {
        state = reached;
        break;
      }
      if (is === free) state = open;
    }
    this.#states[row] = state;
    return state;
  }

  /** Lists the open rows of an alternative from place `from` on, each once; the next place. */
  #list(alternative: number, fixed: Int8Array, from: number, rowsBefore: number): number {
    const { rowsStart, rowsOfAlternative } = this.#model;
    const end = rowsStart[alternative + 1] as number;
    let listed = from;
    for (let r = rowsStart[alternative] as number; r < end; r++) {
      const row = rowsOfAlternative[r] as number;
      if (this.#states[row] !== open) continue;
      const number = this.#numberOf(row, fixed, rowsBefore);
      let is = from;
      while (is < listed && this.rowList[is] !== number) is++;
      if (is === listed) this.rowList[listed++] = number;
    }
    return listed;
  }
  /** Rows of one goal that are left with the same single bag share a number: together they are the tighter link. */
  #numberOf(row: number, fixed: Int8Array, rowsBefore: number): number {
    const known = this.#numbers[row] as number;
    if (known >= 0) return known;
    const { bagsStart, bagsOfRow } = this.#model;
    const number = this.rowCount;
    const start = this.bagsFrom[number] as number;
    let at = start;
    for (let b = bagsStart[row] as number; b < (bagsStart[row + 1] as number); b++) {
      const bag = bagsOfRow[b] as number;
      if (fixed[bag] === free) this.bagList[at++] = bag;
    }
    const only = at === start + 1 ? (this.bagList[start] as number) : -1;
    if (only >= 0) {
      const same = this.#rowOfBag[only] as number;
      if (same >= rowsBefore && same < number && this.bagOf[same] === only) {
        this.#numbers[row] = same;
        return same;
      }
      this.#rowOfBag[only] = number;
    }
    this.bagOf[number] = only;
    this.bagsFrom[number + 1] = at;
    this.rows[number] = row;
    this.#numbers[row] = number;
    this.rowCount = number + 1;
    return number;
  }
}
