/**
 * The inner loop of the line simulation: one run of a prepared line at a time, without garbage. Events are not kept in a list. Between
 * two arrivals the line only moves forward, and where it is first come first served the next start is the later of "the first in line is
 * there" and "somebody is free"; so starts are worked off in order of time up to each arrival. `as number` on a read of a typed array:
 * the index is in range by construction.
 */
import { keyed, keyedUniform } from '@twistwright/units';
import { DrawStream } from './draw-stream.ts';
import { drawn } from './durations.ts';
import type { ListedParty, Wish } from './line-model.ts';
import { PartyStream } from './party-stream.ts';
import { durationKind, guideCells, type PreparedLine, type Way } from './prepared-line.ts';
import { purpose, stream } from './purpose.ts';
import { RunFindings } from './run-findings.ts';
import { ServiceTimes } from './service-times.ts';
import { Shelf } from './shelf.ts';

const nobody = -1;
export class LineEngine extends RunFindings {
  /** Whether {@link waitCounts} is kept. */
  private readonly keepsWaits: boolean;

  // The guests of the run, by index in order of arrival.
  private capacity = 256;
  private guests = 0;
  private partyCount = 0;
  private arrivedAt = new Float64Array(this.capacity);
  private leavesAt = new Float64Array(this.capacity);
  private key = new Int32Array(this.capacity);
  private figure = new Int32Array(this.capacity);
  private colourway = new Int32Array(this.capacity);
  private next = new Int32Array(this.capacity);
  private party = new Int32Array(this.capacity);

  // The lines as linked lists of guests: one for each artist, and the shared one last.
  private readonly shared: number;
  private readonly head: Int32Array;
  private readonly tail: Int32Array;
  private readonly inLine: Int32Array;
  private waiting = 0;
  private soonestLeave = 0.5;

  // The artists.
  private readonly free: Float64Array;
  private readonly breakAt: Float64Array;
  private readonly breakIndex: Int32Array;
  private soonestBreak = 0.5;
  private breaksPending = false;

  private readonly shelf: Shelf;
  private readonly times: ServiceTimes;
  private readonly preMadeLeft: Int32Array;
  private preMadeTotal = 0;
  private readonly figureAdded: Float64Array;
  private readonly colourAdded: Float64Array;
  private figureAddedSum = 0.5;

  private gridAt = 0.5;
  private gridIndex = 0;

  // Where arrivals come from.
  private readonly parties: PartyStream;
  private readonly arrivalsStream: DrawStream;
  private readonly serviceStream = new DrawStream();
  private runKey = 0;
  private seed = 0;
  private run = 0;
  private nextAt = 0.5;
  private nextKey = 0;
  private partiesListed = 0;
  private guestsListed = 0;
  private readonly listed: readonly ListedParty[];

  // Visits that are known to come (guests who return, groups that a strolling artist will find), latest first.
  private readonly comingAt: number[] = [];
  private readonly coming: Coming[] = [];
  private readonly tableFreeAt: Float64Array;

  constructor(line: PreparedLine, gridStep: number, keepsWaits: boolean) {
    super(line, gridStep);
    this.keepsWaits = keepsWaits;
    const artists = line.artistCount;
    this.shelf = new Shelf(line, this.serviceStream, this.used);
    this.times = new ServiceTimes(line);
    this.shared = artists;
    this.head = new Int32Array(artists + 1);
    this.tail = new Int32Array(artists + 1);
    this.inLine = new Int32Array(artists + 1);
    this.free = new Float64Array(artists);
    this.breakAt = new Float64Array(artists);
    this.breakIndex = new Int32Array(artists);
    this.preMadeLeft = new Int32Array(line.ways.length);
    this.figureAdded = new Float64Array(line.figureCount);
    this.colourAdded = new Float64Array(line.colourCount);
    this.tableFreeAt = new Float64Array(line.tableCount);
    const arrivals = line.model.arrivals;
    this.listed = arrivals.kind === 'list' ? [...arrivals.parties].sort((a, b) => a.minute - b.minute) : [];
    this.parties = new PartyStream(line);
    this.arrivalsStream = this.parties.draws;
  }

