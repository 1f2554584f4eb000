import type { Book } from '@twistwright/books';
import { type BookKitWishes, type Plan, planBook, planKit } from '@twistwright/planner';
import type { LocalDate } from '@twistwright/units';
import { Refusal } from './answers.ts';
import type { Ports } from './app.ts';

interface PlanRequest {
  readonly today?: LocalDate;
  readonly seed?: number;
  readonly runs?: number;
  readonly gig?: string;
  readonly until?: LocalDate;
}

/** Seconds within which a plan over HTTP has to be there. */
const planSeconds = 20;

export async function planAnswer(book: Book, request: PlanRequest, ports: Ports): Promise<Record<string, unknown>> {
  const { today, seed, runs, gig, until } = request;
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
    },
    { solver: ports.solver, seconds: planSeconds, now: () => ports.now() / 1000 },
  );
  if (!plan.ok) throw new Refusal(409, 'There is nothing to plan.', plan.error);
  return planAsJson(plan.value);
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
