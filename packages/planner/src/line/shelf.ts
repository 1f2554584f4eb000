import { keyedUniform } from '@twistwright/units';
import type { DrawStream } from './draw-stream.ts';
import type { PreparedLine } from './prepared-line.ts';
import { purpose } from './purpose.ts';

const nobody = -1;

/** The balloons at hand during one run: what is there, what was used, what is taken instead. `as number`: indexes are in range by construction. */
export class Shelf {
  /** Items used by guests who count. */
  readonly used: Int32Array;
  readonly stock: Int32Array;
  /** 1 for each colourway that lacks a balloon. Stock only falls during a run, so a mark stays. */
  readonly lacking: Uint8Array;
  private readonly before: Int32Array;
  private readonly line: PreparedLine;
  /** The stream of service, where there are two streams. */
  private readonly service: DrawStream;

  constructor(line: PreparedLine, service: DrawStream) {
    this.line = line;
    this.service = service;
    this.used = new Int32Array(line.itemCount);
    this.stock = new Int32Array(line.itemCount);
    this.before = new Int32Array(line.itemCount);
    this.lacking = new Uint8Array(line.figureOf.length);
  }
  restart(): void {
    this.used.fill(0);
    this.stock.set(this.line.stock);
    this.lacking.set(this.line.lackingAtStart);
  }
  /** Notes what is there now as the stock to count from; {@link countUsed} then finds what was used since. */
  countFromHere(): void {
    this.before.set(this.stock);
  }
  countUsed(): void {
    for (let item = 0; item < this.used.length; item++) this.used[item] = (this.before[item] as number) - (this.stock[item] as number);
  }
  inStock(colourway: number): boolean {
    return this.lacking[colourway] === 0;
  }
  /** To be told when an item falls below {@link PreparedLine.mostNeeded}: marks the colourways that can no longer be made. */
  noteLow(item: number): void {
    const line = this.line;
    const left = this.stock[item] as number;
    const end = line.firstUse[item + 1] as number;
    for (let use = line.firstUse[item] as number; use < end; use++)
      if (left < (line.useCount[use] as number)) this.lacking[line.useColourway[use] as number] = 1;
  }
  /** What a guest takes whose wish is out of stock; `nobody` if nothing. */
  instead(figure: number, asked: number, key: number): number {
    const line = this.line;
    const first = line.firstColourway[figure] as number;
    const end = line.firstColourway[figure + 1] as number;
    if (end - first > 1 && (line.otherColour >= 1 || keyedUniform(key, purpose.otherColour) < line.otherColour)) {
      const other = this.anyInStock(first, end, asked, keyedUniform(key, purpose.otherColourWhich));
      if (other !== nobody) return other;
    }
    if (line.otherFigure < 1 && keyedUniform(key, purpose.otherFigure) >= line.otherFigure) return nobody;
    return line.searchInOrder ? this.nextFigureInOrder(figure) : this.otherFigureByShare(figure, key);
  }
  private nextFigureInOrder(figure: number): number {
    const line = this.line;
    for (let step = 1; step < line.figureCount; step++) {
      const other = (figure + step) % line.figureCount;
      if (line.offered[other] === 0) continue;
      const end = line.firstColourway[other + 1] as number;
      for (let c = line.firstColourway[other] as number; c < end; c++) if (this.inStock(c)) return c;
    }
    return nobody;
  }
  private otherFigureByShare(figure: number, key: number): number {
    const line = this.line;
    const u = keyedUniform(key, purpose.otherFigureWhich);
    const v = keyedUniform(key, purpose.otherColourWhich);
    let sum = 0;
    for (let other = 0; other < line.figureCount; other++) if (this.canMake(other, figure)) sum += line.figureShares[other] as number;
    let left = u * sum;
    let chosen = nobody;
    for (let other = 0; other < line.figureCount && left >= 0; other++)
      if (this.canMake(other, figure)) {
        chosen = other;
        left -= line.figureShares[other] as number;
      }
    return chosen === nobody
      ? nobody
      : this.anyInStock(line.firstColourway[chosen] as number, line.firstColourway[chosen + 1] as number, nobody, v);
  }
  private canMake(figure: number, butNot: number): boolean {
    const line = this.line;
    if (figure === butNot || line.offered[figure] === 0) return false;
    const end = line.firstColourway[figure + 1] as number;
    for (let c = line.firstColourway[figure] as number; c < end; c++) if (this.inStock(c)) return true;
    return false;
  }
  private anyInStock(first: number, end: number, butNot: number, u: number): number {
    const shares = this.line.colourwayShares;
    let sum = 0;
    for (let c = first; c < end; c++) if (c !== butNot && this.inStock(c)) sum += shares[c] as number;
    let left = u * sum;
    let chosen = nobody;
    for (let c = first; c < end && left >= 0; c++)
      if (c !== butNot && this.inStock(c)) {
        chosen = c;
        left -= shares[c] as number;
      }
    return chosen;
  }
  private take(item: number, count: number, counts: boolean): void {
    const left = (this.stock[item] as number) - count;
    this.stock[item] = left;
    if (left < (this.line.mostNeeded[item] as number)) this.noteLow(item);
    if (counts) this.used[item] = (this.used[item] as number) + count;
  }
  /** Takes the balloons of a recipe with at most one more of each line spoiled; the number spoiled. */
  useLines(colourway: number, key: number, counts: boolean): number {
    const line = this.line;
    const stock = this.stock;
    const end = line.firstLine[colourway + 1] as number;
    let pops = 0;
    for (let l = line.firstLine[colourway] as number; l < end; l++) {
      const item = line.lineItem[l] as number;
      let count = line.lineCount[l] as number;
      const there = stock[item] as number;
      const luck = line.twoStreams ? this.service.uniform() : keyedUniform(key, purpose.firstPop + l);
      if (luck < (line.lineSpoils[l] as number) && there > count) {
        count++;
        pops++;
      }
      stock[item] = there - count;
      if (there - count < (line.mostNeeded[item] as number)) this.noteLow(item);
      if (counts) this.used[item] = (this.used[item] as number) + count;
    }
    return pops;
  }
  /** Takes the balloons of a recipe, each of which may pop and be made again; the number of pops. */
  usePieces(colourway: number, key: number, counts: boolean): number {
    const line = this.line;
    const end = line.firstLine[colourway + 1] as number;
    const first = line.firstLine[colourway] as number;
    for (let l = first; l < end; l++) this.take(line.lineItem[l] as number, line.lineCount[l] as number, counts);
    if (!line.anyPops) return 0;
    const u = keyedUniform(key, purpose.firstPop);
    return u < (line.noPop[colourway] as number) ? 0 : this.popPieces(colourway, u, key, counts);
  }
  /** Finds which pieces popped, given that one did: `u` walks the chance that none has popped yet; after the first, luck is drawn afresh. */
  popPieces(colourway: number, u: number, key: number, counts: boolean): number {
    const line = this.line;
    const first = line.firstLine[colourway] as number;
    const end = line.firstLine[colourway + 1] as number;
    let whole = 1;
    let pops = 0;
    let draws = 1;
    for (let l = first; l < end; l++) {
      const item = line.lineItem[l] as number;
      const chance = line.linePops[l] as number;
      const count = line.lineCount[l] as number;
      for (let piece = 0; piece < count; piece++) {
        let popped = false;
        if (pops === 0) {
          whole *= 1 - chance;
          popped = u >= whole;
        } else popped = keyedUniform(key, purpose.firstPop + draws++) < chance;
        while (popped) {
          pops++;
          if ((this.stock[item] as number) > 0) this.take(item, 1, counts);
          popped = keyedUniform(key, purpose.firstPop + draws++) < chance;
        }
      }
    }
    return pops;
  }
}