  play(seed: number, run: number): void {
    this.restart(seed, run);
    for (;;) {
      const coming = this.soonestComing();
      const limit = Math.min(this.nextAt, coming);
      this.advance(limit);
      if (this.soonestComing() < limit) continue;
      if (limit === Number.POSITIVE_INFINITY) break;
      if (coming <= this.nextAt) this.admitComing();
      else this.admitNext();
    }
    this.settleRest();
  }

  private restart(seed: number, run: number): void {
    const line = this.line;
    this.seed = seed;
    this.run = run;
    this.runKey = keyed(keyed(seed, run), stream.run);
    this.clear();
    this.guests = 0;
    this.partyCount = 0;
    this.head.fill(nobody);
    this.tail.fill(nobody);
    this.inLine.fill(0);
    this.waiting = 0;
    this.soonestLeave = Number.POSITIVE_INFINITY;
    this.free.set(line.startsAt);
    this.shelf.restart();
    this.figureAdded.fill(0);
    this.colourAdded.fill(0);
    this.figureAddedSum = 0;
    this.gridAt = this.gridStep > 0 ? 0 : Number.POSITIVE_INFINITY;
    this.gridIndex = 0;
    this.comingAt.length = 0;
    this.coming.length = 0;
    this.tableFreeAt.fill(0);
    this.breakIndex.fill(0);
    for (let a = 0; a < line.artistCount; a++) this.breakAt[a] = line.breaks[a]?.[0]?.minute ?? Number.POSITIVE_INFINITY;
    this.noteSoonestBreak();
    this.makeBeforehand();
    this.restartArrivals();
  }

  // ---------------------------------------------------------------- arrivals

  private restartArrivals(): void {
    const line = this.line;
    this.nextAt = Number.POSITIVE_INFINITY;
    this.partiesListed = 0;
    this.guestsListed = 0;
    this.parties.restart(this.seed, this.run);
    if (line.twoStreams) this.serviceStream.restart(this.seed, this.run, stream.service);
    switch (line.model.arrivals.kind) {
      case 'found':
        for (let a = 0; a < line.artistCount; a++) this.lookForGroup(a);
        return;
      case 'class':
        throw new Error('a class is played by playClass');
      default:
        break;
    }
    this.findNext();
  }
  private findNext(): void {
    const arrivals = this.line.model.arrivals;
    if (arrivals.kind === 'stream') {
      this.parties.findNext();
      this.nextAt = this.parties.at;
      this.nextKey = this.parties.key;
      return;
    }
    const number = this.partiesListed++;
    this.nextKey = keyed(this.runKey, purpose.members + number);
    if (arrivals.kind === 'list') this.nextAt = this.listed[number]?.minute ?? Number.POSITIVE_INFINITY;
    else if (arrivals.kind === 'at start') this.nextAt = this.guestsListed < arrivals.guests ? 0 : Number.POSITIVE_INFINITY;
    if (this.nextAt >= this.line.end) this.nextAt = Number.POSITIVE_INFINITY;
  }
  private admitNext(): void {
    const at = this.nextAt;
    const key = this.nextKey;
    const arrivals = this.line.model.arrivals;
    if (arrivals.kind === 'list') {
      const guests = this.listed[this.partiesListed - 1]?.guests ?? [];
      this.admit(at, key, guests.length, guests, nobody);
    } else {
      let size = this.parties.size;
      if (arrivals.kind === 'at start') {
        size = Math.min(this.parties.sizeOf(key), arrivals.guests - this.guestsListed);
        this.guestsListed += size;
      }
      this.admit(at, key, size, undefined, nobody);
    }
    this.findNext();
  }
  // ---------------------------------------------------------------- joining

