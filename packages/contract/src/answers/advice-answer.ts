import type { Gig } from '@twistwright/books';
import type { Advice, ForecastSummary, Take, WhatIfOutcome } from '@twistwright/planner';
import type { Money, Spread } from '@twistwright/units';
import { z } from 'zod';
import { id } from '../book/basic-values.ts';
import { gigSchema } from '../book/gig-schema.ts';
import { amount, chance, minute, part, spreadSchema, whole } from './answer-values.ts';
import { forecastSchema, takesSchema } from './forecast-answer.ts';

export const adviceSchema = z
  .strictObject({
    promise: z.strictObject({
      waitMinutes: z.number(),
      shareWithin: part.meta({ description: 'Of those served, this share waits no longer' }),
      shareServed: part.meta({ description: 'Of those who come, this share is served' }),
    }),
    artists: z.strictObject({
      artists: z.exactOptional(whole).meta({ description: 'Fewest who keep the promise; missing if not even the most allowed do' }),
      tried: z.array(z.strictObject({ artists: whole, shareWithin: spreadSchema, shareServed: spreadSchema, isKept: z.boolean() })),
    }),
    card: z
      .array(z.strictObject({ minute, mayWait: whole.meta({ description: 'At most so many may be waiting' }) }))
      .meta({ description: 'Closing card' }),
    cardChance: chance,
    menu: z.strictObject({
      keep: z.array(id),
      drop: z.array(id),
      served: spreadSchema,
      servedNow: spreadSchema,
      gain: z.number().meta({ description: 'How much more it is worth than the whole menu, as a share' }),
      how: z.enum(['every menu tried', 'search']),
    }),
  })
  .meta({ id: 'Advice', description: 'Artists, closing card and menu for one gig' }) satisfies z.ZodType<Advice>;

/** One side of a comparison as it travels. */
export interface WhatIfSideAnswer {
  readonly gig: Gig;
  readonly forecast: ForecastSummary;
  readonly takes: Readonly<Record<string, Take>>;
  readonly quote: Money;
  readonly hourly: Spread;
}
/** A change of mind beside the gig as it stands. */
export interface WhatIfAnswer {
  readonly before: WhatIfSideAnswer;
  readonly after: WhatIfSideAnswer;
}

export function whatIfAnswer({ before, after }: WhatIfOutcome): WhatIfAnswer {
  const plain = ({ takes, ...side }: WhatIfOutcome['before']): WhatIfSideAnswer => ({ ...side, takes: Object.fromEntries(takes) });
  return { before: plain(before), after: plain(after) };
}

const sideSchema = z
  .strictObject({
    gig: gigSchema,
    forecast: forecastSchema,
    takes: takesSchema,
    quote: amount,
    hourly: spreadSchema.meta({ description: 'Earned per true hour of one artist, minor units with fractions' }),
  })
  .meta({ id: 'WhatIfSide', description: 'One side of a comparison' });

export const whatIfSchema = z.strictObject({ before: sideSchema, after: sideSchema }).meta({
  id: 'WhatIf',
  description: 'The gig as it stands, and after the change; everybody keeps their luck',
}) satisfies z.ZodType<WhatIfAnswer>;
