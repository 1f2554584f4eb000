import { type Book, planningSettingsOf } from '@twistwright/books';
import {
  comingGigs,
  type Forecast,
  forecastGig,
  type JointSamples,
  jointSamplesOf,
  type PurchaseTools,
  purchaseOfBook,
  shop,
} from '@twistwright/planner';
import { type Highs, highsSolver, type LoadHighs } from '@twistwright/solver';
import loadHighsModule from 'highs';
import wasm from 'highs/runtime?url';
import type { ShoppingAnswer, ShoppingAsk } from './shopping-ask.ts';

// The loader's types are CommonJS-shaped; what Vite hands over is the function.
const loadHighs = loadHighsModule as unknown as LoadHighs;
/** Seconds that one choice of bags may take. */
const secondsEach = 15;

let current = 0;
let highs: Promise<Highs> | undefined;
let tried: { readonly key: string; readonly samples: JointSamples; readonly elsewhere: JointSamples } | undefined;

const tell = (answer: ShoppingAnswer): void => postMessage(answer);
const breathe = (): Promise<void> => new Promise((go) => setTimeout(go, 0));

addEventListener('message', (event: MessageEvent<ShoppingAsk>) => {
  const ask = event.data;
  current = ask.number;
  answer(ask).catch((error: unknown) =>
    tell({ kind: 'broken', number: ask.number, message: error instanceof Error ? error.message : String(error) }),
  );
});

async function answer(ask: ShoppingAsk): Promise<void> {
  const isCurrent = (): boolean => current === ask.number;
  highs ??= loadHighs({ locateFile: () => wasm });
  const samples = await samplesFor(ask, isCurrent);
  if (samples === undefined) return;
  const tools: PurchaseTools = {
    solver: highsSolver(await highs),
    seed: planningSettingsOf(ask.book).seed,
    seconds: secondsEach,
    now: () => performance.now() / 1000,
  };
  const chances = [ask.dials.chance, ...ask.others.filter((chance) => chance !== ask.dials.chance)];
  for (const [index, chance] of chances.entries()) {
    tell({
      kind: 'progress',
      number: ask.number,
      what: index === 0 ? 'Choosing bags' : 'Drawing the curve',
      done: index,
      of: chances.length,
    });
    await breathe();
    if (!isCurrent()) return;
    const problem = purchaseOfBook(ask.book, samples.samples, {
      today: ask.today,
      now: ask.now,
      until: ask.dials.until,
      chanceOfRunningOut: chance,
      daysToSpare: ask.dials.daysToSpare,
      suppliers: ask.dials.suppliers,
    });
    const result = await shop(problem, tools, { elsewhere: samples.elsewhere });
    if (!isCurrent()) return;
    tell({
      kind: 'found',
      number: ask.number,
      chance,
      found: result.ok ? { ok: true, plan: result.value } : { ok: false, refusal: result.error },
    });
  }
  tell({ kind: 'done', number: ask.number });
}

/** What the coming gigs ask for, and the same with other luck to hold the plan against. Kept while the gigs stay what they are. */
async function samplesFor({ book, today, number }: ShoppingAsk, isCurrent: () => boolean): Promise<typeof tried> {
  const key = JSON.stringify([today, book.gigs, book.figures, book.items, book.artists, book.settings]);
  if (tried?.key === key) return tried;
  const { seed, runs } = planningSettingsOf(book);
  const gigs = comingGigs(book, today);
  const own: Forecast[] = [];
  const other: Forecast[] = [];
  for (const [index, gig] of gigs.entries()) {
    tell({ kind: 'progress', number, what: 'Trying the gigs', done: index, of: gigs.length });
    await breathe();
    if (!isCurrent()) return undefined;
    push(own, book, gig, seed, runs);
    push(other, book, gig, seed + 1, runs);
  }
  tried = { key, samples: jointSamplesOf(own), elsewhere: jointSamplesOf(other) };
  return tried;
}
function push(list: Forecast[], book: Book, gig: Book['gigs'][number], seed: number, runs: number): void {
  const forecast = forecastGig(book, gig, { seed, runs });
  if (forecast.ok) list.push(forecast.value);
}
