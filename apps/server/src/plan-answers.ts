import { type Book, checkBook, layDates } from '@twistwright/books';
import { type BookKitWishes, type Plan, planBook, planKit } from '@twistwright/planner';
import type { LocalDate, Money } from '@twistwright/units';
import { Refusal } from './answers.ts';
import type { Ports } from './app.ts';

interface PlanRequest {
  readonly today?: LocalDate;
  readonly seed?: number;
  readonly runs?: number;
  readonly gig?: string;
  readonly until?: LocalDate;
  readonly risk?: number;
  readonly budget?: Money;
  readonly spareDays?: number;
}

/** Seconds within which a plan over HTTP has to be there. */
const planSeconds = 20;

export async function planAnswer(book: Book, request: PlanRequest, ports: Ports): Promise<Record<string, unknown>> {
  const { today, seed, runs, gig, until, risk, budget, spareDays } = request;
  const plan = await planBook(
    book,
    {
      today: today ?? ports.today(book.business.zone),
      withCurve: true,
      withSecondOpinion: true,
      ...(seed === undefined ? {} : { seed }),
      ...(runs === undefined ? {} : { runs }),
      ...(gig === undefined ? {} : { gig }),
      ...(until === undefined ? {} : { until }),
      ...(risk === undefined ? {} : { chanceOfRunningOut: risk }),
      ...(budget === undefined ? {} : { budget }),
      ...(spareDays === undefined ? {} : { daysToSpare: spareDays }),
    },
    { solver: ports.solver, seconds: planSeconds, now: () => ports.now() / 1000 },
  );
  if (!plan.ok) throw new Refusal(409, 'There is nothing to plan.', plan.error);
  return planAsJson(plan.value);
}

/** A book that was sent along, its dates in the present if it is an example; refused where it is not in order, as one that is stored would be. */
export function bookInOrder(sent: Book, today: LocalDate): Book {
  const book = layDates(sent, today);
  const problems = checkBook(book, { today });
  if (problems.some((problem) => problem.weight === 'error')) throw new Refusal(422, 'The book is not in order.', problems);
  return book;
}

/** A plan without its samples, maps as objects. */
function planAsJson({ samples: _samples, gigs, ...plan }: Plan): Record<string, unknown> {
  return {
    ...plan,
    gigs: gigs.map(({ gig, forecast, takes, packing, charge }) => ({
      gig,
      forecast: forecast.summary,
      takes: Object.fromEntries(takes),
      packing,
      charge,
    })),
  };
}

/** Budgets on the curve of money against requests met. */
const curvePoints = 20;

export function kitAnswer(book: Book, wishes: BookKitWishes): Record<string, unknown> {
  const plan = planKit(book, wishes, { curvePoints });
  if (!plan.ok) throw new Refusal(409, 'There is no such kit.', plan.error);
  return { ...plan.value };
}
