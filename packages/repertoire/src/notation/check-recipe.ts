import type { Problem } from '@twistwright/units';
import { type AirOptions, airOf, type PieceAir } from '../air/air-of.ts';
import { readPlacedRecipe } from './read-recipe.ts';
import { type UnfoldedBubble, unfold } from './unfold.ts';

/**
 * Everything there is to say about a text, in the order of its lines: what cannot be read or made (weight error), and pieces that need more
 * balloon than there is or have a short tail (weight warning), each at the line of the bubble that is one too many.
 * @example checkRecipe('balloon a: 260 in body\nbubble 70')[0]?.line // -> 2
 */
export function checkRecipe(text: string, options: AirOptions = {}): readonly Problem[] {
  const read = readPlacedRecipe(text, options.sizes);
  if (!read.ok) return read.error;
  const { recipe, places } = read.value;
  const { bubbles } = unfold(recipe, options.sizes);
  const problems = airOf(recipe, options).pieces.flatMap((air) => {
    const piece = recipe.pieces[air.piece];
    const own = bubbles.filter((bubble) => bubble.piece === air.piece && bubble.copy === 0);
    const move = own[air.runsOutAt?.bubble ?? -1]?.move ?? piece;
    return airProblems(air, own, move === undefined ? undefined : places.get(move));
  });
  return problems.sort((a, b) => (a.line ?? 0) - (b.line ?? 0));
}

function airProblems(
  air: PieceAir,
  bubbles: readonly UnfoldedBubble[],
  place: { readonly line: number; readonly column: number } | undefined,
): readonly Problem[] {
  const found = (sentence: string, todo?: string): Problem => ({
    code: 'recipe.does-not-fit',
    path: [],
    sentence,
    ...(todo === undefined ? {} : { todo }),
    weight: 'warning',
    ...place,
  });
  if (air.runsOutAt === undefined) return air.verdict === 'fits' ? [] : air.cautions.map((caution) => found(`“${air.name}”: ${caution}`));
  const number = air.runsOutAt.bubble + 1;
  const label = air.runsOutAt.label === undefined ? '' : ` (${air.runsOutAt.label})`;
  const missing = Number((-air.leftInflatedInches.mid).toFixed(1));
  return [
    found(
      `“${air.name}” runs out of balloon at bubble ${number} of ${bubbles.length}${label}: ${missing} in are missing.`,
      air.changes[0]?.sentence,
    ),
  ];
}
