import { type Book, planningSettingsOf } from '@twistwright/books';
import { api } from '@twistwright/contract';
import type { Hono } from 'hono';
import { answer } from './answers.ts';
import type { Ports } from './app.ts';

/** Plans, advice, and changes of mind. */
export function planRoutes(app: Hono, { shelf, jobs, today }: Ports): void {
  answer(app, api.plan, async ({ body }, context) => {
    const { book: sent, today: day, risk, spareDays, ...options } = body;
    const book = sent ?? (await shelf.read()).book;
    return jobs.run(
      'plan',
      {
        book,
        isSent: sent !== undefined,
        options: {
          ...options,
          today: day ?? today(book.business.zone),
          ...(risk === undefined ? {} : { chanceOfRunningOut: risk }),
          ...(spareDays === undefined ? {} : { daysToSpare: spareDays }),
        },
      },
      context.req.raw.signal,
    );
  });
  answer(app, api.advice, async ({ body }, context) => {
    const { book } = await shelf.read();
    return jobs.run('advice', { book, gig: body.gig, ...played(book, body) }, context.req.raw.signal);
  });
  answer(app, api.whatIf, async ({ body }, context) => {
    const { book } = await shelf.read();
    return jobs.run('whatIf', { book, gig: body.gig, change: body.change, ...played(book, body) }, context.req.raw.signal);
  });
}

/** Seed and runs as asked for, else those of the settings. */
function played(book: Book, asked: { readonly seed?: number; readonly runs?: number }): { readonly seed: number; readonly runs: number } {
  const settings = planningSettingsOf(book);
  return { seed: asked.seed ?? settings.seed, runs: asked.runs ?? settings.runs };
}