  /** A party of `size` stands before the line at minute `at`; `artist` is who found it, when strolling. Whether it joins. */
  private admit(at: number, key: number, size: number, wishes: readonly Wish[] | undefined, artist: number): boolean {
    const line = this.line;
    const counts = at >= line.warmUp;
    if (at >= this.soonestLeave) this.letGo(at);
    let party = size;
    if (line.hiddenShare > 0) {
      party += this.hiddenIn(key, size);
      if (counts) this.hidden += party - size;
    }
    if (counts) this.arrived += party;
    const to = artist !== nobody ? artist : line.ownLines ? this.shortestLine(at) : this.shared;
    const ahead = line.ownLines ? (this.inLine[to] as number) : this.waiting;
    const hands = line.ownLines ? 1 : line.artistCount;
    if (
      artist === nobody &&
      (at >= line.closesAt || (line.worksAhead && at + (ahead + party) * (line.minutesEach / hands) > line.closingEnd))
    ) {
      if (counts) this.turnedAway += party;
      if (at < this.closedAt) this.closedAt = at;
      return false;
    }
    const luck = line.twoStreams ? this.arrivalsStream.uniform() : ahead > line.freeLength ? keyedUniform(key, purpose.joining) : 0;
    if (ahead > line.freeLength && luck >= (line.joinChance[Math.min(ahead, line.joinChance.length - 1)] as number)) {
      if (counts) this.notJoined += party;
      return false;
    }
    if (artist === nobody && this.waiting + party > line.room - this.inHand(at)) {
      if (counts) this.notJoined += party;
      return false;
    }
    this.parties.at = at;
    this.parties.key = key;
    this.parties.drawPatience();
    this.parties.settlePatience();
    const leaves = this.parties.leaves;
    if (line.tableCount > 0 && !this.takeTable(at, leaves)) {
      if (counts) this.notJoined += party;
      return false;
    }
    if (leaves < this.soonestLeave) this.soonestLeave = leaves;
    if (this.guests + party > this.capacity) this.grow(this.guests + party);
    this.partyCount++;
    for (let member = 0; member < party; member++) {
      const wish = wishes?.[member];
      const ownKey = keyed(key, member < size ? purpose.members + member : purpose.hiddenMembers + member - size);
      this.join(to, at, leaves, ownKey, wish?.figure ?? nobody, wish?.colourway ?? nobody);
    }
    this.advance(at);
    if (this.waiting > this.longestLine && counts) this.longestLine = this.waiting;
    return true;
  }
  private join(to: number, at: number, leaves: number, key: number, figure: number, colourway: number): void {
    const g = this.guests++;
    const line = this.line;
    this.arrivedAt[g] = at;
    this.leavesAt[g] = leaves;
    this.key[g] = key;
    this.figure[g] = figure !== nobody ? figure : line.twoStreams ? this.figureAt(this.arrivalsStream.uniform()) : nobody;
    this.colourway[g] = colourway !== nobody && figure !== nobody ? (line.firstColourway[figure] as number) + colourway : nobody;
    this.next[g] = nobody;
    this.party[g] = this.partyCount;
    const tail = this.tail[to] as number;
    if (tail === nobody) this.head[to] = g;
    else this.next[tail] = g;
    this.tail[to] = g;
    this.inLine[to] = (this.inLine[to] as number) + 1;
    this.waiting++;
  }
  /** How many artists are busy with a guest at minute `at`. */
  private inHand(at: number): number {
    if (this.line.room === Number.POSITIVE_INFINITY) return 0;
    let busy = 0;
    for (let a = 0; a < this.free.length; a++) if ((this.free[a] as number) > at) busy++;
    return busy;
  }
  private hiddenIn(key: number, size: number): number {
    const { hiddenWhole, hiddenRest } = this.line;
    let hidden = size * hiddenWhole;
    for (let member = 0; member < size; member++)
      if (keyedUniform(keyed(key, purpose.members + member), purpose.hidden) < hiddenRest) hidden++;
    return hidden;
  }
  /** The artist with the fewest guests in line and in hand; the first of equals. */
  private shortestLine(at: number): number {
    let best = 0;
    let fewest = Number.POSITIVE_INFINITY;
    for (let a = 0; a < this.line.artistCount; a++) {
      const until = this.breakAt[a] as number;
      const gone = until <= at && this.line.breaks[a]?.[this.breakIndex[a] as number]?.minutes === Number.POSITIVE_INFINITY;
      const length = (this.inLine[a] as number) + ((this.free[a] as number) > at ? 1 : 0) + (gone ? 1e9 : 0);
      if (length < fewest) {
        fewest = length;
        best = a;
      }
    }
    return best;
  }
  private takeTable(at: number, leaves: number): boolean {
    const index = this.tableFreeAt.findIndex((free) => free <= at);
    if (index < 0) return false;
    this.tableFreeAt[index] = leaves + this.line.stayingMinutes;
    return true;
  }
  private grow(needed: number): void {
    while (this.capacity < needed) this.capacity *= 2;
    const longer = <T extends Float64Array | Int32Array>(old: T, made: T): T => {
      made.set(old);
      return made;
    };
    this.arrivedAt = longer(this.arrivedAt, new Float64Array(this.capacity));
    this.leavesAt = longer(this.leavesAt, new Float64Array(this.capacity));
    this.key = longer(this.key, new Int32Array(this.capacity));
    this.figure = longer(this.figure, new Int32Array(this.capacity));
    this.colourway = longer(this.colourway, new Int32Array(this.capacity));
    this.next = longer(this.next, new Int32Array(this.capacity));
    this.party = longer(this.party, new Int32Array(this.capacity));
  }

