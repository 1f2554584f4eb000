/**
 * Least-cost perfect matching in a general graph, exact, in time n^3: J. Edmonds, "Maximum matching and a polyhedron with 0,1-vertices",
 * J. Res. Nat. Bur. Standards 69B (1965) 125-130, in the primal-dual form of Z. Galil, "Efficient algorithms for finding maximum matching
 * in graphs", ACM Computing Surveys 18 (1986) 23-38. Costs are whole numbers, so that every step is exact.
 *
 * `cost(i, j)` is the cost of pairing i with j, both from 0 (included) to `count` (not included), or infinity where they cannot be
 * paired. Costs must be whole, not negative, and below 2^50 / `count`. Returns the partner of each; throws where nothing pairs all.
 * @example perfectMatching(4, (i, j) => Math.abs(i - j)) // -> [1, 0, 3, 2]
 */
export function perfectMatching(count: number, cost: (i: number, j: number) => number): readonly number[] {
  if (count % 2 === 1) throw new Error(`an odd number cannot be paired: ${count}`);
  if (count === 0) return [];
  return new Blossoms(count, cost).partners();
}

/** Label of an outermost vertex or blossom in the forest that grows from the unmatched ones. */
const unreached = -1;
const outer = 0;
const inner = 1;

/**
 * Vertices are 1 to n, blossoms n + 1 to 2n, 0 is none. An "edge" between two of them is stored by the vertices it really joins:
 * `#from[a * width + b]` lies in a and `#to[...]` in b. Weights are turned round (large is cheap) and 0 means no edge.
 */
class Blossoms {
  readonly #n: number;
  readonly #width: number;
  #top: number;
  readonly #from: Int32Array;
  readonly #to: Int32Array;
  readonly #weight: Float64Array;
  /** Dual value of each vertex and blossom. */
  readonly #dual: Float64Array;
  readonly #match: Int32Array;
  /** Vertex outside with the tightest edge to this outermost one. */
  readonly #tight: Int32Array;
  /** Outermost blossom that holds this one; 0 for a blossom number not in use. */
  readonly #outermost: Int32Array;
  readonly #parent: Int32Array;
  readonly #label: Int8Array;
  readonly #seen: Int32Array;
  #round = 0;
  /** Which member of a blossom holds a vertex. */
  readonly #memberWith: Int32Array;
  /** Members of a blossom around its odd ring, its base first. */
  readonly #members: number[][];
  #queue: number[] = [];

  constructor(count: number, cost: (i: number, j: number) => number) {
    this.#n = count;
    this.#top = count;
    this.#width = 2 * count + 1;
    const cells = this.#width * this.#width;
    this.#from = new Int32Array(cells);
    this.#to = new Int32Array(cells);
    this.#weight = new Float64Array(cells);
    this.#memberWith = new Int32Array(this.#width * (count + 1));
    this.#dual = new Float64Array(this.#width);
    this.#match = new Int32Array(this.#width);
    this.#tight = new Int32Array(this.#width);
    this.#outermost = new Int32Array(this.#width);
    this.#parent = new Int32Array(this.#width);
    this.#label = new Int8Array(this.#width);
    this.#seen = new Int32Array(this.#width);
    this.#members = Array.from({ length: this.#width }, () => []);
    this.#start(cost);
  }

