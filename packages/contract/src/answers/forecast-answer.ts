import type { ForecastSummary } from '@twistwright/planner';
import { z } from 'zod';
import { id } from '../book/basic-values.ts';
import { chance, minute, spreadSchema as spread, whole } from './answer-values.ts';

const guests = spread.meta({ description: 'Guests, over the runs' });
const shareOfGuests = spread.meta({ description: 'Share of guests, 0 to 1, over the runs' });
const minutes = spread.meta({ description: 'Minutes, over the runs' });
const clock = spread.meta({ description: 'Minutes from the start of the gig, over the runs' });

/** A gig that was played many times. */
export const forecastSchema = z
  .strictObject({
    runs: whole.meta({ description: 'Afternoons that were played' }),
    arrived: guests,
    served: guests,
    shareServed: shareOfGuests,
    turnedAway: guests,
    notJoined: guests,
    gaveUp: guests,
    unserved: guests,
    disappointed: guests,
    shareWaited: shareOfGuests,
    meanWaitOfAll: minutes,
    meanWait: minutes,
    lastWait: minutes,
    longestWait: minutes,
    shareWithin: shareOfGuests,
    promiseMinutes: z.number().meta({ description: 'Minutes of wait that `shareWithin` is held against' }),
    waits: z
      .exactOptional(z.strictObject({ p10: z.number(), p50: z.number(), p90: z.number() }))
      .meta({ description: 'Minutes that the served waited, over all of all runs, to the half minute' }),
    longestLine: guests,
    finish: clock,
    closedAt: clock,
    chanceOfClosing: chance,
    pops: spread.meta({ description: 'Balloons that burst, over the runs' }),
    line: z
      .array(z.strictObject({ minute, p10: z.number(), p50: z.number(), p90: z.number() }))
      .meta({ description: 'People waiting, every five minutes' }),
    busy: z
      .array(z.strictObject({ artist: id, share: spread }))
      .meta({ description: 'Share of the time at the gig that each artist is making, 0 to 1' }),
    figures: z.array(z.strictObject({ figure: id, made: spread })).meta({ description: 'Figures made, in the order of the menu' }),
  })
  .meta({ id: 'Forecast', description: 'What the runs of one gig say' }) satisfies z.ZodType<ForecastSummary>;

/** What one gig takes of each item, by item id. */
export const takesSchema = z
  .record(
    id,
    z.strictObject({
      usual: whole.meta({ description: 'Pieces used in the middle run' }),
      enough: whole.meta({ description: 'Pieces that are enough for the chance, jointly with all other items' }),
    }),
  )
  .meta({ description: 'Pieces of each item, by item id' });
