import type { Artist, Client } from '@twistwright/books';
import { z } from 'zod';
import { factor, id, name } from './basic-values.ts';
import { contactSchema } from './business-schema.ts';

export const artistSchema = z
  .strictObject({ id, name, pace: factor, figures: z.exactOptional(z.array(id).max(10_000)) })
  .meta({ id: 'Artist', description: 'One pair of hands' }) satisfies z.ZodType<Artist>;

export const clientSchema = z
  .strictObject({ id, name, contact: z.exactOptional(contactSchema) })
  .meta({ id: 'Client' }) satisfies z.ZodType<Client>;
