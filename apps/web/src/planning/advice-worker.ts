import { type Book, type Gig, planningSettingsOf } from '@twistwright/books';
import { type Advice, adviceFor } from '@twistwright/planner';
import type { Problem } from '@twistwright/units';

export interface AdviceAsk {
  readonly book: Book;
  readonly gig: Gig;
}
export type AdviceAnswer = { readonly advice: Advice } | { readonly problems: readonly Problem[] };

/** Tries behind the advice; a menu is tried on a quarter of them. */
const runs = 400;

addEventListener('message', (event: MessageEvent<AdviceAsk>) => {
  const { book, gig } = event.data;
  const advice = adviceFor(book, gig, { seed: planningSettingsOf(book).seed, runs });
  const answer: AdviceAnswer = advice.ok ? { advice: advice.value } : { problems: advice.error };
  postMessage(answer);
});