  // ---------------------------------------------------------------- the line moves

  /** Works off, in order of time, everything that starts at or before `limit`; stops early where a guest is to return before it. */
  private advance(limit: number): void {
    if (this.line.ownLines || this.line.atTables || this.line.found) this.advanceLines(limit);
    else this.advanceShared(limit);
    // Where somebody is to return before the limit, the line has not moved up to it yet; the next call does.
    if (this.gridAt < limit && this.soonestComing() >= limit) this.noteLengths(Math.min(limit, this.line.end + 1e-9));
  }
  private advanceShared(limit: number): void {
    const shared = this.shared;
    const free = this.free;
    const artists = free.length;
    const returns = this.line.returns !== undefined;
    for (;;) {
      const g = this.head[shared] as number;
      if (g === nobody) return;
      let artist = 0;
      let soonest = free[0] as number;
      for (let a = 1; a < artists; a++) {
        const other = free[a] as number;
        if (other < soonest) {
          soonest = other;
          artist = a;
        }
      }
      const arrived = this.arrivedAt[g] as number;
      const start = Math.max(soonest, arrived);
      if (start > limit || start >= this.line.lastStart) return;
      if (this.breaksPending && start >= this.soonestBreak) {
        this.takeBreaks(start);
        continue;
      }
      if (start > this.gridAt) {
        this.noteLengths(start);
        continue;
      }
      this.pop(shared, g);
      if ((this.leavesAt[g] as number) < start) this.countGaveUp(g);
      else {
        this.serve(g, artist);
        if (returns && this.soonestComing() < limit) return;
      }
    }
  }
  /** The same with a line for each artist; at tables an artist without guests takes the next table into the own line. */
  private advanceLines(limit: number): void {
    const shared = this.shared;
    for (;;) {
      let artist = nobody;
      let start = Number.POSITIVE_INFINITY;
      let takes = false;
      const first = this.head[shared] as number;
      for (let a = 0; a < shared; a++) {
        const own = this.head[a] as number;
        const g = own === nobody ? first : own;
        if (g === nobody) continue;
        const from = Math.max(this.free[a] as number, this.arrivedAt[g] as number);
        if (from < start || (from === start && takes && own !== nobody)) {
          start = from;
          artist = a;
          takes = own === nobody;
        }
      }
      if (artist === nobody || start > limit || start > this.soonestComing() || start >= this.line.lastStart) return;
      if (this.breaksPending && start >= this.soonestBreak) {
        this.takeBreaks(start);
        continue;
      }
      if (start > this.gridAt) {
        this.noteLengths(start);
        continue;
      }
      const g = this.head[takes ? shared : artist] as number;
      if ((this.leavesAt[g] as number) < start) {
        this.pop(takes ? shared : artist, g);
        this.countGaveUp(g);
      } else if (takes) this.goToTable(artist, g, start);
      else {
        this.pop(artist, g);
        this.serve(g, artist);
      }
      if (this.line.found && this.head[artist] === nobody) this.lookForGroup(artist);
    }
  }
  private pop(line: number, g: number): void {
    const next = this.next[g] as number;
    this.head[line] = next;
    if (next === nobody) this.tail[line] = nobody;
    this.inLine[line] = (this.inLine[line] as number) - 1;
    this.waiting--;
  }
  private goToTable(artist: number, first: number, start: number): void {
    const party = this.party[first];
    let g = first;
    let members = 0;
    let last = first;
    while (g !== nobody && this.party[g] === party) {
      last = g;
      members++;
      g = this.next[g] as number;
    }
    this.head[this.shared] = g;
    if (g === nobody) this.tail[this.shared] = nobody;
    this.inLine[this.shared] = (this.inLine[this.shared] as number) - members;
    this.next[last] = nobody;
    this.head[artist] = first;
    this.tail[artist] = last;
    this.inLine[artist] = members;
    this.free[artist] = start + drawn(this.line.walking, this.key[first] as number, purpose.walking);
  }
  /** A strolling artist walks on and will stand before a group. */
  private lookForGroup(artist: number): void {
    const arrivals = this.line.model.arrivals;
    if (arrivals.kind !== 'found' || (arrivals.guests !== undefined && this.guestsListed >= arrivals.guests)) return;
    while ((this.breakAt[artist] as number) <= Math.min(this.free[artist] as number, this.line.lastStart)) this.takeBreak(artist);
    const key = keyed(keyed(this.runKey, purpose.group + this.partiesListed++), purpose.group);
    const at = (this.free[artist] as number) + drawn(this.line.walking, key, purpose.walking);
    let size = this.parties.sizeOf(key);
    if (arrivals.guests !== undefined) size = Math.min(size, arrivals.guests - this.guestsListed);
    const tooLate = this.line.worksAhead && at + size * this.line.minutesEach > this.line.closingEnd;
    if (tooLate || at >= this.line.closesAt || !(at < this.line.lastStart)) return;
    this.guestsListed += size;
    this.free[artist] = at;
    this.expect(at, { key, size, artist, figure: nobody, colourway: nobody });
  }
  private admitComing(): void {
    const at = this.comingAt.pop() as number;
    const coming = this.coming.pop() as Coming;
    if (coming.artist === nobody && at >= this.line.warmUp) this.returned++;
    const wish = coming.figure === nobody ? undefined : [{ figure: coming.figure, colourway: coming.colourway }];
    if (coming.artist !== nobody) this.free[coming.artist] = Math.max(this.free[coming.artist] as number, at);
    const stays = this.admit(at, coming.key, coming.size, wish, coming.artist);
    if (coming.artist !== nobody && !stays) this.lookForGroup(coming.artist);
  }
  private soonestComing(): number {
    const count = this.comingAt.length;
    return count > 0 ? (this.comingAt[count - 1] as number) : Number.POSITIVE_INFINITY;
  }
  private expect(at: number, coming: Coming): void {
    const ats = this.comingAt;
    const visits = this.coming;
    let i = ats.length;
    ats.push(at);
    visits.push(coming);
    for (; i > 0 && (ats[i - 1] as number) <= at; i--) {
      ats[i] = ats[i - 1] as number;
      visits[i] = visits[i - 1] as Coming;
    }
    ats[i] = at;
    visits[i] = coming;
  }
  /** Takes out everybody whose patience has run out by minute `at`. */
  private letGo(at: number): void {
    let soonest = Number.POSITIVE_INFINITY;
    for (let line = 0; line <= this.shared; line++) {
      let before = nobody;
      const hadGuests = this.head[line] !== nobody;
      for (let g = this.head[line] as number; g !== nobody; ) {
        const next = this.next[g] as number;
        const leaves = this.leavesAt[g] as number;
        if (leaves <= at && leaves < this.line.lastStart) {
          if (before === nobody) this.head[line] = next;
          else this.next[before] = next;
          if (next === nobody) this.tail[line] = before;
          this.inLine[line] = (this.inLine[line] as number) - 1;
          this.waiting--;
          this.countGaveUp(g);
        } else {
          before = g;
          if (leaves < soonest) soonest = leaves;
        }
        g = next;
      }
      if (this.line.found && line < this.shared && hadGuests && this.head[line] === nobody) this.lookForGroup(line);
    }
    this.soonestLeave = soonest;
  }
  private noteLengths(before: number): void {
    while (this.gridAt < before && this.gridIndex < this.lengths.length) {
      if (this.gridAt >= this.soonestLeave) this.letGo(this.gridAt);
      this.lengths[this.gridIndex++] = this.waiting;
      this.gridAt += this.gridStep;
    }
    if (this.gridIndex === this.lengths.length) this.gridAt = Number.POSITIVE_INFINITY;
  }

