export { type Advice, type AdviceOptions, adviceFor } from './advice-for.ts';
export { type KitLesson, lessonsOfKit, piecesOfKit } from './figures-of-kit.ts';
export { type Forecast, type ForecastOptions, type ForecastSummary, forecastGig, seedOf, summaryOf } from './forecast-gig.ts';
export { type FirstEarnings, growKit } from './grow-kit.ts';
export { jointSamplesOf } from './joint-samples-of.ts';
export { materialsOf } from './materials-of.ts';
export {
  comingGigs,
  type GigPlan,
  handNeeds,
  type Outlook,
  outlookOf,
  type PlanOptions,
  takesOf,
  usableStock,
  usedAt,
} from './outlook-of.ts';
export { type Plan, type PlanBookOptions, planBook, shopFor } from './plan-book.ts';
export { planBought } from './plan-bought.ts';
export { boughtOffers, type KitPlan, type NearestKit, nearestKit, type PlanKitOptions, planKit } from './plan-kit.ts';
