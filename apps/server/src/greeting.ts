import { readFile } from 'node:fs/promises';
import { join } from 'node:path';
import type { Jobs } from './jobs/open-jobs.ts';
import type { BookShelf } from './keep-book.ts';

/** What the terminal says at the start: the next gig's plan in a few sentences (of the demo, while there is no book yet) and where the page is. */
export async function greeting(shelf: BookShelf, jobs: Jobs, demoFolder: string, at: string, address: string): Promise<string> {
  const kept = await shelf.kept();
  const of = kept === undefined ? { demo: await readFile(join(demoFolder, 'book.yaml'), 'utf8') } : { book: kept.book };
  const { said, gig } = await jobs.run('greeting', { of, at });
  const page = kept === undefined ? '' : gig === undefined ? '/diary' : `/gigs/${encodeURIComponent(gig)}`;
  return `${said}\nOpen ${address}${page}`;
}
