import { keyed, keyedUniform } from '@twistwright/units';
import { drawn } from './durations.ts';
import { firstWayOf, type PreparedLine, type Way } from './prepared-line.ts';
import { purpose, stream } from './purpose.ts';
import { RunFindings } from './run-findings.ts';

/**
 * A class, run by run: the figures of the programme one after another as long as the time lasts, made by all learners together. A figure
 * takes the artist's making minutes times slowness and pace; each learner uses up `tries` pieces of it (the part after the point by chance)
 * and pops on top. Served is who finished the first figure; the names of the findings are those of a line.
 */
export class ClassEngine extends RunFindings {
  readonly #stock: Int32Array;

  constructor(line: PreparedLine, gridStep: number) {
    super(line, gridStep);
    this.#stock = new Int32Array(line.itemCount);
  }

  play(seed: number, run: number): void {
    const line = this.line;
    const arrivals = line.model.arrivals;
    if (arrivals.kind !== 'class') throw new Error(`not a class: ${arrivals.kind}`);
    this.clear();
    this.used.fill(0);
    this.#stock.set(line.stock);
    this.arrived = arrivals.learners;
    this.closedAt = line.end;
    const key = keyed(keyed(seed, run), stream.run);
    let now = line.startsAt[0] ?? 0;
    let finished = 0;
    let started = 0;
    for (const [number, figure] of arrivals.figures.entries()) {
      if (now >= line.lastStart) break;
      started++;
      const own = keyed(key, purpose.members + number);
      const { making } = firstWayOf(line, figure);
      now += this.#talking(own) + drawn(making, own, purpose.making) * arrivals.slowness * (line.pace[0] ?? 1);
      const made = this.#makeTogether(figure, arrivals.learners, arrivals.tries, own);
      this.made[figure] = (this.made[figure] ?? 0) + made;
      if (number === 0) finished = made;
    }
    this.served = finished;
    if (started === 0) this.unserved = arrivals.learners;
    else this.disappointed = arrivals.learners - finished;
    this.finish = now;
    this.busy[0] = now - (line.startsAt[0] ?? 0);
    this.waitCounts[0] = (this.waitCounts[0] ?? 0) + finished;
  }

  /** How many learners had the balloons for the figure. */
  #makeTogether(figure: number, learners: number, tries: number, key: number): number {
    let made = 0;
    for (let learner = 0; learner < learners; learner++) {
      const own = keyed(key, purpose.hiddenMembers + learner);
      const whole = Math.floor(tries);
      const pieces = Math.max(1, whole + (keyedUniform(own, purpose.size) < tries - whole ? 1 : 0));
      const way = this.#wayInStock(figure, keyedUniform(own, purpose.colour));
      if (way === undefined) continue;
      for (let piece = 0; piece < pieces; piece++) this.#use(way, keyed(own, purpose.members + piece));
      made++;
    }
    return made;
  }
  #wayInStock(figure: number, u: number): Way | undefined {
    const line = this.line;
    const first = line.firstColourway[figure] ?? 0;
    const count = (line.firstColourway[figure + 1] ?? 0) - first;
    let asked = 0;
    while (u >= (line.colourwayTotals[first + asked] ?? 1)) asked++;
    for (let step = 0; step < count; step++) {
      const way = line.ways[first + ((asked + step) % count)];
      if (way?.pieces.every((piece) => (this.#stock[piece.item] ?? 0) >= piece.count)) return way;
    }
    return undefined;
  }
  #use(way: Way, key: number): void {
    let draws = 0;
    for (const { item, count, pops } of way.pieces)
      for (let piece = 0; piece < count; piece++) {
        this.#take(item);
        while (keyedUniform(key, purpose.firstPop + draws++) < pops) {
          this.pops++;
          this.#take(item);
        }
      }
  }
  #take(item: number): void {
    if ((this.#stock[item] ?? 0) <= 0) return;
    this.#stock[item] = (this.#stock[item] ?? 0) - 1;
    this.used[item] = (this.used[item] ?? 0) + 1;
  }
  #talking(key: number): number {
    return drawn(this.line.choosing, key, purpose.choosing) + drawn(this.line.handingOver, key, purpose.handingOver);
  }
}
