export { type ItemNeed, type NeedCause, type Needs, needsOf, type StockOfItem, totalsOf } from './item-needs.ts';
export { chanceOfStock, type JointLevel, jointLevel } from './joint-level.ts';
export { type GigSample, type HandNeed, type JointSamples, requireSoundSamples } from './joint-samples.ts';
