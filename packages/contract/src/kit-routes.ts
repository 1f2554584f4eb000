import { z } from 'zod';
import { amount, name } from './book/basic-values.ts';
import { route } from './http/route.ts';
import { kitWishesSchema } from './kit-wishes-schema.ts';

/** Size of the paper (the business's if missing), and a name for the kit, which stands in its title. */
const onPaper = z.strictObject({ paper: z.exactOptional(z.enum(['A4', 'Letter'])), name: z.exactOptional(name) });

/** Papers about a first kit, and how it grows. The wishes are those of `POST /api/kit`. */
export const kitRoutes = {
  handout: route({
    method: 'post',
    path: '/api/kit/handout',
    summary: 'The first kit as a list to print: boxes to tick by shop, why each is there, cautions, the contact as a QR code',
    query: onPaper,
    body: kitWishesSchema,
    gives: 'pdf',
    response: z.file(),
  }),
  learning: route({
    method: 'post',
    path: '/api/kit/learning',
    summary: 'The figures that the kit makes, in the order in which to learn them',
    query: onPaper,
    body: kitWishesSchema,
    gives: 'pdf',
    response: z.file(),
  }),
  page: route({
    method: 'post',
    path: '/api/kit/page',
    summary: 'List, figures and contact as one HTML file that opens without the app',
    query: onPaper.pick({ name: true }),
    body: kitWishesSchema,
    gives: 'html',
    response: z.string(),
  }),
  csv: route({
    method: 'post',
    path: '/api/kit/list',
    summary: 'The list as CSV (RFC 4180)',
    body: kitWishesSchema,
    gives: 'csv',
    response: z.string(),
  }),
  growth: route({
    method: 'post',
    path: '/api/kit/growth',
    summary: 'When the kit pays for itself, and when what comes next can be bought',
    body: z.strictObject({
      wishes: kitWishesSchema,
      earnings: z.strictObject({
        hoursPerGig: z.number().gt(0).max(24),
        feePerHour: amount,
        tipPerGuest: amount,
        costPerGig: amount,
        gigsPerWeek: z.number().gt(0).max(50),
        tipSigma: z.exactOptional(z.number().min(0).max(3)),
        setAside: z.exactOptional(z.number().min(0).max(1)),
        weeks: z.exactOptional(z.number().min(1).max(520)),
      }),
    }),
    response: z.record(z.string(), z.unknown()),
  }),
} as const;