  // ---------------------------------------------------------------- breaks

  private takeBreaks(at: number): void {
    for (let a = 0; a < this.free.length; a++) while ((this.breakAt[a] as number) <= at) this.takeBreak(a);
    this.noteSoonestBreak();
  }
  private takeBreak(a: number): void {
    const breaks = this.line.breaks[a] ?? [];
    const index = this.breakIndex[a] as number;
    this.free[a] = Math.max(this.free[a] as number, this.breakAt[a] as number) + (breaks[index]?.minutes ?? 0);
    this.breakIndex[a] = index + 1;
    this.breakAt[a] = breaks[index + 1]?.minute ?? Number.POSITIVE_INFINITY;
  }
  private noteSoonestBreak(): void {
    let soonest = Number.POSITIVE_INFINITY;
    for (let a = 0; a < this.breakAt.length; a++) soonest = Math.min(soonest, this.breakAt[a] as number);
    this.soonestBreak = soonest;
    this.breaksPending = soonest < Number.POSITIVE_INFINITY;
  }

  // ---------------------------------------------------------------- service

  private serve(g: number, artist: number): void {
    const line = this.line;
    const key = this.key[g] as number;
    const arrived = this.arrivedAt[g] as number;
    const free = this.free[artist] as number;
    const start = Math.max(free, arrived);
    const counts = arrived >= line.warmUp;
    if (counts) {
      this.waitMinutesOfAll += start - arrived;
      if (start > arrived) this.waited++;
    }
    let figure = this.figure[g] as number;
    if (figure === nobody) figure = this.askedFigure(key);
    let colourway = figure === nobody ? nobody : line.oneColourway ? figure : this.askedColourway(g, figure, key);
    if (this.preMadeTotal > 0 && colourway !== nobody && (this.preMadeLeft[colourway] as number) > 0) {
      this.handPreMade(g, artist, colourway);
      return;
    }
    if (colourway !== nobody && !this.shelf.inStock(colourway)) colourway = this.shelf.instead(figure, colourway, key);
    if (colourway === nobody) {
      if (counts) this.disappointed++;
      return;
    }
    const way = line.ways[colourway] as Way;
    figure = way.figure;
    const times = this.times;
    if (line.twoStreams && way.making.kind !== durationKind.gamma) times.takeMaking(way, this.serviceStream.uniform());
    else times.drawMaking(way, key);
    times.drawTalk(way, key);
    const pops = line.popsEachPiece ? this.shelf.usePieces(way, key, counts) : this.shelf.useLines(way, key, counts);
    let factor = line.pace[artist] as number;
    if (line.tires) factor *= this.tiredness(artist);
    const hands = pops > 0 ? times.making + pops * way.redo : times.making;
    const minutes = times.before + hands * factor + way.drawing + times.after;
    const done = start + minutes;
    this.free[artist] = done;
    this.busy[artist] = (this.busy[artist] as number) + minutes;
    if (done > this.finish) this.finish = done;
    if (counts) {
      this.pops += pops;
      this.made[figure] = (this.made[figure] as number) + 1;
      this.served++;
      const wait = start - arrived;
      this.waitMinutes += wait;
      this.lastWait = wait;
      if (wait > this.longestWait) this.longestWait = wait;
      if (wait > line.promise) this.waitedLong++;
      if (this.keepsWaits) this.noteWait(wait);
    }
    if (line.copies) this.handedOut(colourway, way.figure);
    if (line.returns !== undefined) this.mayReturn(artist, key, colourway, way.figure);
  }
  private noteWait(wait: number): void {
    const cell = wait < 600 ? (wait * 2) | 0 : 1200;
    this.waitCounts[cell] = (this.waitCounts[cell] as number) + 1;
  }
  private tiredness(artist: number): number {
    const worked = (this.busy[artist] as number) - (this.line.freshMinutes[artist] as number);
    return worked > 0 ? 1 + worked * (this.line.fatiguePerMinute[artist] as number) : 1;
  }

