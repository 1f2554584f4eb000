import type { PackingPlan } from '@twistwright/planner';
import { z } from 'zod';
import { id } from '../book/basic-values.ts';
import { whole } from './answer-values.ts';

const lineSchema = z
  .strictObject({
    id: z.string().meta({ description: 'Stable within the gig: `item@place`; what `packed` of a gig lists' }),
    item: id,
    name: z.string(),
    count: whole.meta({ description: 'Pieces' }),
    from: z.array(z.strictObject({ place: id, count: whole, already: z.boolean() })),
    missing: whole.meta({ description: 'Pieces that are nowhere' }),
    onOrder: whole.meta({ description: 'Of the missing, on order and expected before the gig' }),
    why: z.string(),
    ticked: z.boolean(),
  })
  .meta({ id: 'PackingLine', description: 'One box to tick' });

export const packingSchema = z
  .strictObject({
    places: z.array(
      z.strictObject({
        place: id,
        name: z.string(),
        kind: z.enum(['home', 'car', 'case', 'apron', 'other']),
        lines: z.array(lineSchema),
      }),
    ),
    missing: z.array(lineSchema),
    leaveAtHome: z.array(z.strictObject({ item: id, name: z.string(), place: id, count: whole })),
    ticked: whole,
    total: whole,
  })
  .meta({ id: 'Packing', description: 'What goes into which place, in the order in which it is filled' }) satisfies z.ZodType<PackingPlan>;
