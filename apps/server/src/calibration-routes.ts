import { api } from '@twistwright/contract';
import type { Hono } from 'hono';
import { answer } from './answers.ts';
import type { Ports } from './app.ts';
import { tellState } from './revisions.ts';

/** What is known of balloons, and what one more two-minute test would change. */
export function calibrationRoutes(app: Hono, { shelf, jobs, today, version }: Pick<Ports, 'shelf' | 'jobs' | 'today' | 'version'>): void {
  const { known, tried } = api.calibration;
  answer(app, known, async ({ params, query }, context) => {
    const { book, revision } = await shelf.read();
    tellState(context, revision, version);
    return jobs.run('balloonsKnown', { book, ...params, ...query }, context.req.raw.signal);
  });
  answer(app, tried, async ({ body }, context) => {
    const { book } = await shelf.read();
    const test = { id: 'tried', day: today(book.business.zone), ...body };
    return jobs.run('balloonTestTried', { book, test }, context.req.raw.signal);
  });
}