  // ---------------------------------------------------------------- asking

  private figureAt(u: number): number {
    const totals = this.line.figureTotals;
    let figure = this.line.figureGuide[(u * guideCells) | 0] as number;
    while (u >= (totals[figure] as number)) figure++;
    return figure;
  }
  private askedFigure(key: number): number {
    const line = this.line;
    let figure = this.figureCopied(key, purpose.asking);
    if (line.allOffered) return figure;
    for (let again = 0; again < 16 && line.offered[figure] === 0; again++) figure = this.figureCopied(key, purpose.askingAgain + again);
    return line.offered[figure] === 1 ? figure : line.offered.indexOf(1);
  }
  /** A figure by its share and by what was handed out before. */
  private figureCopied(key: number, what: number): number {
    const added = this.figureAddedSum;
    const u = keyedUniform(key, what);
    if (added === 0) return this.figureAt(u);
    const shares = this.line.figureShares;
    let left = u * (1 + added);
    const last = shares.length - 1;
    for (let figure = 0; figure < last; figure++) {
      left -= (shares[figure] as number) + (this.figureAdded[figure] as number);
      if (left < 0) return figure;
    }
    return last;
  }
  private askedColourway(g: number, figure: number, key: number): number {
    const wished = this.colourway[g] as number;
    if (wished !== nobody) return wished;
    const line = this.line;
    const first = line.firstColourway[figure] as number;
    const end = line.firstColourway[figure + 1] as number;
    if (end - first === 1) return first;
    if (line.colourUrn !== undefined) return this.colourwayCopied(first, end, key);
    const u = keyedUniform(key, purpose.colour);
    let colourway = first;
    while (u >= (line.colourwayTotals[colourway] as number)) colourway++;
    return colourway;
  }
  private colourwayCopied(first: number, end: number, key: number): number {
    const line = this.line;
    const u = keyedUniform(key, purpose.colour);
    let sum = 0;
    for (let c = first; c < end; c++) sum += (line.colourwayShares[c] as number) + (this.colourAdded[line.colourOf[c] as number] as number);
    let left = u * sum;
    for (let c = first; c < end - 1; c++) {
      left -= (line.colourwayShares[c] as number) + (this.colourAdded[line.colourOf[c] as number] as number);
      if (left < 0) return c;
    }
    return end - 1;
  }
  private handedOut(colourway: number, figure: number): void {
    const line = this.line;
    if (line.figureUrn !== undefined) {
      const { added, keeps } = line.figureUrn;
      if (keeps < 1) for (let f = 0; f < this.figureAdded.length; f++) this.figureAdded[f] = (this.figureAdded[f] as number) * keeps;
      this.figureAdded[figure] = (this.figureAdded[figure] as number) + added;
      this.figureAddedSum = this.figureAddedSum * keeps + added;
    }
    if (line.colourUrn !== undefined) {
      const { added, keeps } = line.colourUrn;
      if (keeps < 1) for (let c = 0; c < this.colourAdded.length; c++) this.colourAdded[c] = (this.colourAdded[c] as number) * keeps;
      const colour = line.colourOf[colourway] as number;
      this.colourAdded[colour] = (this.colourAdded[colour] as number) + added;
    }
  }

