import type { Charge } from '@twistwright/planner';
import { z } from 'zod';
import { basisPoints, localDate } from '../book/basic-values.ts';
import { amount, moneyEitherWay, spreadSchema } from './answer-values.ts';

const minutesOfAll = z.number().meta({ description: 'Minutes of all artists together' });
const minorUnits = spreadSchema.meta({ description: 'Minor units with fractions, over the runs' });

export const chargeSchema = z
  .strictObject({
    lines: z.array(
      z.strictObject({
        what: z.string(),
        how: z.string().meta({ description: 'How the amount comes about, in words', examples: ['3 h at £120'] }),
        amount,
      }),
    ),
    net: amount,
    tax: z.exactOptional(z.strictObject({ name: z.string(), basisPoints, amount, source: z.exactOptional(z.string()) })),
    quote: amount.meta({ description: 'What the client pays: `net` and tax' }),
    fee: amount.meta({ description: 'What was agreed, else the quote; tax included' }),
    deposit: z.exactOptional(z.strictObject({ amount, paidOn: z.exactOptional(localDate) })),
    balance: z.strictObject({ amount: moneyEitherWay, dueOn: localDate }),
    overtimePerQuarter: z.exactOptional(amount).meta({ description: 'For every 15 minutes begun beyond the end, all artists' }),
    floor: z.strictObject({
      materials: minorUnits,
      miles: amount.meta({ description: 'Cost of driving' }),
      milesDriven: z.number().meta({ description: 'Miles, there and back' }),
      mileSource: z.exactOptional(z.string()),
      fixedShare: amount,
      taxReserve: minorUnits,
      minutes: z.strictObject({
        atGig: minutesOfAll,
        settingUp: minutesOfAll,
        driving: minutesOfAll,
        preparing: minutesOfAll,
        total: minutesOfAll,
      }),
      breakEven: amount.meta({ description: 'Quote, tax included, below which nothing is earned at all' }),
    }),
    hourly: spreadSchema.meta({ description: 'Earned per true hour of one artist, minor units with fractions' }),
    margin: spreadSchema.meta({ description: 'Share of the net fee that is left after costs' }),
    quoteForWanted: z.exactOptional(amount),
    wantedHourly: z.exactOptional(amount),
  })
  .meta({ id: 'Charge', description: 'The quote, and what the gig costs and earns' }) satisfies z.ZodType<Charge>;
