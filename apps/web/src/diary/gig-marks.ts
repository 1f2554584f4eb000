import type { Gig } from '@twistwright/books';
import { addDays, daysBetween, type LocalDate, weekdayNames, weekdayOf } from '@twistwright/units';
import type { GigMark } from '../parts/marks.tsx';

/** What a forecast adds to the marks; missing while it is not known. */
export interface GigOutlook {
  /** Items of which too little is in store and on order. */
  readonly short: number;
  /** Items that are enough only with what is on order. */
  readonly awaited: number;
  /** Lines of the packing list. */
  readonly packingLines: number;
  readonly packedLines: number;
  /** Artists that the promise takes; missing if no number of them keeps it or it was not asked. */
  readonly artistsNeeded?: number | undefined;
}

/** The four marks of a gig with their words. */
export function marksOf(gig: Gig, today: LocalDate, clashes: boolean, outlook?: GigOutlook): readonly GigMark[] {
  return [agreedMark(gig), staffedMark(gig, clashes, outlook), stockedMark(outlook), packedMark(gig, today, outlook)];
}

function agreedMark(gig: Gig): GigMark {
  const agreement = gig.agreement;
  if (agreement?.state !== 'agreed')
    return {
      kind: 'agreed',
      state: agreement?.state === 'quoted' ? 'part' : 'open',
      word: agreement?.state === 'quoted' ? 'quoted' : 'not agreed',
    };
  const waits = (agreement.deposit ?? 0) > 0 && agreement.depositPaidOn === undefined;
  return waits ? { kind: 'agreed', state: 'part', word: 'deposit not in' } : { kind: 'agreed', state: 'done', word: 'agreed' };
}

function staffedMark(gig: Gig, clashes: boolean, outlook?: GigOutlook): GigMark {
  if (gig.artists.length === 0) return { kind: 'staffed', state: 'open', word: 'no artist' };
  if (clashes) return { kind: 'staffed', state: 'stop', word: 'times clash' };
  const needed = outlook?.artistsNeeded ?? 0;
  return needed > gig.artists.length
    ? { kind: 'staffed', state: 'part', word: `${gig.artists.length} of ${needed} artists` }
    : { kind: 'staffed', state: 'done', word: 'staffed' };
}

function stockedMark(outlook?: GigOutlook): GigMark {
  if (outlook === undefined) return { kind: 'stocked', state: 'open', word: 'not counted yet' };
  if (outlook.short > 0)
    return { kind: 'stocked', state: 'stop', word: `${outlook.short} ${outlook.short === 1 ? 'item' : 'items'} short` };
  return outlook.awaited > 0 ? { kind: 'stocked', state: 'part', word: 'on its way' } : { kind: 'stocked', state: 'done', word: 'stocked' };
}

function packedMark(gig: Gig, today: LocalDate, outlook?: GigOutlook): GigMark {
  const packed = outlook?.packedLines ?? gig.packed?.length ?? 0;
  if (packed === 0) return { kind: 'packed', state: 'open', word: packingWord(gig.day, today) };
  const total = outlook?.packingLines ?? 0;
  return total > 0 && packed >= total
    ? { kind: 'packed', state: 'done', word: 'packed' }
    : { kind: 'packed', state: 'part', word: total === 0 ? `packed ${packed}` : `packed ${packed} of ${total}` };
}

/** The day before is for packing. */
function packingWord(day: LocalDate, today: LocalDate): string {
  const left = daysBetween(today, day);
  if (left <= 0) return 'not packed';
  if (left === 1) return 'pack today';
  return left <= 7 ? `pack on ${weekdayNames[weekdayOf(addDays(day, -1)) - 1]}` : 'not packed';
}
