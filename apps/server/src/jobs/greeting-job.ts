import { type Book, planningSettingsOf } from '@twistwright/books';
import { comingGigs, planBook, sayCharge, sayForecast, sayNeeds, sayShopping } from '@twistwright/planner';
import { type LocalDate, longDate } from '@twistwright/units';
import { type Done, done } from './outcome.ts';
import { solverHere } from './plan-jobs.ts';

/** Runs and seconds that are enough for a few sentences. */
const mostRuns = 2000;
const mostSeconds = 5;

interface GreetingOrder {
  readonly book: Book;
  readonly today: LocalDate;
  /** Whether it is the example that is shown before there is a book. */
  readonly isDemo: boolean;
}
interface Greeting {
  readonly said: string;
  /** Id of the gig that it is about; missing where none is coming. */
  readonly gig?: string;
}
/** The next gig's plan in a few sentences. */
export async function greeting({ book, today, isDemo }: GreetingOrder): Promise<Done<Greeting>> {
  const next = comingGigs(book, today)[0];
  if (next === undefined) return done({ said: `${book.business.name} has no gig coming.` });
  const runs = Math.min(mostRuns, planningSettingsOf(book).runs);
  const plan = await planBook(book, { today, gig: next.id, runs }, { solver: solverHere(), seconds: mostSeconds });
  if (!plan.ok) return done({ gig: next.id, said: `${next.name}: ${plan.error.map((problem) => problem.sentence).join(' ')}` });
  const { needs, shopping } = plan.value;
  const { currency, name } = book.business;
  return done({
    gig: next.id,
    said: [
      isDemo ? `No book yet; this is the next gig of the demo, ${name} (invented).` : `The next gig of ${name}.`,
      '',
      `${next.name}, ${longDate(next.day)}, ${next.starts} to ${next.ends}.`,
      ...plan.value.gigs.map(({ forecast }) => sayForecast(next, forecast.summary).answer),
      sayNeeds(book, needs).answer,
      ...(shopping === undefined ? [] : [sayShopping(shopping, currency).answer]),
      ...plan.value.gigs.map(({ charge }) => sayCharge(charge, currency).answer),
      '',
    ].join('\n'),
  });
}
