import { readFile } from 'node:fs/promises';
import { join } from 'node:path';
import { type Book, layDates, planningSettingsOf } from '@twistwright/books';
import { readBook } from '@twistwright/contract';
import { comingGigs, planBook, type Solver, sayCharge, sayForecast, sayNeeds, sayShopping } from '@twistwright/planner';
import type { Store } from '@twistwright/store';
import { type LocalDate, longDate } from '@twistwright/units';

/** What the terminal says at the start: the next gig's plan in a few sentences (of the demo, while there is no book yet) and where the page is. */
export async function greeting(
  store: Store,
  solver: Solver,
  demoFolder: string,
  today: (zone: string) => LocalDate,
  address: string,
): Promise<string> {
  const kept = await store.read();
  const book = kept?.book ?? (await demo(demoFolder, today));
  const day = today(book.business.zone);
  const next = comingGigs(book, day)[0];
  const where = `Open ${address}${kept === undefined ? '' : next === undefined ? '/diary' : `/gigs/${encodeURIComponent(next.id)}`}`;
  if (next === undefined) return `${book.business.name} has no gig coming.\n${where}`;
  const plan = await planBook(
    book,
    { today: day, gig: next.id, runs: Math.min(2000, planningSettingsOf(book).runs) },
    { solver, seconds: 5 },
  );
  if (!plan.ok) return `${next.name}: ${plan.error.map((problem) => problem.sentence).join(' ')}\n${where}`;
  const [gig] = plan.value.gigs;
  if (gig === undefined) return where;
  const { currency } = book.business;
  return [
    kept === undefined
      ? `No book yet; this is the next gig of the demo, ${book.business.name} (invented).`
      : `The next gig of ${book.business.name}.`,
    '',
    `${next.name}, ${longDate(next.day)}, ${next.starts} to ${next.ends}.`,
    sayForecast(next, gig.forecast.summary).answer,
    sayNeeds(book, plan.value.needs).answer,
    ...(plan.value.shopping === undefined ? [] : [sayShopping(plan.value.shopping, currency).answer]),
    sayCharge(gig.charge, currency).answer,
    '',
    where,
  ].join('\n');
}

async function demo(folder: string, today: (zone: string) => LocalDate): Promise<Book> {
  const read = readBook(await readFile(join(folder, 'book.yaml'), 'utf8'), { name: 'demo/book.yaml' });
  if (!read.ok) throw new Error(`the demo cannot be read: ${read.error[0]?.sentence}`);
  return layDates(read.value, today(read.value.business.zone));
}
