import { z } from 'zod';
import { calibrationSchema, fitChangeSchema } from './answers/index.ts';
import { balloonTestSchema } from './book/balloon-test-schema.ts';
import { id, name } from './book/basic-values.ts';
import { route } from './http/route.ts';

const { day: _day, id: _id, ...tried } = balloonTestSchema.shape;

/** What is known of balloons by two-minute tests; the tests themselves are a list of the book. */
export const calibrationRoutes = {
  calibration: {
    known: route({
      method: 'get',
      path: '/api/calibration/:size',
      summary: 'What is believed of the balloons of a size code, by maker',
      description: 'By the tests of the book: own ones first, then those of other makers, then the numbers of the size code.',
      params: z.strictObject({ size: id }),
      query: z.strictObject({
        maker: z.exactOptional(name).meta({ description: 'Only of this maker; all that the book knows if missing' }),
      }),
      response: z.strictObject({ calibrations: z.array(calibrationSchema) }),
      refuses: [404, 409],
      heavy: true,
      book: 'reads',
      example: { params: { size: '260' }, query: { maker: 'Ardle & Wynn' } },
    }),
    tried: route({
      method: 'post',
      path: '/api/calibration',
      summary: 'What a two-minute test would change: the numbers, and which figures fit; nothing is stored',
      description: 'To keep the test, put it to `/api/balloonTests/{id}`. Lengths are inches.',
      body: z.strictObject(tried),
      response: z.strictObject({ before: calibrationSchema, after: calibrationSchema, figures: z.array(fitChangeSchema) }),
      refuses: [404, 409],
      heavy: true,
      example: {
        body: {
          size: '260',
          maker: 'Ardle & Wynn',
          flatInches: [11.1, 11.3],
          fullInches: [60.5],
          twists: [{ bubbles: 10, tailInches: 6, leftInches: 3.1 }],
        },
      },
    }),
  },
} as const;
