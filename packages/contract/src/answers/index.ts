export { adviceSchema, type WhatIfAnswer, whatIfAnswer, whatIfSchema } from './advice-answer.ts';
export * from './calibration-answer.ts';
export {
  type FigureAnswer,
  figureAnswer,
  figureAnswerSchema,
  type ListedFigure,
  listedFigure,
  listedFigureSchema,
} from './figure-answer.ts';
export { type FrameAnswer, frameAnswer, frameAnswerSchema } from './frame-answer.ts';
export { coverageAnswerSchema, growthSchema, kitPlanSchema, nearestKitSchema } from './kit-answer.ts';
export { type GigPlanAnswer, type PlanAnswer, planAnswer, planAnswerSchema } from './plan-answer.ts';
