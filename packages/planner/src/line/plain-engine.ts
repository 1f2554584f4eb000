/**
 * The inner loop for a plain line (`prepared.plain`): one shared line, first come first served. There the start of every guest is known
 * on arrival, so one pass over the arrivals is the whole run; nothing waits in a list but the minutes at which people leave the line.
 * One long function on purpose: the compiler keeps what a run needs in registers only within one function, and this is the loop that the
 * sliders wait for. `as number` on a read of a typed array: the index is in range by construction.
 */
import { exp, keyed, keyedUniform, normalOf } from '@twistwright/units';
import { DrawStream } from './draw-stream.ts';
import { PartyStream } from './party-stream.ts';
import { guideCells, type Piece, type PreparedLine, type Way } from './prepared-line.ts';
import { purpose, stream } from './purpose.ts';
import { RunFindings } from './run-findings.ts';
import { Shelf } from './shelf.ts';

export class PlainEngine extends RunFindings {
  private readonly keepsWaits: boolean;
  private readonly parties: PartyStream;
  private readonly service: DrawStream;
  private readonly shelf: Shelf;
  private readonly free: Float64Array;
  private leaving: Float64Array = new Float64Array(256);

  constructor(line: PreparedLine, gridStep: number, keepsWaits: boolean) {
    super(line, gridStep);
    this.keepsWaits = keepsWaits;
    this.parties = new PartyStream(line);
    this.service = new DrawStream(1 + line.mostPieces);
    this.shelf = new Shelf(line, this.service, this.used);
    this.free = new Float64Array(line.artistCount);
  }

