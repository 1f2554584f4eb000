import { unfold } from '../notation/unfold.ts';
import type { Recipe } from '../recipe.ts';
import { shippedSizes } from '../sizes/shipped-sizes.ts';
import { type Size, sizeOf } from '../sizes/size.ts';

/** Minutes a figure takes a practised hand, and whether the recipe says so. */
export interface Minutes {
  readonly minutes: number;
  readonly from: 'recipe' | 'estimate';
}

/**
 * Seconds of the estimate. Fitted by eye to the usual times of dog, sword, bear and a pair of dogs; common practice, no published source.
 * A balloon gets softer and its bubbles harder to keep apart the more of them there are, so each takes longer in a long run.
 */
const seconds = { pumpTube: 8, pumpRound: 5, bubble: 1.8, softening: 1 / 30, loop: 1, lock: 2, join: 4, other: 2, finishing: 9 } as const;

/**
 * Written minutes, else an estimate from balloons, bubbles, twists and finishing.
 * @example minutesOf({ pieces: [], finishing: [], minutes: 2 }) // -> { minutes: 2, from: 'recipe' }
 */
export function minutesOf(recipe: Recipe, sizes: readonly Size[] = shippedSizes): Minutes {
  if (recipe.minutes !== undefined) return { minutes: recipe.minutes, from: 'recipe' };
  const { bubbles, deeds } = unfold(recipe, sizes);
  let total = 0;
  for (const [index, piece] of recipe.pieces.entries()) {
    const tube = sizeOf(piece.size, sizes)?.shape === 'tube';
    const own = bubbles.filter((bubble) => bubble.piece === index && bubble.copy === 0);
    const loops = own.filter(({ kind }) => kind !== 'bubble' && kind !== 'roll' && kind !== 'flat').length;
    const twisting = tube ? own.length * seconds.bubble * (1 + own.length * seconds.softening) + loops * seconds.loop : 0;
    total += piece.count * ((tube ? seconds.pumpTube : seconds.pumpRound) + twisting);
  }
  for (const { move } of deeds) {
    if (move.kind === 'lock') total += seconds.lock;
    else if (move.kind === 'join') total += seconds.join;
    else if (move.kind === 'pop' || move.kind === 'tuck' || move.kind === 'trim') total += seconds.other;
  }
  const finishing = recipe.finishing.reduce((sum, { minutes }) => sum + (minutes ?? seconds.finishing / 60), 0);
  return { minutes: total / 60 + finishing, from: 'estimate' };
}