  // ---------------------------------------------------------------- made beforehand

  private makeBeforehand(): void {
    const line = this.line;
    this.preMadeTotal = 0;
    if (line.preMade.length === 0) return;
    this.preMadeLeft.fill(0);
    let number = 0;
    for (const { figure, colourway, count } of line.preMade) {
      const c = (line.firstColourway[figure] as number) + colourway;
      const way = line.ways[c] as Way;
      for (let i = 0; i < count; i++) {
        if (!this.shelf.inStock(c)) break;
        const key = keyed(this.runKey, purpose.preMade + number++);
        this.pops += line.popsEachPiece ? this.shelf.usePieces(way, key, true) : this.shelf.useLines(way, key, true);
        this.preMadeLeft[c] = (this.preMadeLeft[c] as number) + 1;
        this.preMadeTotal++;
        this.made[figure] = (this.made[figure] as number) + 1;
      }
    }
  }
  private handPreMade(g: number, artist: number, colourway: number): void {
    this.preMadeLeft[colourway] = (this.preMadeLeft[colourway] as number) - 1;
    this.preMadeTotal--;
    const line = this.line;
    const key = this.key[g] as number;
    const arrived = this.arrivedAt[g] as number;
    const start = Math.max(this.free[artist] as number, arrived);
    const way = line.ways[colourway] as Way;
    this.times.drawTalk(way, key);
    const done = start + this.times.before + this.times.after;
    this.free[artist] = done;
    this.busy[artist] = (this.busy[artist] as number) + done - start;
    if (done > this.finish) this.finish = done;
    if (arrived >= line.warmUp) {
      const wait = start - arrived;
      this.served++;
      this.waitMinutes += wait;
      this.lastWait = wait;
      if (wait > this.longestWait) this.longestWait = wait;
      if (wait > line.promise) this.waitedLong++;
      if (this.keepsWaits) this.noteWait(wait);
    }
    if (line.copies) this.handedOut(colourway, way.figure);
    if (line.returns !== undefined) this.mayReturn(artist, key, colourway, way.figure);
  }

