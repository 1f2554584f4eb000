import type { Book } from '@twistwright/books';
import type { KitPaper, KitPaperOptions } from '@twistwright/paper';
import {
  type BookKitWishes,
  coverageOf,
  type FirstEarnings,
  growKit,
  type KitPlan,
  nearestKit,
  planBought,
  planKit,
  solveCoverage,
} from '@twistwright/planner';
import type { LocalDate } from '@twistwright/units';
import { done, doneAsJson, type Refused, refused } from './outcome.ts';

export interface KitOrder {
  readonly book: Book;
  readonly wishes: BookKitWishes;
  /** Bags by offer of the kit that somebody has seen; planned anew if missing. */
  readonly bought?: readonly { readonly offer: string; readonly bags: number }[];
}
interface KitPaperOrder extends KitOrder {
  readonly made: LocalDate;
  readonly name?: string;
  readonly paper?: 'A4' | 'Letter';
}

/** Budgets on the curve of money against requests met. */
const curvePoints = 20;

export function kit({ book, wishes }: KitOrder) {
  const planned = planKit(book, wishes, { curvePoints });
  return planned.ok ? doneAsJson(planned.value) : refused(409, 'There is no such kit.', planned.error);
}

export function kitNearest({ book, wishes }: KitOrder) {
  const nearest = nearestKit(book, wishes, { curvePoints });
  return nearest === undefined ? refused(409, 'There is no kit at all: nothing can be made from the offers.') : doneAsJson(nearest);
}

export function kitGrowth({ earnings, ...order }: KitOrder & { readonly earnings: FirstEarnings }) {
  const { book, wishes } = order;
  return withKit(order, (plan) => {
    const grown = growKit(book, wishes, plan, earnings);
    return grown.ok ? doneAsJson(grown.value) : refused(409, 'Nothing grows from this.', grown.error);
  });
}

export const kitHandout = (order: KitPaperOrder) =>
  withKit(order, async (plan) => {
    const { kitHandoutPdf } = await import('@twistwright/paper');
    return done(await kitHandoutPdf(order.book, paperOf(plan, order), optionsOf(order)));
  });

export const kitLearningSheet = (order: KitPaperOrder) =>
  withKit(order, async (plan) => {
    const { learningSheetPdf } = await import('@twistwright/paper');
    return done(await learningSheetPdf(order.book, paperOf(plan, order), optionsOf(order)));
  });

export const kitHtml = (order: KitPaperOrder) =>
  withKit(order, async (plan) => {
    const { kitPage } = await import('@twistwright/paper');
    return done(kitPage(order.book, paperOf(plan, order), order.made));
  });

export const kitList = (order: KitOrder) =>
  withKit(order, async (plan) => {
    const { kitCsv } = await import('@twistwright/paper');
    return done(kitCsv(order.book, plan));
  });

/** A plain coverage problem; what is wrong with it is said by the planner. */
export function cover({ problem }: { readonly problem: unknown }) {
  const read = coverageOf(problem);
  return read.ok ? doneAsJson(solveCoverage(read.value)) : refused(422, 'The coverage problem cannot be read.', read.error);
}

function withKit<T>({ book, wishes, bought }: KitOrder, make: (plan: KitPlan) => T): T | Refused {
  const seen = bought === undefined ? undefined : planBought(book, wishes, new Map(bought.map(({ offer, bags }) => [offer, bags])));
  if (seen !== undefined) return make(seen);
  const planned = planKit(book, wishes);
  return planned.ok ? make(planned.value) : refused(409, 'There is no such kit.', planned.error);
}
const paperOf = (plan: KitPlan, { wishes, name }: KitPaperOrder): KitPaper => ({ plan, wishes, ...(name === undefined ? {} : { name }) });
const optionsOf = ({ made, paper }: KitPaperOrder): KitPaperOptions => ({ made, ...(paper === undefined ? {} : { size: paper }) });
