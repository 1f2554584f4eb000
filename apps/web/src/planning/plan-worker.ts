import { type Book, type Gig, planningSettingsOf } from '@twistwright/books';
import { comingGigs, type Forecast, gigAfter, joinSamples, type LineSamples, lineModelOf } from '@twistwright/planner';
import type { Answer, Ask } from './ask.ts';
import type { GigView } from './gig-view.ts';
import { deskFor, forecastOf, type PlanningDesk, play, samplesOf, viewOfGig } from './view-of-gig.ts';

/** Tries for the first answer, while a finger moves; then for the next one. The last step is what the book asks for. */
const quickRuns = 100;
const middleRuns = 600;
/** Tries when other numbers of artists are looked at, and the most artists that are. */
const artistRuns = 400;
const mostArtists = 5;

let desk: PlanningDesk | undefined;
/** The number of the question about a gig that is being answered. */
let gigNumber = 0;
let outlookNumber = 0;
/** Gigs as they are booked, played once each. */
const booked = new Map<string, Forecast>();

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
  if (ask.kind === 'open') open(deskFor(ask.book, ask.today));
  else if (ask.kind === 'gig') void answerGig(ask);
  else void answerOutlooks(ask.number);
});

/** A changed book forgets only the gigs that a change could touch. */
function open(next: PlanningDesk): void {
  const keeps = desk !== undefined && linesOf(desk.book) === linesOf(next.book);
  for (const [id, forecast] of booked) {
    const gig = next.book.gigs.find((entry) => entry.id === id);
    if (!keeps || gig === undefined || JSON.stringify(forecast.gig) !== JSON.stringify(gig)) booked.delete(id);
  }
  desk = next;
}
const linesOf = (book: Book): string => JSON.stringify([book.figures, book.items, book.artists, book.settings, book.sizes]);

async function answerGig(ask: Extract<Ask, { kind: 'gig' }>): Promise<void> {
  gigNumber = ask.number;
  const at = desk;
  const known = at?.book.gigs.find((gig) => gig.id === ask.gig);
  if (at === undefined || known === undefined) return;
  const isCurrent = (): boolean => gigNumber === ask.number && desk === at;
  const gig = gigAfter(at.book, known, ask.change);
  const model = lineModelOf(at.book, gig);
  if (!model.ok) return tell({ kind: 'refused', number: ask.number, problems: model.error });
  const full = planningSettingsOf(at.book).runs;
  const steps = ask.isResting ? [quickRuns, middleRuns, full] : [quickRuns];
  const before = comingGigs(at.book, at.today).filter(
    (other) => other.id !== known.id && other.day + other.starts < known.day + known.starts,
  );
  let samples: LineSamples | undefined;
  let view: GigView | undefined;
  for (const runs of [...new Set(steps.map((step) => Math.min(step, full)))]) {
    const part = samplesOf(at, gig, model.value, runs - (samples?.runs ?? 0), samples?.runs ?? 0);
    samples = samples === undefined ? part : joinSamples([samples, part]);
    const earlier = await playedGigs(at, before, runs, isCurrent);
    if (earlier === undefined) return;
    view = viewOfGig(at, forecastOf(gig, model.value, samples), earlier, ask.chance, runs === full);
    tell({ kind: 'gig', number: ask.number, view });
    await breathe();
    if (!isCurrent()) return;
  }
  if (!ask.isResting || view === undefined) return;
  const artistsNeeded = await fewestArtists(at, gig, view, isCurrent);
  if (isCurrent() && artistsNeeded !== undefined) tell({ kind: 'gig', number: ask.number, view: { ...view, artistsNeeded } });
}

/** The gigs as booked, played at least so often; those that cannot be played take nothing. Undefined when nobody waits for it any more. */
async function playedGigs(
  at: PlanningDesk,
  gigs: readonly Gig[],
  runs: number,
  isCurrent: () => boolean,
): Promise<readonly Forecast[] | undefined> {
  const all: Forecast[] = [];
  for (const gig of gigs) {
    const known = booked.get(gig.id);
    if (known === undefined || known.samples.runs < runs) {
      const played = play(at, gig, runs);
      if (!played.ok) continue;
      booked.set(gig.id, played.value);
      await breathe();
      if (!isCurrent()) return undefined;
    }
    const found = booked.get(gig.id);
    if (found !== undefined) all.push(found);
  }
  return all;
}

/** Fewest artists that keep the promise; 0 if none up to the most do; undefined where the promise is kept or makes no sense. */
async function fewestArtists(at: PlanningDesk, gig: Gig, view: GigView, isCurrent: () => boolean): Promise<number | undefined> {
  const promise = planningSettingsOf(at.book).promise;
  const isKept = (summary: GigView['forecast']): boolean =>
    summary.shareWithin.mean >= promise.shareWithin && summary.shareServed.mean >= promise.shareServed;
  if (gig.kind === 'class' || gig.kind === 'made to order' || isKept(view.forecast)) return undefined;
  for (let artists = gig.artists.length + 1; artists <= mostArtists; artists++) {
    const more = play(at, gigAfter(at.book, gig, { artists }), artistRuns);
    await breathe();
    if (!isCurrent() || !more.ok) return undefined;
    if (isKept(more.value.summary)) return artists;
  }
  return 0;
}

async function answerOutlooks(number: number): Promise<void> {
  outlookNumber = number;
  const at = desk;
  if (at === undefined) return;
  const isCurrent = (): boolean => outlookNumber === number && desk === at;
  const gigs = comingGigs(at.book, at.today);
  for (const runs of [quickRuns, planningSettingsOf(at.book).runs])
    for (const [index, gig] of gigs.entries()) {
      const earlier = await playedGigs(at, gigs.slice(0, index), runs, isCurrent);
      const own = await playedGigs(at, [gig], runs, isCurrent);
      if (earlier === undefined || own === undefined) return;
      const played = own[0];
      if (played === undefined) continue;
      const view = viewOfGig(at, played, earlier, planningSettingsOf(at.book).chanceOfRunningOut, runs > quickRuns);
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
