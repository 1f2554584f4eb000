import type { Coverage } from '@twistwright/planner';
import { money } from '@twistwright/units';
import { z } from 'zod';
import { coverageAnswerSchema, growthSchema, kitPlanSchema, nearestKitSchema } from './answers/index.ts';
import { amount, count, id, name } from './book/basic-values.ts';
import { route } from './http/route.ts';
import { kitWishesSchema } from './kit-wishes-schema.ts';

/** Size of the paper (the business's if missing), and a name for the kit, which stands in its title. */
const onPaper = z.strictObject({
  paper: z.exactOptional(z.enum(['A4', 'Letter'])).meta({ description: "Size of the paper; the business's own if missing" }),
  name: z.exactOptional(name).meta({ description: 'Name of the kit, for its title' }),
});
const wishes = {
  budget: money(6000),
  hours: 6,
  kind: 'parties' as const,
  mostColours: 5,
  figures: ['dog', 'sword', 'tulip', 'swan', 'mouse', 'giraffe'],
};
const papers = { query: { paper: 'A4', name: 'For Wren' }, body: wishes } as const;
const kitRefusals = { refuses: [404, 409], heavy: true } as const;

/** A plain coverage problem as it is sent: figures name their bags. */
const coverageSchema = z
  .strictObject({
    name: z.exactOptional(name),
    budget: amount,
    bags: z.array(z.strictObject({ name, price: amount })).max(2000),
    figures: z
      .array(
        z.strictObject({
          name,
          value: z.number().min(0).max(1e12).meta({ description: 'What it is worth to be able to make this figure' }),
          anyOf: z.array(z.array(name).max(100)).max(1000).meta({ description: 'Any one of these sets of bags is enough' }),
        }),
      )
      .max(2000),
  })
  .meta({ id: 'Coverage', description: 'Which bags let the figures be made that are worth the most' }) satisfies z.ZodType<
  Pick<Coverage, 'budget' | 'bags'>
>;

/** The wishes, and the kit that was found for them: papers about it take no second search. */
const paperWishesSchema = kitWishesSchema
  .extend({
    bought: z.exactOptional(z.array(z.strictObject({ offer: id, bags: count })).max(2000)).meta({
      description:
        'Bags by offer of the kit that was planned before, must-have tools among them; planned anew if missing, or if it is not to be had like this any more',
    }),
  })
  .meta({ id: 'KitPaperWishes', description: 'What a newcomer wishes, and the kit that was found for it' });

/** A first kit, its papers, and how it grows. The papers take the wishes of `POST /api/kit`. */
export const kitRoutes = {
  kit: route({
    method: 'post',
    path: '/api/kit',
    summary: 'What a newcomer should buy first for a budget, out of the offers of the book',
    description: 'Refused with a sentence for each thing that stands in the way; `POST /api/kit/nearest` says what is possible instead.',
    body: kitWishesSchema,
    response: kitPlanSchema,
    ...kitRefusals,
    example: { body: wishes },
  }),
  nearestKit: route({
    method: 'post',
    path: '/api/kit/nearest',
    summary: 'What is possible where a kit is refused: the nearest one, and what was changed for it',
    description:
      'With the least money that is enough, without figures, offers, shops and wishes that cannot be used, with all figures asked for alike where nobody asks for any. The kit itself, and no change, where it is not refused.',
    body: kitWishesSchema,
    response: nearestKitSchema,
    ...kitRefusals,
    example: { body: { ...wishes, budget: money(100) } },
  }),
  cover: route({
    method: 'post',
    path: '/api/cover',
    summary: 'A plain coverage problem: which bags let the figures be made that are worth the most',
    body: coverageSchema,
    response: coverageAnswerSchema,
    heavy: true,
    example: {
      body: {
        budget: money(1500),
        bags: [
          { name: 'white 260', price: money(800) },
          { name: 'black 260', price: money(800) },
          { name: 'red 260', price: money(700) },
        ],
        figures: [
          { name: 'swan', value: 5, anyOf: [['white 260']] },
          { name: 'penguin', value: 4, anyOf: [['white 260', 'black 260']] },
          { name: 'flower', value: 3, anyOf: [['red 260'], ['white 260']] },
          { name: 'heart', value: 2, anyOf: [['red 260']] },
        ],
      },
    },
  }),
  kitPapers: {
    handout: route({
      method: 'post',
      path: '/api/kit/handout',
      summary: 'The first kit as a list to print: boxes to tick by shop, why each is there, cautions, the contact as a QR code',
      query: onPaper,
      body: paperWishesSchema,
      gives: 'pdf',
      response: z.file(),
      ...kitRefusals,
      example: papers,
    }),
    learning: route({
      method: 'post',
      path: '/api/kit/learning',
      summary: 'The figures that the kit makes, in the order in which to learn them',
      query: onPaper,
      body: paperWishesSchema,
      gives: 'pdf',
      response: z.file(),
      ...kitRefusals,
      example: papers,
    }),
    page: route({
      method: 'post',
      path: '/api/kit/page',
      summary: 'List, figures and contact as one HTML file that opens without the app',
      query: onPaper.pick({ name: true }),
      body: paperWishesSchema,
      gives: 'html',
      response: z.string(),
      ...kitRefusals,
      example: { query: { name: 'For Wren' }, body: wishes },
    }),
    csv: route({
      method: 'post',
      path: '/api/kit/list',
      summary: 'The list as CSV (RFC 4180)',
      body: paperWishesSchema,
      gives: 'csv',
      response: z.string(),
      ...kitRefusals,
      example: { body: wishes },
    }),
    growth: route({
      method: 'post',
      path: '/api/kit/growth',
      summary: 'When the kit pays for itself, and when what comes next can be bought',
      body: z.strictObject({
        wishes: kitWishesSchema,
        earnings: z.strictObject({
          hoursPerGig: z.number().gt(0).max(24),
          feePerHour: amount.meta({ description: 'Fee for an hour, minor units; 0 for tips alone' }),
          tipPerGuest: amount.meta({ description: 'Mean tip of a guest served, minor units' }),
          costPerGig: amount.meta({ description: 'Travel and the like, minor units' }),
          gigsPerWeek: z.number().gt(0).max(50),
          tipSigma: z
            .exactOptional(z.number().min(0).max(3))
            .meta({ description: "Spread of a gig's tips: standard deviation of the logarithm; 0.5 if missing" }),
          setAside: z.exactOptional(z.number().min(0).max(1)).meta({ description: 'Share put aside for purchases; 0.5 if missing' }),
          weeks: z.exactOptional(z.number().min(1).max(520)).meta({ description: 'Weeks to look ahead; 52 if missing' }),
        }),
      }),
      response: growthSchema,
      ...kitRefusals,
      example: {
        body: {
          wishes,
          earnings: { hoursPerGig: 2, feePerHour: money(2500), tipPerGuest: money(50), costPerGig: money(500), gigsPerWeek: 1 },
        },
      },
    }),
  },
} as const;
