import { exp, keyed, keyedUniform, normalOf } from '@twistwright/units';
import { drawn, gammaOf, vary } from './durations.ts';
import { durationKind, type PreparedLine } from './prepared-line.ts';
import { purpose } from './purpose.ts';

/**
 * The minutes of one service, left in fields: a number that a function returns is boxed, one in a field is not. `as number`: indexes are in
 * range by construction.
 */
export class ServiceTimes {
  /** Making, before pace and weather. */
  making = 0.5;
  /** Choosing the figure and its colours. */
  before = 0.5;
  /** Handing over. */
  after = 0.5;
  private readonly line: PreparedLine;

  constructor(line: PreparedLine) {
    this.line = line;
  }
  /** Draws the making of a figure from `luck` where there are two streams, else from what belongs to the key. */
  drawMaking(figure: number, key: number): void {
    const line = this.line;
    const first = line.makingFirst[figure] as number;
    const second = line.makingSecond[figure] as number;
    const kind = line.makingKind[figure] as number;
    if (kind === durationKind.logNormal) this.making = exp(first + second * normalOf(keyedUniform(key, purpose.making)));
    else if (kind === durationKind.gamma) this.making = gammaOf(second, keyed(key, purpose.making)) * (first / second);
    else this.making = vary(kind, first, second, keyedUniform(key, purpose.making));
  }
  takeMaking(figure: number, luck: number): void {
    const line = this.line;
    const second = line.makingSecond[figure] as number;
    this.making = vary(line.makingKind[figure] as number, line.makingFirst[figure] as number, second, luck);
  }
  /** Draws the time before and after making. */
  drawTalk(figure: number, key: number): void {
    const line = this.line;
    if (line.talkIsFixed) {
      this.before = line.talkBefore[figure] as number;
      this.after = line.talkAfter;
      return;
    }
    const { choosing, colourChoosing, handingOver } = line;
    if (choosing.kind === durationKind.logNormal)
      this.before = exp(choosing.first + choosing.second * normalOf(keyedUniform(key, purpose.choosing)));
    else this.before = drawn(choosing, key, purpose.choosing);
    const colours = (line.firstColourway[figure + 1] as number) - (line.firstColourway[figure] as number);
    if (colours > 1)
      this.before += colourChoosing.kind <= durationKind.fixed ? colourChoosing.first : drawn(colourChoosing, key, purpose.colourChoosing);
    this.after = handingOver.kind <= durationKind.fixed ? handingOver.first : drawn(handingOver, key, purpose.handingOver);
  }
}