  partners(): readonly number[] {
    for (let matched = 0; matched < this.#n; matched += 2) {
      if (!this.#enlarge()) throw new Error(`only ${matched} of ${this.#n} can be paired`);
    }
    return Array.from({ length: this.#n }, (_, index) => (this.#match[index + 1] as number) - 1);
  }

  #start(cost: (i: number, j: number) => number): void {
    let dearest = 0;
    for (let i = 0; i < this.#n; i++) {
      for (let j = 0; j < i; j++) if (Number.isFinite(cost(i, j))) dearest = Math.max(dearest, cost(i, j));
    }
    const ceiling = (dearest + 1) * (this.#n / 2 + 1);
    let heaviest = 0;
    for (let u = 1; u <= this.#n; u++) {
      this.#outermost[u] = u;
      this.#memberWith[u * (this.#n + 1) + u] = u;
      for (let v = 1; v <= this.#n; v++) {
        const cell = u * this.#width + v;
        this.#from[cell] = u;
        this.#to[cell] = v;
        const price = u === v ? Number.POSITIVE_INFINITY : cost(u - 1, v - 1);
        this.#weight[cell] = Number.isFinite(price) ? ceiling - price : 0;
        heaviest = Math.max(heaviest, this.#weight[cell] as number);
      }
    }
    this.#dual.fill(heaviest, 1, this.#n + 1);
  }

  /** How far an edge is from being tight; 0 is tight. */
  #slack(cell: number): number {
    const [u, v] = [this.#from[cell] as number, this.#to[cell] as number];
    return (this.#dual[u] as number) + (this.#dual[v] as number) - 2 * (this.#weight[u * this.#width + v] as number);
  }

  #noteTight(u: number, x: number): void {
    const tight = this.#tight[x] as number;
    if (tight === 0 || this.#slack(u * this.#width + x) < this.#slack(tight * this.#width + x)) this.#tight[x] = u;
  }

  #findTight(x: number): void {
    this.#tight[x] = 0;
    for (let u = 1; u <= this.#n; u++) {
      const outermost = this.#outermost[u] as number;
      if ((this.#weight[u * this.#width + x] as number) > 0 && outermost !== x && this.#label[outermost] === outer) this.#noteTight(u, x);
    }
  }

  #enqueue(x: number): void {
    if (x <= this.#n) this.#queue.push(x);
    else for (const member of this.#members[x] as number[]) this.#enqueue(member);
  }

  #setOutermost(x: number, blossom: number): void {
    this.#outermost[x] = blossom;
    if (x > this.#n) for (const member of this.#members[x] as number[]) this.#setOutermost(member, blossom);
  }

  /** Place of a member on the even side of its blossom's ring; turns the ring round where needed. */
  #evenPlace(blossom: number, member: number): number {
    const members = this.#members[blossom] as number[];
    const place = members.indexOf(member);
    if (place % 2 === 0) return place;
    const [base, ...others] = members as [number, ...number[]];
    this.#members[blossom] = [base, ...others.toReversed()];
    return members.length - place;
  }

  #setMatch(u: number, v: number): void {
    const cell = u * this.#width + v;
    this.#match[u] = this.#to[cell] as number;
    if (u <= this.#n) return;
    const member = this.#memberWith[u * (this.#n + 1) + (this.#from[cell] as number)] as number;
    const place = this.#evenPlace(u, member);
    const members = this.#members[u] as number[];
    for (let index = 0; index < place; index++) this.#setMatch(members[index] as number, members[index ^ 1] as number);
    this.#setMatch(member, v);
    this.#members[u] = [...members.slice(place), ...members.slice(0, place)];
  }

  /** Swaps matched and unmatched edges from u back to the root of its tree, u being matched to v. */
  #swapToRoot(start: number, startPartner: number): void {
    let [u, v] = [start, startPartner];
    for (;;) {
      const next = this.#outermost[this.#match[u] as number] as number;
      this.#setMatch(u, v);
      if (next === 0) return;
      const above = this.#outermost[this.#parent[next] as number] as number;
      this.#setMatch(next, above);
      [u, v] = [above, next];
    }
  }

  /** Where the ways to the roots from u and v meet, or 0 if they belong to different trees. */
  #meeting(startU: number, startV: number): number {
    this.#round++;
    let [u, v] = [startU, startV];
    while (u !== 0 || v !== 0) {
      if (u !== 0) {
        if (this.#seen[u] === this.#round) return u;
        this.#seen[u] = this.#round;
        u = this.#outermost[this.#match[u] as number] as number;
        if (u !== 0) u = this.#outermost[this.#parent[u] as number] as number;
      }
      [u, v] = [v, u];
    }
    return 0;
  }

  #shrink(u: number, base: number, v: number): void {
    let blossom = this.#n + 1;
    while (blossom <= this.#top && this.#outermost[blossom] !== 0) blossom++;
    if (blossom > this.#top) this.#top = blossom;
    this.#dual[blossom] = 0;
    this.#label[blossom] = outer;
    this.#match[blossom] = this.#match[base] as number;
    this.#members[blossom] = [base, ...this.#wayTo(u, base).toReversed(), ...this.#wayTo(v, base)];
    this.#setOutermost(blossom, blossom);
    this.#gatherEdges(blossom);
    this.#findTight(blossom);
  }

  /** The ring from u up to the base (not included); inner ones become outer and are looked at. */
  #wayTo(u: number, base: number): readonly number[] {
    const way: number[] = [];
    for (let x = u; x !== base; ) {
      const partner = this.#outermost[this.#match[x] as number] as number;
      way.push(x, partner);
      this.#enqueue(partner);
      x = this.#outermost[this.#parent[partner] as number] as number;
    }
    return way;
  }

  /** Gives a blossom, for each other one, the tightest edge of its members. */
  #gatherEdges(blossom: number): void {
    const width = this.#width;
    for (let x = 1; x <= this.#top; x++) {
      this.#weight[blossom * width + x] = 0;
      this.#weight[x * width + blossom] = 0;
    }
    const holders = this.#n + 1;
    this.#memberWith.fill(0, blossom * holders, (blossom + 1) * holders);
    for (const member of this.#members[blossom] as number[]) {
      for (let x = 1; x <= this.#top; x++) {
        const tighter = this.#weight[blossom * width + x] === 0 || this.#slack(member * width + x) < this.#slack(blossom * width + x);
        if (!tighter) continue;
        this.#copyEdge(member * width + x, blossom * width + x);
        this.#copyEdge(x * width + member, x * width + blossom);
      }
      for (let x = 1; x <= this.#n; x++) {
        if (this.#memberWith[member * holders + x] !== 0) this.#memberWith[blossom * holders + x] = member;
      }
    }
  }

  #copyEdge(source: number, target: number): void {
    this.#from[target] = this.#from[source] as number;
    this.#to[target] = this.#to[source] as number;
    this.#weight[target] = this.#weight[source] as number;
  }

  #expand(blossom: number): void {
    for (const member of this.#members[blossom] as number[]) this.#setOutermost(member, member);
    const entry = this.#from[blossom * this.#width + (this.#parent[blossom] as number)] as number;
    const member = this.#memberWith[blossom * (this.#n + 1) + entry] as number;
    const place = this.#evenPlace(blossom, member);
    const members = this.#members[blossom] as number[];
    for (let index = 0; index < place; index += 2) {
      const [x, next] = [members[index] as number, members[index + 1] as number];
      this.#parent[x] = this.#from[next * this.#width + x] as number;
      this.#label[x] = inner;
      this.#label[next] = outer;
      this.#tight[x] = 0;
      this.#findTight(next);
      this.#enqueue(next);
    }
    this.#label[member] = inner;
    this.#parent[member] = this.#parent[blossom] as number;
    for (const rest of members.slice(place + 1)) {
      this.#label[rest] = unreached;
      this.#findTight(rest);
    }
    this.#outermost[blossom] = 0;
  }

  /** Uses a tight edge: grows the tree, shrinks a ring, or joins two trees; the last enlarges the matching and returns true. */
  #useTight(cell: number): boolean {
    const u = this.#outermost[this.#from[cell] as number] as number;
    const v = this.#outermost[this.#to[cell] as number] as number;
    if (this.#label[v] === unreached) {
      this.#parent[v] = this.#from[cell] as number;
      this.#label[v] = inner;
      const partner = this.#outermost[this.#match[v] as number] as number;
      this.#tight[v] = 0;
      this.#tight[partner] = 0;
      this.#label[partner] = outer;
      this.#enqueue(partner);
      return false;
    }
    if (this.#label[v] !== outer) return false;
    const base = this.#meeting(u, v);
    if (base !== 0) {
      this.#shrink(u, base, v);
      return false;
    }
    this.#swapToRoot(u, v);
    this.#swapToRoot(v, u);
    return true;
  }

  /** One phase: the matching gets one more pair, or false if it cannot. */
  #enlarge(): boolean {
    this.#label.fill(unreached, 1, this.#top + 1);
    this.#tight.fill(0, 1, this.#top + 1);
    this.#queue = [];
    for (let x = 1; x <= this.#top; x++) {
      if (this.#outermost[x] !== x || this.#match[x] !== 0) continue;
      this.#parent[x] = 0;
      this.#label[x] = outer;
      this.#enqueue(x);
    }
    for (;;) {
      if (this.#scanQueue()) return true;
      const step = this.#dualStep();
      if (step === Number.POSITIVE_INFINITY) return false;
      this.#moveDuals(step);
      if (this.#useNewlyTight()) return true;
      for (let b = this.#n + 1; b <= this.#top; b++) {
        if (this.#outermost[b] === b && this.#label[b] === inner && this.#dual[b] === 0) this.#expand(b);
      }
    }
  }

  #scanQueue(): boolean {
    for (let index = 0; index < this.#queue.length; index++) {
      const u = this.#queue[index] as number;
      if (this.#label[this.#outermost[u] as number] === inner) continue;
      for (let v = 1; v <= this.#n; v++) {
        const cell = u * this.#width + v;
        if (this.#weight[cell] === 0 || this.#outermost[u] === this.#outermost[v]) continue;
        if (this.#slack(cell) > 0) this.#noteTight(u, this.#outermost[v] as number);
        else if (this.#useTight(cell)) return true;
      }
    }
    this.#queue = [];
    return false;
  }

  #dualStep(): number {
    let step = Number.POSITIVE_INFINITY;
    for (let b = this.#n + 1; b <= this.#top; b++) {
      if (this.#outermost[b] === b && this.#label[b] === inner) step = Math.min(step, (this.#dual[b] as number) / 2);
    }
    for (let x = 1; x <= this.#top; x++) {
      const tight = this.#tight[x] as number;
      if (this.#outermost[x] !== x || tight === 0 || this.#label[x] === inner) continue;
      const slack = this.#slack(tight * this.#width + x);
      step = Math.min(step, this.#label[x] === outer ? slack / 2 : slack);
    }
    return step;
  }

  #moveDuals(step: number): void {
    for (let u = 1; u <= this.#n; u++) {
      const label = this.#label[this.#outermost[u] as number];
      if (label === outer) this.#dual[u] = (this.#dual[u] as number) - step;
      else if (label === inner) this.#dual[u] = (this.#dual[u] as number) + step;
    }
    for (let b = this.#n + 1; b <= this.#top; b++) {
      if (this.#outermost[b] !== b) continue;
      if (this.#label[b] === outer) this.#dual[b] = (this.#dual[b] as number) + 2 * step;
      else if (this.#label[b] === inner) this.#dual[b] = (this.#dual[b] as number) - 2 * step;
    }
  }

  #useNewlyTight(): boolean {
    for (let x = 1; x <= this.#top; x++) {
      const tight = this.#tight[x] as number;
      if (this.#outermost[x] !== x || tight === 0 || this.#outermost[tight] === x) continue;
      const cell = tight * this.#width + x;
      if (this.#slack(cell) === 0 && this.#useTight(cell)) return true;
    }
    return false;
  }
}
