import { api } from '@twistwright/contract';
import { type KitPaper, type KitPaperOptions, kitCsv, kitHandoutPdf, kitPage, learningSheetPdf } from '@twistwright/paper';
import { type BookKitWishes, growKit, type KitPlan, planKit } from '@twistwright/planner';
import type { Hono } from 'hono';
import { answer, Refusal } from './answers.ts';
import type { Ports } from './app.ts';
import { bookOf } from './keep-book.ts';

/** Papers about a first kit, and how it grows. */
export function kitRoutes(app: Hono, { store, today }: Pick<Ports, 'store' | 'today'>): void {
  const { handout, learning, page, csv, growth } = api.kitPapers;
  const planned = async (wishes: BookKitWishes) => {
    const { book } = await bookOf(store);
    const plan = planKit(book, wishes);
    if (!plan.ok) throw new Refusal(409, 'There is no such kit.', plan.error);
    return { book, plan: plan.value, made: today(book.business.zone) };
  };
  answer(app, handout, async ({ body, query }, context) => {
    const { book, plan, made } = await planned(body);
    context.header('content-disposition', 'inline; filename="first-kit.pdf"');
    return fileOf(await kitHandoutPdf(book, paperOf(plan, body, query), optionsOf(made, query)), 'first-kit.pdf');
  });
  answer(app, learning, async ({ body, query }, context) => {
    const { book, plan, made } = await planned(body);
    context.header('content-disposition', 'inline; filename="figures-to-learn.pdf"');
    return fileOf(await learningSheetPdf(book, paperOf(plan, body, query), optionsOf(made, query)), 'figures-to-learn.pdf');
  });
  answer(app, page, async ({ body, query }, context) => {
    const { book, plan, made } = await planned(body);
    context.header('content-disposition', 'inline; filename="first-kit.html"');
    return kitPage(book, paperOf(plan, body, query), made);
  });
  answer(app, csv, async ({ body }, context) => {
    const { book, plan } = await planned(body);
    context.header('content-disposition', 'attachment; filename="first-kit.csv"');
    return kitCsv(book, plan);
  });
  answer(app, growth, async ({ body }) => {
    const { book, plan } = await planned(body.wishes);
    const grown = growKit(book, body.wishes, plan, body.earnings);
    if (!grown.ok) throw new Refusal(409, 'Nothing grows from this.', grown.error);
    return { ...grown.value };
  });
}

interface OnPaper {
  readonly paper?: 'A4' | 'Letter';
  readonly name?: string;
}
const paperOf = (plan: KitPlan, wishes: BookKitWishes, { name }: Pick<OnPaper, 'name'>): KitPaper => ({
  plan,
  wishes,
  ...(name === undefined ? {} : { name }),
});
const optionsOf = (made: string, { paper }: OnPaper): KitPaperOptions => ({ made, ...(paper === undefined ? {} : { size: paper }) });
const fileOf = (bytes: Uint8Array, name: string): File => new File([bytes as Uint8Array<ArrayBuffer>], name, { type: 'application/pdf' });
