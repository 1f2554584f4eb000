import { z } from 'zod';
import type { PriceMapping } from './price-mapping.ts';

const column = z.exactOptional(z.string().min(1).max(200));
export const priceMappingSchema = z
  .strictObject({
    separator: z.exactOptional(z.enum([',', ';', '\t', '|'])),
    item: column,
    size: column,
    colour: column,
    finish: column,
    print: column,
    description: column,
    count: column,
    price: column,
    breaks: z.exactOptional(z.array(z.strictObject({ column: z.string().min(1).max(200), bags: z.int().min(2).max(100_000) })).max(50)),
    mostBags: column,
    reference: column,
  })
  .meta({ id: 'PriceMapping', description: 'Which column of a price list holds what, by its heading' }) satisfies z.ZodType<PriceMapping>;
