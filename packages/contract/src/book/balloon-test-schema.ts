import type { BalloonTest } from '@twistwright/books';
import { z } from 'zod';
import { id, localDate, name, note } from './basic-values.ts';

/** Measured lengths; what the size makes likely is checked with the book. */
const inches = z.number().gt(0).max(1000);
const measured = z.array(inches).min(1).max(200);

export const twoMinuteTestSchema = z.strictObject({
  flatInches: z.exactOptional(measured.meta({ description: 'Flat working length of each balloon, from the knot' })),
  fullInches: z.exactOptional(measured.meta({ description: 'Length of each balloon that was blown up fully' })),
  twists: z.exactOptional(
    z
      .array(
        z.strictObject({
          bubbles: z.int().min(1).max(100),
          tailInches: inches.meta({ description: 'Flat tail before the first bubble' }),
          leftInches: z.number().min(0).max(1000).meta({ description: 'Flat tail after the last one' }),
        }),
      )
      .min(1)
      .max(200),
  ),
});

export const balloonTestSchema = z
  .strictObject({
    id,
    day: localDate,
    size: id,
    maker: z.exactOptional(name),
    item: z.exactOptional(id),
    ...twoMinuteTestSchema.shape,
    note: z.exactOptional(note),
  })
  .meta({
    id: 'BalloonTest',
    description: 'A two-minute test of one bag: what was measured, in inches, and nothing that was worked out from it',
  }) satisfies z.ZodType<BalloonTest>;
