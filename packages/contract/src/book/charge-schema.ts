import type { ChargeSettings } from '@twistwright/books';
import { z } from 'zod';
import { amount, basisPoints, mileRate, miles, minutes, name } from './basic-values.ts';
import { byText } from './record.ts';

export const chargeSettingsSchema = z
  .strictObject({
    hourly: z.exactOptional(amount),
    minimum: z.exactOptional(amount),
    byKind: z.exactOptional(
      byText(
        z.strictObject({
          hourly: z.exactOptional(amount),
          minimum: z.exactOptional(amount),
          perPiece: z.exactOptional(amount),
          perHead: z.exactOptional(amount),
        }),
      ),
    ),
    travel: z.exactOptional(z.strictObject({ freeMiles: miles, perMile: mileRate })),
    early: z.exactOptional(z.strictObject({ freeMinutes: minutes, perQuarter: amount })),
    overtime: z.exactOptional(z.strictObject({ perQuarter: amount })),
    tax: z.exactOptional(z.strictObject({ basisPoints, name, source: z.exactOptional(name) })),
    deposit: z.exactOptional(z.strictObject({ basisPoints, least: z.exactOptional(amount) })),
    balanceDaysBefore: z.exactOptional(z.int().min(0).max(730)),
    mileCost: z.exactOptional(z.strictObject({ perMile: mileRate, source: name, year: z.int().min(1900).max(2200) })),
    fixedCosts: z.exactOptional(z.strictObject({ perYear: amount, gigsPerYear: z.int().min(1).max(100_000) })),
    taxReserve: z.exactOptional(z.strictObject({ basisPoints, source: z.exactOptional(name) })),
    preparationMinutes: z.exactOptional(minutes),
    setUpMinutes: z.exactOptional(minutes),
    strikeMinutes: z.exactOptional(minutes),
    wantedHourly: z.exactOptional(amount),
  })
  .meta({
    id: 'ChargeSettings',
    description: 'Rates and rules behind a quote; amounts in minor units',
  }) satisfies z.ZodType<ChargeSettings>;