  // ---------------------------------------------------------------- after service

  private mayReturn(artist: number, key: number, colourway: number, figure: number): void {
    const line = this.line;
    const done = this.free[artist] as number;
    const returns = line.returns;
    if (returns === undefined) return;
    const again = keyed(key, purpose.comesBack);
    if (keyedUniform(key, purpose.repair) < returns.repairChance) {
      const at = done + drawn(line.repairAfter, key, purpose.repairAfter);
      const wish = colourway - (line.firstColourway[figure] as number);
      if (at < line.end) this.expect(at, { key: again, size: 1, artist: nobody, figure, colourway: wish });
    } else if (!returns.oneEach && keyedUniform(key, purpose.repeat) < returns.repeatChance) {
      const at = done + drawn(line.repeatAfter, key, purpose.repeatAfter);
      if (at < line.end) this.expect(at, { key: again, size: 1, artist: nobody, figure: nobody, colourway: nobody });
    }
  }
  private countGaveUp(g: number): void {
    const arrived = this.arrivedAt[g] as number;
    if (arrived < this.line.warmUp) return;
    this.gaveUp++;
    const wait = (this.leavesAt[g] as number) - arrived;
    this.waitMinutesOfAll += wait;
    if (wait > 0) this.waited++;
  }
  /** Those still in line when nobody is started any more: gone before that, or unserved. */
  private settleRest(): void {
    if (this.gridAt < Number.POSITIVE_INFINITY) this.noteLengths(this.line.end + 1e-9);
    for (let line = 0; line <= this.shared; line++)
      for (let g = this.head[line] as number; g !== nobody; g = this.next[g] as number) {
        if ((this.leavesAt[g] as number) < this.line.lastStart) this.countGaveUp(g);
        else if ((this.arrivedAt[g] as number) >= this.line.warmUp) {
          this.unserved++;
          this.waitMinutesOfAll += this.line.lastStart - (this.arrivedAt[g] as number);
          this.waited++;
        }
      }
  }
}

/** A visit that is known to come: by whom it was found, or what is to be made again. */
interface Coming {
  readonly key: number;
  readonly size: number;
  readonly artist: number;
  readonly figure: number;
  readonly colourway: number;
}
