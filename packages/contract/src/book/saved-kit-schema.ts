import type { SavedKit } from '@twistwright/books';
import { z } from 'zod';
import { kitWishesSchema } from '../kit-wishes-schema.ts';
import { count, id, localDate, name } from './basic-values.ts';

export const savedKitSchema = z
  .strictObject({
    id,
    name,
    savedOn: localDate,
    wishes: kitWishesSchema,
    lines: z.array(z.strictObject({ offer: id, bags: count })).max(2000),
    tools: z.array(id).max(200),
  })
  .meta({ id: 'SavedKit', description: 'A first kit that was kept under a name' }) satisfies z.ZodType<SavedKit>;
