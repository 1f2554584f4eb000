import { exp, keyed, keyedUniform, normalOf } from '@twistwright/units';
import { drawn, gammaOf, vary } from './durations.ts';
import { durationKind, type PreparedLine, type Way } from './prepared-line.ts';
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
  /** Draws the making from what belongs to the key. */
  drawMaking({ making: { kind, first, second } }: Way, key: number): void {
    if (kind === durationKind.logNormal) this.making = exp(first + second * normalOf(keyedUniform(key, purpose.making)));
    else if (kind === durationKind.gamma) this.making = gammaOf(second, keyed(key, purpose.making)) * (first / second);
    else this.making = vary(kind, first, second, keyedUniform(key, purpose.making));
  }
  /** The making that belongs to this luck, of any kind but gamma; with two streams. */
  takeMaking({ making: { kind, first, second } }: Way, luck: number): void {
    this.making = vary(kind, first, second, luck);
  }
  /** Draws the time before and after making. */
  drawTalk({ figure, talkBefore }: Way, key: number): void {
    const line = this.line;
    if (line.talkIsFixed) {
      this.before = talkBefore;
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
