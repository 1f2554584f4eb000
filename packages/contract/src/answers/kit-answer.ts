import type { CoverageAnswer, Growth, KitPlan, NearestKit } from '@twistwright/planner';
import { z } from 'zod';
import { id } from '../book/basic-values.ts';
import { problemSchema } from '../http/problem-details.ts';
import { amount, chance, moneyEitherWay, part, spreadSchema, whole } from './answer-values.ts';

const ids = z.array(id);
const shareOfRequests = part.meta({ description: 'Share of all requests, 0 to 1' });

const kitSchema = z
  .strictObject({
    lines: z.array(
      z
        .strictObject({
          offer: id,
          supplier: id,
          name: z.string(),
          bags: whole,
          pieces: whole,
          price: amount.meta({ description: 'Of one bag, at the break that so many bags reach' }),
          cost: amount,
          unlocks: ids.meta({ description: 'Figures that can be made with it and could not without it' }),
          serves: ids.meta({ description: 'Figures in which it fills a role' }),
          lossWithout: z.number().meta({ description: 'Share of requests that would be lost without this line' }),
          why: z.string(),
          mix: z
            .exactOptional(z.array(z.strictObject({ item: id, expected: z.number(), atLeast: whole, chanceOfNone: chance })))
            .meta({ description: 'For an assorted bag: what may be in it, pieces' }),
        })
        .meta({ id: 'KitLine', description: 'Bags of one offer in a first kit' }),
    ),
    tools: z.array(
      z.strictObject({
        tool: id,
        name: z.string(),
        offer: z.exactOptional(id).meta({ description: 'The offer that it is bought by; missing where it is bought anywhere' }),
        bags: whole,
        pieces: whole,
        price: amount.meta({ description: 'For all of it, minor units' }),
        supplier: z.exactOptional(id),
        why: z.string(),
      }),
    ),
    shops: z.array(z.strictObject({ supplier: id, name: z.string(), goods: amount, shipping: amount })),
    budget: amount,
    spent: amount.meta({ description: 'Goods and shipping together, minor units' }),
    met: shareOfRequests,
    metFirstChoice: shareOfRequests,
    metAtMost: shareOfRequests.meta({ description: 'No purchase for this money meets a larger share' }),
    standing: z.discriminatedUnion('kind', [
      z.strictObject({ kind: z.literal('proven') }),
      z.strictObject({ kind: z.literal('within'), share: z.number().min(0) }),
    ]),
    requests: z.number().meta({ description: 'Expected requests over the hours' }),
    figures: z.array(z.strictObject({ figure: id, name: z.string(), share: shareOfRequests, met: part })),
    leftOut: z.array(
      z.strictObject({ figure: id, name: z.string(), share: shareOfRequests, cost: z.exactOptional(moneyEitherWay), offers: ids }),
    ),
    colours: z.array(z.string()),
    chanceOfOtherColour: chance.meta({ description: 'Assumed: chance that a guest whose colour is missing takes another that will do' }),
  })
  .meta({ id: 'Kit', description: 'What to buy first, why, and how far it goes' });

export const kitPlanSchema = z
  .strictObject({
    kit: kitSchema,
    lasting: z.strictObject({ met: spreadSchema, figures: spreadSchema, guestsUntilShort: spreadSchema, hoursUntilShort: spreadSchema }),
    next: z.array(
      z.strictObject({
        offers: ids,
        cost: moneyEitherWay,
        gain: shareOfRequests,
        gainPerThousand: z.number().meta({ description: 'Share of requests on top for each 1,000 minor units' }),
        unlocks: ids,
        metAfter: shareOfRequests,
      }),
    ),
    rules: z.array(
      z.strictObject({ rule: z.enum(['every colour once', 'most popular figures first']), spent: amount, met: shareOfRequests }),
    ),
    growthPurchases: z.array(z.strictObject({ name: z.string(), cost: amount })),
    warnings: z.array(problemSchema),
    curve: z.exactOptional(
      z.strictObject({
        points: z.array(
          z.strictObject({ budget: amount, spent: amount, met: shareOfRequests, metAtMost: shareOfRequests, figures: whole }),
        ),
        cheapest: amount,
        everything: amount,
      }),
    ),
  })
  .meta({ id: 'KitPlan', description: 'A first kit with what a newcomer asks about it' }) satisfies z.ZodType<KitPlan>;

const milestone = { chance, gigs: z.exactOptional(spreadSchema), weeks: z.exactOptional(spreadSchema) };

export const growthSchema = z
  .strictObject({
    perGig: moneyEitherWay.meta({ description: 'Mean of what a gig leaves, minor units' }),
    breakEven: z.exactOptional(
      z.strictObject({
        margin: amount,
        marginShare: part,
        units: z.number().meta({ description: 'Gigs, with the fraction' }),
        wholeUnits: whole.meta({ description: 'Whole gigs' }),
        sales: amount,
      }),
    ),
    paidBack: z.strictObject(milestone),
    purchases: z.array(z.strictObject({ ...milestone, name: z.string(), cost: amount })),
    path: z
      .array(z.strictObject({ gigs: whole, balance: spreadSchema }))
      .meta({ description: 'What is left after so many gigs, minor units' }),
  })
  .meta({ id: 'Growth', description: 'When a kit pays for itself, and what can be bought next' }) satisfies z.ZodType<Growth>;

export const coverageAnswerSchema = z
  .strictObject({
    buy: z.array(z.string()).meta({ description: 'Names of the bags' }),
    make: z.array(z.string()).meta({ description: 'Names of the figures that they make possible' }),
    value: z.number(),
    spent: amount,
    bound: z.number().meta({ description: 'No purchase is worth more' }),
    proven: z.boolean(),
  })
  .meta({ id: 'CoverageAnswer', description: 'The bags whose figures are worth the most' }) satisfies z.ZodType<CoverageAnswer>;

/** What is possible where a kit is refused. */
export const nearestKitSchema = z
  .strictObject({
    plan: kitPlanSchema,
    changes: z.array(z.string()).meta({ description: 'What was changed for it, a sentence each' }),
  })
  .meta({ id: 'NearestKit', description: 'The nearest kit to one that is refused' }) satisfies z.ZodType<NearestKit>;
