import type { Advice, CoverageAnswer, Growth, KitPlan, NearestKit } from '@twistwright/planner';
import { describe, expectTypeOf, test } from 'vitest';
import type { z } from 'zod';
import type {
  adviceSchema,
  coverageAnswerSchema,
  FigureAnswer,
  FrameAnswer,
  figureAnswerSchema,
  frameAnswerSchema,
  growthSchema,
  kitPlanSchema,
  ListedFigure,
  listedFigureSchema,
  nearestKitSchema,
  PlanAnswer,
  planAnswerSchema,
  WhatIfAnswer,
  whatIfSchema,
} from './index.ts';

/** The same value with nothing said about who may change it: what a schema and a domain type have to agree on, key by key. */
type Plain<T> = T extends string | number | boolean
  ? T
  : T extends readonly unknown[]
    ? { -readonly [K in keyof T]: Plain<T[K]> }
    : { -readonly [K in keyof T]: Plain<T[K]> };
type Form<S extends z.ZodType> = Plain<z.output<S>>;

describe('each answer has the keys of the type that makes it, no more and no less', () => {
  test('plan', () => expectTypeOf<Form<typeof planAnswerSchema>>().toEqualTypeOf<Plain<PlanAnswer>>());
  test('advice', () => expectTypeOf<Form<typeof adviceSchema>>().toEqualTypeOf<Plain<Advice>>());
  test('what if', () => expectTypeOf<Form<typeof whatIfSchema>>().toEqualTypeOf<Plain<WhatIfAnswer>>());
  test('kit', () => expectTypeOf<Form<typeof kitPlanSchema>>().toEqualTypeOf<Plain<KitPlan>>());
  test('nearest kit', () => expectTypeOf<Form<typeof nearestKitSchema>>().toEqualTypeOf<Plain<NearestKit>>());
  test('growth', () => expectTypeOf<Form<typeof growthSchema>>().toEqualTypeOf<Plain<Growth>>());
  test('cover', () => expectTypeOf<Form<typeof coverageAnswerSchema>>().toEqualTypeOf<Plain<CoverageAnswer>>());
  test('figure', () => expectTypeOf<Form<typeof figureAnswerSchema>>().toEqualTypeOf<Plain<FigureAnswer>>());
  test('list of figures', () => expectTypeOf<Form<typeof listedFigureSchema>>().toEqualTypeOf<Plain<ListedFigure>>());
  test('frame', () => expectTypeOf<Form<typeof frameAnswerSchema>>().toEqualTypeOf<Plain<FrameAnswer>>());
});
