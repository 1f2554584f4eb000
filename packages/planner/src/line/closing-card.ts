import { keyed, keyedUniform } from '@twistwright/units';
import { drawn } from './durations.ts';
import type { LineModel } from './line-model.ts';
import { firstWayOf, type PreparedLine, prepareLine, type Way } from './prepared-line.ts';
import { purpose, stream } from './purpose.ts';

export interface ClosingCardOptions {
  readonly seed: number;
  readonly runs: number;
  /** Chance that everybody who still waits is done in time, for example 0.9; above 0, below 1. */
  readonly chance: number;
  /** Minutes between two rows; 5 if absent. */
  readonly step?: number;
  /** Minutes before the end by which the last one is to be done. Those of the closing rule, else 0, if absent. */
  readonly keptBackMinutes?: number;
}
export interface ClosingCardRow {
  /** Minutes from the start of the gig. */
  readonly minute: number;
  /** At most so many may be waiting, those in hand not counted. */
  readonly mayWait: number;
}

/**
 * For each time of the gig, how many may still be waiting so that with the chance asked for all of them are done by the end (less what is
 * kept back): the quantile, over the runs, of how many the artists get done from then on, each just free, with pace, fatigue of the hours
 * before, breaks and pops. With fixed times it is plain division: two minutes each and thirty waiting means one hour.
 * @example closingCard(model, { seed: 1, runs: 400, chance: 0.9 })[0]
 */
export function closingCard(model: LineModel, options: ClosingCardOptions): readonly ClosingCardRow[] {
  const step = options.step ?? 5;
  if (!(step > 0) || !(options.chance > 0 && options.chance < 1))
    throw new RangeError(`no card for chance ${options.chance}, step ${step}`);
  const line = prepareLine(model);
  const until = model.end - (options.keptBackMinutes ?? (model.closing.kind === 'work ahead' ? model.closing.keptBackMinutes : 0));
  const minutes = Array.from({ length: Math.floor(model.end / step) + 1 }, (_, row) => row * step);
  const done = minutes.map(() => new Int32Array(options.runs));
  for (let run = 0; run < options.runs; run++) {
    const guests = new GuestTimes(line, keyed(keyed(options.seed, run), stream.run));
    minutes.forEach((minute, row) => {
      (done[row] as Int32Array)[run] = doneBy(line, guests, minute, until);
    });
  }
  const rank = Math.max(0, Math.ceil((1 - options.chance) * options.runs) - 1);
  return minutes.map((minute, row) => ({ minute, mayWait: (done[row] as Int32Array).sort()[rank] ?? 0 }));
}

/** Minutes of talk and of hands for the first guest, the second, …; the same for every row of a run, so that the card never jumps up. */
class GuestTimes {
  readonly #line: PreparedLine;
  readonly #key: number;
  readonly #talk: number[] = [];
  readonly #hands: number[] = [];
  constructor(line: PreparedLine, key: number) {
    this.#line = line;
    this.#key = key;
  }
  talk(guest: number): number {
    this.#drawUpTo(guest);
    return this.#talk[guest] ?? 0;
  }
  hands(guest: number): number {
    this.#drawUpTo(guest);
    return this.#hands[guest] ?? 0;
  }
  #drawUpTo(guest: number): void {
    while (this.#talk.length <= guest) this.#draw(keyed(this.#key, purpose.members + this.#talk.length));
  }
  #draw(key: number): void {
    const line = this.#line;
    const figure = offeredFigure(line, key);
    const colours = (line.firstColourway[figure + 1] ?? 0) - (line.firstColourway[figure] ?? 0);
    const way = firstWayOf(line, figure);
    const colourTime = colours > 1 ? drawn(line.colourChoosing, key, purpose.colourChoosing) : 0;
    this.#hands.push(drawn(way.making, key, purpose.making) + popsOf(line, way, key) * way.redo);
    this.#talk.push(
      drawn(line.choosing, key, purpose.choosing) + colourTime + drawn(line.handingOver, key, purpose.handingOver) + way.drawing,
    );
  }
}
function offeredFigure(line: PreparedLine, key: number): number {
  for (let again = 0; again < 16; again++) {
    const u = keyedUniform(key, again === 0 ? purpose.asking : purpose.askingAgain + again - 1);
    const figure = line.figureTotals.findIndex((total) => u < total);
    if (line.offered[figure] === 1) return figure;
  }
  return Math.max(0, line.offered.indexOf(1));
}
function popsOf(line: PreparedLine, way: Way, key: number): number {
  if (!line.anyPops) return 0;
  let pops = 0;
  let draws = 0;
  for (const { count, pops: chance } of way.pieces)
    for (let piece = 0; piece < count; piece++) while (keyedUniform(key, purpose.firstPop + draws++) < chance) pops++;
  return pops;
}

/** How many of an endless line, counted from its head, are all done by `until` when everybody there becomes free at `from`. */
function doneBy(line: PreparedLine, guests: GuestTimes, from: number, until: number): number {
  const hands = line.model.artists.map((artist, a) => ({
    free: Math.max(from, artist.from ?? 0),
    pace: line.pace[a] ?? 1,
    worked: Math.max(0, from - (artist.from ?? 0) - pausesBefore(line, a, from)),
    pauses: (line.breaks[a] ?? []).filter((pause) => pause.minute >= from),
    fresh: line.freshMinutes[a] ?? 0,
    perMinute: line.fatiguePerMinute[a] ?? 0,
  }));
  const gone = line.model.artists.map((artist) => artist.until !== undefined && artist.until <= from);
  for (let guest = 0; ; guest++) {
    let next = -1;
    for (const [a, artist] of hands.entries()) {
      while (artist.pauses[0] !== undefined && artist.pauses[0].minute <= artist.free) artist.free += artist.pauses.shift()?.minutes ?? 0;
      if (!gone[a] && (next < 0 || artist.free < (hands[next]?.free ?? 0))) next = a;
    }
    const artist = hands[next];
    if (artist === undefined || artist.free >= until) return guest;
    const tired = 1 + Math.max(0, artist.worked - artist.fresh) * artist.perMinute;
    const minutes = guests.talk(guest) + guests.hands(guest) * artist.pace * tired;
    artist.free += minutes;
    artist.worked += minutes;
    if (artist.free > until + 1e-9) return guest;
  }
}
const pausesBefore = (line: PreparedLine, a: number, from: number): number =>
  (line.breaks[a] ?? []).reduce((sum, pause) => (pause.minute < from && pause.minutes < 1e9 ? sum + pause.minutes : sum), 0);
