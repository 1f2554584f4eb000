import { api } from '@twistwright/contract';
import type { BookKitWishes } from '@twistwright/planner';
import type { Context, Hono } from 'hono';
import { answer, pdfFile } from './answers.ts';
import type { Ports } from './app.ts';
import type { KitOrder } from './jobs/kit-jobs.ts';

/** A first kit, its papers, and how it grows. */
export function kitRoutes(app: Hono, { shelf, jobs, today }: Ports): void {
  const { handout, learning, page, csv, growth } = api.kitPapers;
  const order = async ({ bought, ...wishes }: BookKitWishes & Pick<KitOrder, 'bought'>) => {
    const { book } = await shelf.read();
    return { book, wishes, ...(bought === undefined ? {} : { bought }), made: today(book.business.zone) };
  };
  const named = (context: Context, how: 'inline' | 'attachment', file: string): void =>
    context.header('content-disposition', `${how}; filename="${file}"`);
  answer(app, api.kit, async ({ body }, context) => {
    const { book } = await shelf.read();
    return jobs.run('kit', { book, wishes: body }, context.req.raw.signal);
  });
  answer(app, api.nearestKit, async ({ body }, context) => {
    const { book } = await shelf.read();
    return jobs.run('kitNearest', { book, wishes: body }, context.req.raw.signal);
  });
  answer(app, api.cover, ({ body }, context) => jobs.run('cover', { problem: body }, context.req.raw.signal));
  answer(app, handout, async ({ body, query }, context) => {
    const pdf = await jobs.run('kitHandout', { ...(await order(body)), ...query }, context.req.raw.signal);
    named(context, 'inline', 'first-kit.pdf');
    return pdfFile(pdf, 'first-kit.pdf');
  });
  answer(app, learning, async ({ body, query }, context) => {
    const pdf = await jobs.run('kitLearningSheet', { ...(await order(body)), ...query }, context.req.raw.signal);
    named(context, 'inline', 'figures-to-learn.pdf');
    return pdfFile(pdf, 'figures-to-learn.pdf');
  });
  answer(app, page, async ({ body, query }, context) => {
    const html = await jobs.run('kitHtml', { ...(await order(body)), ...query }, context.req.raw.signal);
    named(context, 'inline', 'first-kit.html');
    return html;
  });
  answer(app, csv, async ({ body }, context) => {
    const list = await jobs.run('kitList', await order(body), context.req.raw.signal);
    named(context, 'attachment', 'first-kit.csv');
    return list;
  });
  answer(app, growth, async ({ body }, context) =>
    jobs.run('kitGrowth', { ...(await order(body.wishes)), earnings: body.earnings }, context.req.raw.signal),
  );
}
