import { z } from 'zod';
import { offerSchema } from '../book/supply-schema.ts';
import { problemSchema } from '../http/problem-details.ts';
import { priceMappingSchema } from './price-mapping-schema.ts';
import type { PriceList } from './read-prices.ts';

export const priceListSchema = z
  .strictObject({
    mapping: priceMappingSchema,
    offers: z.array(offerSchema),
    added: z.array(offerSchema),
    changed: z.array(z.strictObject({ before: offerSchema, after: offerSchema })),
    gone: z.array(offerSchema),
    unmatched: z.array(z.strictObject({ line: z.int(), cells: z.array(z.string()), problem: problemSchema })),
    rows: z.strictObject({ all: z.int(), above: z.int(), blank: z.int() }),
  })
  .meta({ id: 'PriceList', description: 'What a price list says; every line of it is accounted for' }) satisfies z.ZodType<PriceList>;
