import type { CurvePoint, Needs, ShoppingPlan } from '@twistwright/planner';
import { z } from 'zod';
import { id, localDate, localTime } from '../book/basic-values.ts';
import { amount, chance, moneyEitherWay, part, proofSchema, whole } from './answer-values.ts';

const pieces = z.number().meta({ description: 'Pieces' });

export const needsSchema = z
  .strictObject({
    items: z.array(
      z.strictObject({
        item: id,
        mean: pieces,
        p50: pieces,
        p90: pieces,
        p95: pieces,
        have: pieces,
        onOrder: pieces,
        short: pieces.meta({ description: 'Pieces missing to the joint stock' }),
        wanted: pieces.meta({ description: 'Pieces of this item in the joint stock' }),
        causes: z.array(z.strictObject({ gig: z.exactOptional(id), reason: z.exactOptional(z.string()), mean: pieces, share: part })),
      }),
    ),
    chance: chance.meta({ description: 'Chance asked for, that nothing asked for runs out' }),
    chanceNow: chance.meta({ description: 'The same with what there is and what is on order' }),
    chanceThen: chance.meta({ description: 'The same with the joint stock' }),
    runs: whole,
  })
  .meta({ id: 'Needs', description: 'Pieces that will be asked for, over all gigs, jointly' }) satisfies z.ZodType<Needs>;

const becauseSchema = z
  .strictObject({
    have: pieces,
    onOrder: pieces,
    mean: pieces.meta({ description: 'Expected need over all gigs, pieces' }),
    short: pieces.meta({ description: 'Pieces missing in the greediest run that the plan covers, were none bought' }),
    chanceShort: chance,
    causes: z.array(
      z.strictObject({ gig: z.exactOptional(id), reason: z.exactOptional(z.string()), day: localDate, mean: pieces, share: part }),
    ),
  })
  .meta({ id: 'Because', description: 'Why bags of an item are there' });

const orderSchema = z
  .strictObject({
    supplier: id,
    name: z.string(),
    orderBy: localDate.meta({ description: 'Last safe day to order' }),
    before: z.exactOptional(localTime),
    arrives: localDate,
    neededOn: localDate,
    daysToSpare: z.int().meta({ description: 'Working days from today to the last safe day' }),
    lines: z.array(
      z.strictObject({
        offer: id,
        item: id,
        name: z.string(),
        bags: whole,
        count: whole.meta({ description: 'Pieces in a bag' }),
        price: amount.meta({ description: 'Price of a bag at this number of bags, minor units' }),
        total: amount,
        because: becauseSchema,
      }),
    ),
    goods: amount,
    carriage: amount,
    total: amount,
    toFreeCarriage: z.exactOptional(amount),
  })
  .meta({ id: 'ShoppingOrder', description: 'One order at one supplier' });

export const shoppingSchema = z
  .strictObject({
    orders: z.array(orderSchema),
    goods: amount,
    carriage: amount,
    total: amount,
    keeping: amount.meta({ description: 'Cost of the money tied up until it is used' }),
    tiedUp: amount.meta({ description: 'Value of what is expected to be left after the last gig' }),
    wantedChance: chance,
    chance: chance.meta({ description: 'Chance that the plan gives, on the runs it was made from' }),
    chanceElsewhere: z.exactOptional(chance).meta({ description: 'The same on independent runs' }),
    chanceNow: chance.meta({ description: 'Chance if nothing is bought' }),
    missingNow: z.number().min(0).meta({ description: 'Pieces asked for and missing if nothing is bought, in the mean over the runs' }),
    missing: z.number().min(0).meta({ description: 'The same with the plan' }),
    runs: whole,
    proof: proofSchema,
    firstOrderBy: z.exactOptional(localDate),
    ruleOfThumb: z.exactOptional(
      z.strictObject({
        kind: z.enum(['one shop', 'each where cheapest']),
        supplier: z.exactOptional(id),
        bags: whole,
        total: amount,
        chance,
        dearerBy: moneyEitherWay,
      }),
    ),
  })
  .meta({ id: 'Shopping', description: 'What to buy, where and by when' }) satisfies z.ZodType<ShoppingPlan>;

export const curvePointSchema = z
  .strictObject({ wantedChance: chance, chance, total: amount, bags: whole, proof: proofSchema })
  .meta({ id: 'CurvePoint', description: 'What one level of safety costs' }) satisfies z.ZodType<CurvePoint>;
