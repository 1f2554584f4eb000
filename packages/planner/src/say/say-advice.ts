import type { Gig } from '@twistwright/books';
import type { Advice } from '../plan/index.ts';
import { clockAt, count, counted, listed, range } from './numbers.ts';

/** What the advice comes to, a sentence each: hands, closing, menu. */
export function sayAdvice(gig: Gig, advice: Advice, nameOf: (figure: string) => string): readonly string[] {
  switch (gig.kind) {
    case 'class':
      return ['A class has no line: its lessons say how long it lasts.'];
    case 'made to order':
      return [sayPieces(advice)];
    default:
      return [sayArtists(advice), sayCard(gig, advice), sayMenu(advice, nameOf)];
  }
}

function sayPieces({ artists, promise }: Advice): string {
  const words = `${percent(promise.shareServed)} of the pieces are done in time`;
  return artists.artists === undefined
    ? `Not even ${counted(artists.tried.length, 'artist')} have ${words.replace(' are', '')}.`
    : `So that ${words}, it takes ${counted(artists.artists, 'artist')}.`;
}

function sayArtists({ artists, promise }: Advice): string {
  const words = `${percent(promise.shareWithin)} of the guests wait at most ${promise.waitMinutes} minutes and ${percent(promise.shareServed)} of those who come are served`;
  if (artists.artists === undefined) return `Not even ${counted(artists.tried.length, 'artist')} keep the promise that ${words}.`;
  const at = artists.tried.find((tried) => tried.artists === artists.artists);
  const kept =
    at === undefined ? '' : ` With ${artists.artists} it is ${percent(at.shareWithin.mean)} and ${percent(at.shareServed.mean)}.`;
  return `So that ${words}, it takes ${counted(artists.artists, 'artist')}.${kept}`;
}

/** The card at a half, a quarter and a twelfth of the time before the end. */
function sayCard(gig: Gig, { card, cardChance }: Advice): string {
  const end = card[card.length - 1]?.minute ?? 0;
  const shown = [0.5, 0.75, 0.9].flatMap((part) => card.filter((row) => row.minute <= part * end).slice(-1));
  const rows = shown.map((row) => `${row.mayWait} at ${clockAt(gig.starts, row.minute)}`);
  return `So that everybody is done in time in ${Math.round(10 * cardChance)} of 10 cases, at most so many may wait: ${listed(rows)}.`;
}

function sayMenu({ menu }: Advice, nameOf: (figure: string) => string): string {
  if (menu.drop.length === 0 || menu.gain < 0.005) return 'The menu suits this crowd and this time as it is.';
  return `Without ${listed(menu.drop.map(nameOf))} the menu would serve ${count(menu.served.p50)} (${range(menu.served)}) instead of ${count(menu.servedNow.p50)}, and give ${percent(menu.gain)} more of what people wish for${menu.how === 'search' ? ' (found by search)' : ''}.`;
}

const percent = (share: number): string => `${Math.round(100 * share)} %`;
