export * from './notation/problem-codes.ts';
export { type PlacedRecipe, readPlacedRecipe, readRecipe } from './notation/read-recipe.ts';
export { type Deed, type Places, type Tuck, type Unfolded, type UnfoldedBubble, unfold } from './notation/unfold.ts';
export type { Vector } from './notation/vector.ts';
export { writeRecipe } from './notation/write-recipe.ts';
export * from './recipe.ts';
export { shippedSizes } from './sizes/shipped-sizes.ts';
export { isTube, type Size, sizeOf, type Tube } from './sizes/size.ts';
