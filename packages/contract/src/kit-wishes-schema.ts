import type { BookKitWishes } from '@twistwright/planner';
import { z } from 'zod';
import { amount, count, countOrNone, id, weight } from './book/basic-values.ts';

const ids = z.array(id).max(2000);

/** What a newcomer wishes, in the names of a book. */
export const kitWishesSchema = z
  .strictObject({
    budget: amount.meta({ description: 'Money there is, minor units' }),
    hours: z.number().gt(0).max(1000).meta({ description: 'Hours of work to cover before the next order' }),
    kind: z.enum(['tables', 'parties', 'small fairs']),
    guestsPerHour: z
      .exactOptional(z.number().gt(0).max(200))
      .meta({ description: 'Guests who ask for a figure; that of the kind of work if missing' }),
    mostColours: z.exactOptional(count).meta({ description: 'At most so many colours; any number if missing' }),
    assortedBags: z.exactOptional(z.boolean()).meta({ description: 'Whether bags of mixed colours may be bought; they may if missing' }),
    chanceOfOtherColour: z.exactOptional(z.number().min(0).max(1)).meta({
      description:
        'Chance that a guest whose colour is missing takes another that will do; 0.8 if missing (common practice, no published source)',
    }),
    figures: z.exactOptional(ids).meta({ description: 'Figures to consider; all that have a recipe if missing' }),
    shares: z.exactOptional(z.record(id, weight)).meta({
      description:
        'How often each figure is asked for, on any scale: nobody asks for one that is not among them; from the menus of the gigs if missing',
    }),
    tools: z.exactOptional(
      z.array(z.strictObject({ item: id, need: z.enum(['must-have', 'spare', 'later']), count: z.exactOptional(count) })).max(200),
    ),
    have: z
      .exactOptional(z.array(z.strictObject({ item: id, count: countOrNone })).max(2000))
      .meta({ description: 'What is there already, in pieces' }),
    forcedIn: z.exactOptional(ids).meta({ description: 'Offers or tools to buy in any case' }),
    takenOut: z.exactOptional(ids).meta({ description: 'Offers, items or tools not to buy' }),
  })
  .meta({ id: 'KitWishes', description: 'What a newcomer wishes: money, hours, kind of work' }) satisfies z.ZodType<BookKitWishes>;
