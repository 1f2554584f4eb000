import { type Book, layDates, planningSettingsOf } from '@twistwright/books';
import { readBook } from '@twistwright/contract';
import { comingGigs, planBook, sayCharge, sayForecast, sayNeeds, sayShopping } from '@twistwright/planner';
import { date, longDate } from '@twistwright/units';
import { type Done, done } from './outcome.ts';
import { solverHere } from './plan-jobs.ts';

/** Runs and seconds that are enough for a few sentences. */
const mostRuns = 2000;
const mostSeconds = 5;

interface GreetingOrder {
  /** The book there is, or the text of the example that is shown before there is one. */
  readonly of: { readonly book: Book } | { readonly demo: string };
  /** The moment, ISO; the day is that of the zone of the book. */
  readonly at: string;
}
interface Greeting {
  readonly said: string;
  /** Id of the gig that it is about; missing where none is coming. */
  readonly gig?: string;
}
/** The next gig's plan in a few sentences. */
export async function greeting({ of, at }: GreetingOrder): Promise<Done<Greeting>> {
  const kept = 'book' in of ? of.book : exampleIn(of.demo);
  const today = date(Temporal.Instant.from(at).toZonedDateTimeISO(kept.business.zone).toPlainDate().toString());
  const book = layDates(kept, today);
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
      'demo' in of ? `No book yet; this is the next gig of the demo, ${name} (invented).` : `The next gig of ${name}.`,
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

function exampleIn(text: string): Book {
  const read = readBook(text, { name: 'demo/book.yaml' });
  if (!read.ok) throw new Error(`the demo cannot be read: ${read.error[0]?.sentence}`);
  return read.value;
}
