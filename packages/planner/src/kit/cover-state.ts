import type { CoverModel } from './cover-model.ts';

/** A purchase under construction: what it costs and reaches, kept up to date bag by bag. */
export class CoverState {
  readonly model: CoverModel;
  readonly bought: Int8Array;
  /** Value of the goals reached. */
  value: number;
  /** Prices and shipping together. */
  spent = 0;
  /** Colours bought that are not owned already. */
  colours = 0;
  readonly #inClause: Int32Array;
  readonly #missing: Int32Array;
  readonly #reachedBy: Int32Array;
  readonly #supplierOf: readonly number[] | undefined;
  readonly #spentAt: Float64Array;
  readonly #colourCount: Int32Array;

  constructor(model: CoverModel) {
    this.model = model;
    this.bought = new Int8Array(model.bagCount);
    this.value = model.valueOfAlways;
    this.#inClause = new Int32Array(model.clauseCount);
    this.#missing = new Int32Array(model.goalOfAlternative.length);
    for (let a = 0; a < this.#missing.length; a++) this.#missing[a] = (model.rowsStart[a + 1] as number) - (model.rowsStart[a] as number);
    this.#reachedBy = new Int32Array(model.goalCount);
    this.#supplierOf = model.problem.supplierOf;
    const suppliers = model.problem.suppliers ?? [];
    this.#spentAt = new Float64Array(suppliers.length);
    for (const [s, supplier] of suppliers.entries()) {
      this.#spentAt[s] = supplier.spent ?? 0;
      this.spent += this.#shippingAt(s);
    }
    const colours = 1 + Math.max(-1, ...(model.problem.coloursOf ?? []).flat());
    this.#colourCount = new Int32Array(colours);
    for (const colour of model.problem.ownColours ?? []) if (colour < colours) this.#colourCount[colour] = 1;
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
    this.#pay(bag, by);
    const model = this.model;
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
  #pay(bag: number, by: number): void {
    const cost = this.model.costs[bag] as number;
    this.spent += by * cost;
    const supplier = this.#supplierOf?.[bag] ?? -1;
    if (supplier >= 0) {
      this.spent -= this.#shippingAt(supplier);
      this.#spentAt[supplier] = (this.#spentAt[supplier] as number) + by * cost;
      this.spent += this.#shippingAt(supplier);
    }
    for (const colour of this.model.problem.coloursOf?.[bag] ?? []) {
      const count = (this.#colourCount[colour] as number) + by;
      this.#colourCount[colour] = count;
      if (count === (by === 1 ? 1 : 0)) this.colours += by;
    }
  }
  #shippingAt(supplier: number): number {
    const terms = this.model.problem.suppliers?.[supplier];
    const spent = this.#spentAt[supplier] as number;
    if (terms === undefined || spent <= 0 || spent >= (terms.freeFrom ?? Number.POSITIVE_INFINITY)) return 0;
    return terms.shipping;
  }

  /** True if the money and the limit on colours are kept, and no second bag is bought without the first. */
  isAllowed(): boolean {
    const { budget, mostColours, after } = this.model.problem;
    if (this.spent > budget || this.colours > (mostColours ?? Number.POSITIVE_INFINITY)) return false;
    if (after === undefined) return true;
    for (let bag = 0; bag < this.bought.length; bag++) {
      const first = after[bag] as number;
      if (this.bought[bag] === 1 && first >= 0 && this.bought[first] !== 1) return false;
    }
    return true;
  }
  /** Makes the purchase equal to `wanted`. */
  set(wanted: ArrayLike<number>): void {
    for (let bag = 0; bag < this.bought.length; bag++) if ((this.bought[bag] as number) !== (wanted[bag] as number)) this.toggle(bag);
  }
}
