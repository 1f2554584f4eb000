import { readFile } from 'node:fs/promises';
import { join } from 'node:path';
import { type Book, layDates } from '@twistwright/books';
import type { LocalDate } from '@twistwright/units';
import type { Jobs } from './jobs/open-jobs.ts';
import type { BookShelf } from './keep-book.ts';

/** What the terminal says at the start: the next gig's plan in a few sentences (of the demo, while there is no book yet) and where the page is. */
export async function greeting(
  shelf: BookShelf,
  jobs: Jobs,
  demoFolder: string,
  today: (zone: string) => LocalDate,
  address: string,
): Promise<string> {
  const kept = await shelf.kept();
  const book = kept?.book ?? (await demo(jobs, demoFolder, today));
  const { said, gig } = await jobs.run('greeting', { book, today: today(book.business.zone), isDemo: kept === undefined });
  const page = kept === undefined ? '' : gig === undefined ? '/diary' : `/gigs/${encodeURIComponent(gig)}`;
  return `${said}\nOpen ${address}${page}`;
}

async function demo(jobs: Jobs, folder: string, today: (zone: string) => LocalDate): Promise<Book> {
  const text = await readFile(join(folder, 'book.yaml'), 'utf8');
  const book = await jobs.run('readBookFile', { text, name: 'demo/book.yaml' });
  return layDates(book, today(book.business.zone));
}
