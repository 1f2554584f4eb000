import { type Gig, planningSettingsOf } from '@twistwright/books';
import { comingGigs, type Forecast, gigAfter, type LineSamples } from '@twistwright/planner';
import type { Answer, Ask } from './ask.ts';
import type { GigView } from './gig-view.ts';
import { PlayedLines } from './played-lines.ts';
import { deskFor, type PlanningDesk, viewOfGig } from './view-of-gig.ts';

/** Tries for the first answer, while a finger moves; then for the next one. The last step is what the book asks for. */
const quickRuns = 100;
const middleRuns = 600;
/** Tries when other numbers of artists are looked at, and the most artists that are. */
const artistRuns = 400;
const mostArtists = 5;

interface OpenDesk {
  readonly desk: PlanningDesk;
  readonly played: PlayedLines;
}
let open: OpenDesk | undefined;
/** The number of the question about a gig that is being answered. */
let gigNumber = 0;
let outlookNumber = 0;

const tell = (answer: Answer): void => postMessage(answer);
/** Lets newer questions in. */
const breathe = (): Promise<void> =>
  new Promise((go) => {
    const channel = new MessageChannel();
    channel.port1.onmessage = () => go();
    channel.port2.postMessage(undefined);
  });

addEventListener('message', (event: MessageEvent<Ask>) => {
  const ask = event.data;
  if (ask.kind === 'open') {
    const desk = deskFor(ask.book, ask.today);
    open = { desk, played: new PlayedLines(desk, open?.played) };
  } else if (ask.kind === 'gig') void answerGig(ask);
  else void answerOutlooks(ask.number);
});

async function answerGig(ask: Extract<Ask, { kind: 'gig' }>): Promise<void> {
  gigNumber = ask.number;
  const at = open;
  const known = at?.desk.book.gigs.find((gig) => gig.id === ask.gig);
  if (at === undefined || known === undefined) return;
  const isCurrent = (): boolean => gigNumber === ask.number && open === at;
  const { book, today } = at.desk;
  const gig = gigAfter(book, known, ask.change);
  const full = planningSettingsOf(book).runs;
  const steps = ask.isResting ? [quickRuns, middleRuns, full] : [quickRuns];
  const before = comingGigs(book, today).filter((other) => other.id !== known.id && other.day + other.starts < known.day + known.starts);
  for (const step of steps) {
    const own = at.played.forecast(gig, Math.min(step, full));
    if (!own.ok) return tell({ kind: 'refused', number: ask.number, problems: own.error });
    const { runs } = own.value.samples;
    const earlier = await playedGigs(at.played, before, runs, isCurrent);
    if (earlier === undefined) return;
    const view = viewOfGig(at.desk, own.value, earlier, ask.chance, runs >= full);
    const needed = artistsNeeded.get(own.value.samples);
    tell({ kind: 'gig', number: ask.number, view: needed === undefined ? view : { ...view, artistsNeeded: needed } });
    await breathe();
    if (!isCurrent() || needed !== undefined) return;
    if (!view.isSettled || !ask.isResting) continue;
    const found = await fewestArtists(at.desk, gig, view, isCurrent);
    if (found === undefined) return;
    artistsNeeded.set(own.value.samples, found);
    return tell({ kind: 'gig', number: ask.number, view: { ...view, artistsNeeded: found } });
  }
}
/** Fewest artists that keep the promise, by the tries that showed that the booked ones do not. */
const artistsNeeded = new WeakMap<LineSamples, number>();

/** The gigs, played at least so often; those that cannot be played take nothing. Undefined when nobody waits for it any more. */
async function playedGigs(
  played: PlayedLines,
  gigs: readonly Gig[],
  runs: number,
  isCurrent: () => boolean,
): Promise<readonly Forecast[] | undefined> {
  const all: Forecast[] = [];
  for (const gig of gigs) {
    const forecast = played.forecast(gig, runs);
    if (forecast.ok) all.push(forecast.value);
    await breathe();
    if (!isCurrent()) return undefined;
  }
  return all;
}

/** Fewest artists that keep the promise; 0 if none up to the most do; undefined where the promise is kept or makes no sense. */
async function fewestArtists(desk: PlanningDesk, gig: Gig, view: GigView, isCurrent: () => boolean): Promise<number | undefined> {
  const { promise } = planningSettingsOf(desk.book);
  const isKept = (summary: GigView['forecast']): boolean =>
    summary.shareWithin.mean >= promise.shareWithin && summary.shareServed.mean >= promise.shareServed;
  if (gig.kind === 'class' || gig.kind === 'made to order' || isKept(view.forecast)) return undefined;
  for (let artists = gig.artists.length + 1; artists <= mostArtists; artists++) {
    const more = new PlayedLines(desk).forecast(gigAfter(desk.book, gig, { artists }), artistRuns);
    await breathe();
    if (!isCurrent() || !more.ok) return undefined;
    if (isKept(more.value.summary)) return artists;
  }
  return 0;
}

async function answerOutlooks(number: number): Promise<void> {
  outlookNumber = number;
  const at = open;
  if (at === undefined) return;
  const isCurrent = (): boolean => outlookNumber === number && open === at;
  const { book, today } = at.desk;
  const gigs = comingGigs(book, today);
  for (const runs of [quickRuns, planningSettingsOf(book).runs])
    for (const [index, gig] of gigs.entries()) {
      const earlier = await playedGigs(at.played, gigs.slice(0, index), runs, isCurrent);
      const own = at.played.forecast(gig, runs);
      if (earlier === undefined) return;
      if (!own.ok) continue;
      const view = viewOfGig(at.desk, own.value, earlier, planningSettingsOf(book).chanceOfRunningOut, runs > quickRuns);
      tell({ kind: 'outlook', number, gig: gig.id, outlook: outlookOf(view) });
      await breathe();
      if (!isCurrent()) return;
    }
}
const outlookOf = (view: GigView): Extract<Answer, { kind: 'outlook' }>['outlook'] => ({
  short: view.needs.filter((need) => need.short > 0).length,
  awaited: view.needs.filter((need) => need.short === 0 && need.onOrder > 0 && need.before + need.enough > need.have).length,
  packingLines: view.packing.total,
  packedLines: view.packing.ticked,
});
