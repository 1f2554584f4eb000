import type { CoverModel } from './cover-model.ts';

/** A purchase under construction: what it costs and reaches, kept up to date bag by bag. */
export class CoverState {
  readonly model: CoverModel;
  readonly bought: Int8Array;
  /** Value of the goals reached. */
  value: number;
  spent = 0;
  readonly #inClause: Int32Array;
  readonly #missing: Int32Array;
  readonly #reachedBy: Int32Array;

  constructor(model: CoverModel) {
    this.model = model;
    this.bought = new Int8Array(model.bagCount);
    this.value = model.valueOfAlways;
    this.#inClause = new Int32Array(model.clauseCount);
    this.#missing = new Int32Array(model.goalOfAlternative.length);
    for (let a = 0; a < this.#missing.length; a++) this.#missing[a] = (model.rowsStart[a + 1] as number) - (model.rowsStart[a] as number);
    this.#reachedBy = new Int32Array(model.goalCount);
  }

  has(bag: number): boolean {
    return this.bought[bag] === 1;
  }
  isReached(goal: number): boolean {
    return (this.#reachedBy[goal] as number) > 0;
  }
  /** Buys the bag, or gives it back. */
  toggle(bag: number): void {
    const by = this.bought[bag] === 1 ? -1 : 1;
    this.bought[bag] = by === 1 ? 1 : 0;
    const model = this.model;
    this.spent += by * (model.costs[bag] as number);
    const end = model.clausesOfBagStart[bag + 1] as number;
    for (let k = model.clausesOfBagStart[bag] as number; k < end; k++) {
      const clause = model.clausesOfBag[k] as number;
      const before = this.#inClause[clause] as number;
      this.#inClause[clause] = before + by;
      if (before + (by - 1) / 2 !== 0) continue; // the clause was and stays reached
      const last = model.alternativesOfClauseStart[clause + 1] as number;
      for (let a = model.alternativesOfClauseStart[clause] as number; a < last; a++)
        this.#count(model.alternativesOfClause[a] as number, by);
    }
  }
  /** About what would be lost with this bag: goals reached in no other way, alternative by alternative. */
  lossWithout(bag: number): number {
    const { clausesOfBagStart, clausesOfBag, alternativesOfClauseStart, alternativesOfClause, goalOfAlternative, values } = this.model;
    let loss = 0;
    const end = clausesOfBagStart[bag + 1] as number;
    for (let k = clausesOfBagStart[bag] as number; k < end; k++) {
      const clause = clausesOfBag[k] as number;
      if (this.#inClause[clause] !== 1) continue;
      const last = alternativesOfClauseStart[clause + 1] as number;
      for (let at = alternativesOfClauseStart[clause] as number; at < last; at++) {
        const alternative = alternativesOfClause[at] as number;
        if (this.#missing[alternative] !== 0) continue;
        const goal = goalOfAlternative[alternative] as number;
        if (this.#reachedBy[goal] === 1) loss += values[goal] as number;
      }
    }
    return loss;
  }
  #count(alternative: number, by: number): void {
    const missing = (this.#missing[alternative] as number) - by;
    this.#missing[alternative] = missing;
    if (missing !== (by === 1 ? 0 : 1)) return;
    const goal = this.model.goalOfAlternative[alternative] as number;
    const reached = (this.#reachedBy[goal] as number) + by;
    this.#reachedBy[goal] = reached;
    if (reached === (by === 1 ? 1 : 0)) this.value += by * (this.model.values[goal] as number);
  }

  isAffordable(): boolean {
    return this.spent <= this.model.budget;
  }
  /** Makes the purchase equal to `wanted`. */
  set(wanted: ArrayLike<number>): void {
    for (let bag = 0; bag < this.bought.length; bag++) if ((this.bought[bag] as number) !== (wanted[bag] as number)) this.toggle(bag);
  }
}