  play(seed: number, run: number): void {
    const { line, parties, service, shelf, free, busy, made, lengths, keepsWaits, gridStep } = this;
    const { twoStreams, warmUp, lastStart, closesAt, worksAhead, closingEnd, freeLength, joinChance, promise } = line;
    const { figureTotals, figureGuide, firstColourway, colourwayTotals, oneColourway, ways, pace, talkAfter, popsEachPiece, anyPops } =
      line;
    const tooMany = line.joinChance.length - 1;
    const artists = free.length;
    const minutesAhead = line.minutesEach / artists;
    const { stock, lacking } = shelf;
    const draws = parties.draws;
    const partyDraws = draws.uniforms;
    const members = purpose.members;
    parties.restart(seed, run);
    if (twoStreams) service.restart(seed, run, stream.service);
    shelf.restart();
    free.set(line.startsAt);
    busy.fill(0);
    made.fill(0);
    if (gridStep > 0) lengths.fill(0);
    const serviceDraws = service.uniforms;
    let leaving = this.leaving;
    let waiting = 0;
    let soonestOut = Number.POSITIVE_INFINITY;
    let arrivedCount = 0;
    let turnedAway = 0;
    let notJoined = 0;
    let gaveUp = 0;
    let unserved = 0;
    let disappointed = 0;
    let served = 0;
    let waitedCount = 0;
    let waitedLong = 0;
    let longestLine = 0;
    let popCount = 0;
    let waitMinutes = 0;
    let waitMinutesInVain = 0;
    let lastWait = 0;
    let longestWait = 0;
    let finish = 0;
    let closedAt = Math.min(line.end, closesAt);

    for (;;) {
      parties.findNext();
      const at = parties.at;
      if (at === Number.POSITIVE_INFINITY) break;
      const key = parties.key;
      const counts = at >= warmUp;
      const size = parties.size | 0;
      if (counts) {
        if (arrivedCount === 0) shelf.countFromHere();
        arrivedCount += size;
      }
      if (at >= soonestOut) {
        let still = 0;
        soonestOut = Number.POSITIVE_INFINITY;
        for (let i = 0; i < waiting; i++) {
          const out = leaving[i] as number;
          if (out > at) {
            leaving[still++] = out;
            if (out < soonestOut) soonestOut = out;
          }
        }
        waiting = still;
      }
      if (at >= closesAt || (worksAhead && at + (waiting + size) * minutesAhead > closingEnd)) {
        if (counts) turnedAway += size;
        if (at < closedAt) closedAt = at;
        continue;
      }
      if (twoStreams) draws.ready(2 + size);
      const joinLuck = twoStreams ? (partyDraws[draws.at++] as number) : waiting > freeLength ? keyedUniform(key, purpose.joining) : 0;
      if (waiting > freeLength && joinLuck >= (joinChance[Math.min(waiting, tooMany)] as number)) {
        if (counts) notJoined += size;
        continue;
      }
      parties.drawPatience();
      let sureUntil = parties.sureUntil;
      let leaves = Number.POSITIVE_INFINITY;
      let askAt = draws.at;
      if (waiting + size > leaving.length) leaving = this.roomFor(waiting + size);

      for (let member = 0; member < size; member++) {
        const ownKey = keyed(key, members + member);
        const askLuck = twoStreams ? (partyDraws[askAt++] as number) : keyedUniform(ownKey, purpose.asking);
        let figure = figureGuide[(askLuck * guideCells) | 0] as number;
        while (askLuck >= (figureTotals[figure] as number)) figure++;
        let artist = 0;
        let soonest = free[0] as number;
        for (let a = 1; a < artists; a++) {
          const other = free[a] as number;
          if (other < soonest) {
            soonest = other;
            artist = a;
          }
        }
        const start = Math.max(soonest, at);
        let out = start;
        if (start > sureUntil) {
          parties.settlePatience();
          sureUntil = Number.POSITIVE_INFINITY;
          leaves = parties.leaves;
        }
        if (leaves < start && leaves < lastStart) {
          out = leaves;
          if (counts) {
            gaveUp++;
            waitMinutesInVain += leaves - at;
            waitedCount++;
          }
        } else if (start >= lastStart) {
          out = Number.POSITIVE_INFINITY;
          if (counts) {
            unserved++;
            waitMinutesInVain += lastStart - at;
            waitedCount++;
          }
        } else {
          if (counts && start > at) waitedCount++;
          let colourway = figure;
          if (!oneColourway) {
            colourway = firstColourway[figure] as number;
            if ((firstColourway[figure + 1] as number) - colourway > 1) {
              const luck = keyedUniform(ownKey, purpose.colour);
              while (luck >= (colourwayTotals[colourway] as number)) colourway++;
            }
          }
          if (lacking[colourway] === 1) colourway = shelf.instead(figure, colourway, ownKey);
          if (colourway < 0) {
            if (counts) {
              disappointed++;
              waitMinutesInVain += start - at;
            }
          } else {
            const way = ways[colourway] as Way;
            const { making, pieces } = way;
            figure = way.figure;
            if (twoStreams) service.ready(1 + pieces.length);
            let drawAt = service.at;
            const makeLuck = twoStreams ? (serviceDraws[drawAt++] as number) : keyedUniform(ownKey, purpose.making);
            const minutesOfMaking = exp(making.first + making.second * normalOf(makeLuck));
            let pops = 0;
            if (popsEachPiece) {
              for (let i = 0; i < pieces.length; i++) {
                const { item, count, mostNeeded } = pieces[i] as Piece;
                const left = (stock[item] as number) - count;
                stock[item] = left;
                if (left < mostNeeded) shelf.noteLow(item);
              }
              if (anyPops) {
                const popLuck = keyedUniform(ownKey, purpose.firstPop);
                if (popLuck >= way.noPop) pops = shelf.popPieces(way, popLuck, ownKey, false);
              }
            } else {
              for (let i = 0; i < pieces.length; i++) {
                const { item, count, spoils, mostNeeded, number } = pieces[i] as Piece;
                const popLuck = twoStreams ? (serviceDraws[drawAt++] as number) : keyedUniform(ownKey, purpose.firstPop + number);
                let left = (stock[item] as number) - count;
                if (popLuck < spoils && left > 0) {
                  left--;
                  pops++;
                }
                stock[item] = left;
                if (left < mostNeeded) shelf.noteLow(item);
              }
            }
            service.at = drawAt;
            const hands = pops > 0 ? minutesOfMaking + pops * way.redo : minutesOfMaking;
            const minutes = way.talkBefore + hands * (pace[artist] as number) + way.drawing + talkAfter;
            const done = start + minutes;
            free[artist] = done;
            busy[artist] = (busy[artist] as number) + minutes;
            if (done > finish) finish = done;
            if (counts) {
              popCount += pops;
              made[figure] = (made[figure] as number) + 1;
              served++;
              const wait = start - at;
              waitMinutes += wait;
              lastWait = wait;
              if (wait > longestWait) longestWait = wait;
              if (wait > promise) waitedLong++;
              if (keepsWaits) {
                const cell = wait < 600 ? (wait * 2) | 0 : 1200;
                this.waitCounts[cell] = (this.waitCounts[cell] as number) + 1;
              }
            }
          }
        }
        if (out > at) {
          leaving[waiting++] = out;
          if (out < soonestOut) soonestOut = out;
          if (gridStep > 0) this.noteWaiting(at, out);
        }
      }
      if (twoStreams) draws.at = askAt;
      if (waiting > longestLine && counts) longestLine = waiting;
    }
    if (arrivedCount > 0) shelf.countUsed();
    if (gridStep > 0) for (let k = 1; k < lengths.length; k++) lengths[k] = (lengths[k] as number) + (lengths[k - 1] as number);
    this.arrived = arrivedCount;
    this.turnedAway = turnedAway;
    this.notJoined = notJoined;
    this.gaveUp = gaveUp;
    this.unserved = unserved;
    this.disappointed = disappointed;
    this.served = served;
    this.waited = waitedCount;
    this.waitedLong = waitedLong;
    this.longestLine = longestLine;
    this.pops = popCount;
    this.waitMinutes = waitMinutes;
    this.waitMinutesOfAll = waitMinutes + waitMinutesInVain;
    this.lastWait = lastWait;
    this.longestWait = longestWait;
    this.finish = finish;
    this.closedAt = closedAt;
  }

  /** Somebody waits from `at` until `out`: one more at the first note from `at` on, one fewer at the first from `out` on. */
  private noteWaiting(at: number, out: number): void {
    const from = Math.ceil(at / this.gridStep);
    const to = Math.ceil(out / this.gridStep);
    if (from >= this.lengths.length || from === to) return;
    this.lengths[from] = (this.lengths[from] as number) + 1;
    if (to < this.lengths.length) this.lengths[to] = (this.lengths[to] as number) - 1;
  }
  private roomFor(people: number): Float64Array {
    const longer = new Float64Array(2 * people);
    longer.set(this.leaving);
    this.leaving = longer;
    return longer;
  }
}
