import { keyedUniform } from '@twistwright/units';
import type { DrawStream } from './draw-stream.ts';
import type { Piece, PreparedLine, Way } from './prepared-line.ts';
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

  constructor(line: PreparedLine, service: DrawStream, used: Int32Array) {
    this.line = line;
    this.service = service;
    this.used = used;
    this.stock = new Int32Array(line.itemCount);
    this.before = new Int32Array(line.itemCount);
    this.lacking = new Uint8Array(line.ways.length);
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
  /** To be told when an item falls below {@link Piece.mostNeeded}: marks the colourways that can no longer be made. */
  noteLow(item: number): void {
    const left = this.stock[item] as number;
    for (const { colourway, count } of this.line.uses[item] ?? []) if (left < count) this.lacking[colourway] = 1;
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
  private take({ item, mostNeeded }: Piece, count: number, counts: boolean): void {
    const left = (this.stock[item] as number) - count;
    this.stock[item] = left;
    if (left < mostNeeded) this.noteLow(item);
    if (counts) this.used[item] = (this.used[item] as number) + count;
  }
  /** Takes the balloons of a recipe with at most one more of each line spoiled; the number spoiled. */
  useLines({ pieces }: Way, key: number, counts: boolean): number {
    const { twoStreams } = this.line;
    let pops = 0;
    for (const piece of pieces) {
      const luck = twoStreams ? this.service.uniform() : keyedUniform(key, purpose.firstPop + piece.number);
      const spoiled = luck < piece.spoils && (this.stock[piece.item] as number) > piece.count ? 1 : 0;
      pops += spoiled;
      this.take(piece, piece.count + spoiled, counts);
    }
    return pops;
  }
  /** Takes the balloons of a recipe, each of which may pop and be made again; the number of pops. */
  usePieces(way: Way, key: number, counts: boolean): number {
    for (const piece of way.pieces) this.take(piece, piece.count, counts);
    if (!this.line.anyPops) return 0;
    const u = keyedUniform(key, purpose.firstPop);
    return u < way.noPop ? 0 : this.popPieces(way, u, key, counts);
  }
  /** Finds which pieces popped, given that one did: `u` walks the chance that none has popped yet; after the first, luck is drawn afresh. */
  popPieces({ pieces }: Way, u: number, key: number, counts: boolean): number {
    let whole = 1;
    let pops = 0;
    let draws = 1;
    for (const piece of pieces) {
      const chance = piece.pops;
      for (let i = 0; i < piece.count; i++) {
        let popped = false;
        if (pops === 0) {
          whole *= 1 - chance;
          popped = u >= whole;
        } else popped = keyedUniform(key, purpose.firstPop + draws++) < chance;
        while (popped) {
          pops++;
          if ((this.stock[piece.item] as number) > 0) this.take(piece, 1, counts);
          popped = keyedUniform(key, purpose.firstPop + draws++) < chance;
        }
      }
    }
    return pops;
  }
}
