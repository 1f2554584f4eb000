import { type Book, checkBook, layDates } from '@twistwright/books';
import { planAnswer, whatIfAnswer } from '@twistwright/contract';
import { adviceFor, compareGigs, type PlanBookOptions, planBook, type WhatIf } from '@twistwright/planner';
import { type OpenSolver, openSolver } from '@twistwright/solver/node';
import { doneAsJson, refused } from './outcome.ts';

/** Seconds within which the shopping of a plan has to be there. */
const planSeconds = 20;

const opened: { solver?: OpenSolver } = {};
/** The solver of this thread, in a thread of its own: it gets ready while the gigs are played. */
export function solverHere(): OpenSolver {
  opened.solver ??= openSolver({ atOnce: true });
  return opened.solver;
}

interface PlanOrder {
  readonly book: Book;
  /** Whether the book came with the request and was not looked at yet. */
  readonly isSent: boolean;
  readonly options: PlanBookOptions;
}
export async function plan({ book, isSent, options }: PlanOrder) {
  const laid = isSent ? layDates(book, options.today) : book;
  const problems = isSent ? checkBook(laid, { today: options.today }) : [];
  if (problems.some((problem) => problem.weight === 'error')) return refused(422, 'The book is not in order.', problems);
  const planned = await planBook(
    laid,
    { withCurve: true, withSecondOpinion: true, ...options },
    { solver: solverHere(), seconds: planSeconds, now: () => performance.now() / 1000 },
  );
  return planned.ok ? doneAsJson(planAnswer(planned.value)) : refused(409, 'There is nothing to plan.', planned.error);
}

interface GigQuestion {
  readonly book: Book;
  readonly gig: string;
  readonly seed: number;
  readonly runs: number;
}
export function advice({ book, gig: id, ...options }: GigQuestion) {
  const gig = book.gigs.find((one) => one.id === id);
  if (gig === undefined) return noGig(book, id);
  const given = adviceFor(book, gig, options);
  return given.ok ? doneAsJson(given.value) : refused(409, 'There is no advice on this gig.', given.error);
}

export function whatIf({ book, gig: id, change, ...options }: GigQuestion & { readonly change: WhatIf }) {
  const gig = book.gigs.find((one) => one.id === id);
  if (gig === undefined) return noGig(book, id);
  const unknown = change.figures?.filter((figure) => !book.figures.some((one) => one.id === figure)) ?? [];
  if (unknown.length > 0) return refused(404, `There is no "${unknown[0]}" among the figures.`);
  const compared = compareGigs(book, gig, change, options);
  return compared.ok ? doneAsJson(whatIfAnswer(compared.value)) : refused(409, 'The gig cannot be played like that.', compared.error);
}

const noGig = (book: Book, id: string) =>
  refused(404, `There is no gig "${id}" in the book; there are ${book.gigs.map((gig) => gig.id).join(', ') || 'none'}.`);
