export { axisOf } from './axis.ts';
export { type Body, type Capsules, type Leanings, noLeanings, type Rods } from './body.ts';
export { type Fit, fitOf } from './measure.ts';
export { type Relaxation, relax } from './relax.ts';
export { type Shape, type ShapeBubble, type ShapeCapsule, shapeOf, solvedShape } from './shape-of.ts';
export type { Form, Skeleton, SkeletonBubble } from './skeleton.ts';
export { skeletonOf } from './skeleton-of.ts';
