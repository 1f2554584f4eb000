import type { WhatIf } from '@twistwright/planner';
import { z } from 'zod';
import { adviceSchema, whatIfSchema } from './answers/index.ts';
import { id } from './book/basic-values.ts';
import { closingRuleSchema } from './book/line-schema.ts';
import { route } from './http/route.ts';

export const seed = z
  .exactOptional(z.int().min(0).max(4_294_967_295))
  .meta({ description: 'Seed of the runs; that of the settings if missing' });
/** So many runs that an answer still comes back while somebody waits; the command line takes more. */
export const runs = z
  .exactOptional(z.int().min(1).max(20_000))
  .meta({ description: 'Afternoons that are played; those of the settings if missing. The command line takes more' });

const changeSchema = z
  .strictObject({
    guests: z.exactOptional(z.number().min(0).max(100_000)),
    hours: z.exactOptional(z.number().gt(0).max(24)),
    artists: z.exactOptional(z.int().min(0).max(100)),
    figures: z.exactOptional(z.array(id).min(1).max(1000)).meta({ description: 'Figures that stay on the menu, by id' }),
    closing: z.exactOptional(closingRuleSchema),
    weather: z.exactOptional(z.enum(['mild', 'hot', 'cold', 'wet'])),
    stopColourChoice: z.exactOptional(z.boolean()),
    overtimeMinutes: z.exactOptional(z.number().min(0).max(1440)),
  })
  .meta({ id: 'Change', description: 'A change of mind about a gig; what is missing stays as it is' }) satisfies z.ZodType<WhatIf>;

/** Questions about one gig of the book in the server. */
export const questionRoutes = {
  advice: route({
    method: 'post',
    path: '/api/advice',
    summary: 'Fewest artists who keep the promise, the closing card, and the best menu for one gig',
    body: z.strictObject({ gig: id, seed, runs }),
    response: adviceSchema,
    refuses: [404, 409],
    heavy: true,
    example: { body: { gig: 'gull-lane', runs: 100 } },
  }),
  whatIf: route({
    method: 'post',
    path: '/api/what-if',
    summary: 'A change of mind about a gig beside the gig as it stands; everybody keeps their luck',
    body: z.strictObject({ gig: id, change: changeSchema, seed, runs }),
    response: whatIfSchema,
    refuses: [404, 409],
    heavy: true,
    example: { body: { gig: 'gull-lane', change: { guests: 40, weather: 'wet' }, runs: 100 } },
  }),
} as const;
