import type { Move, Recipe } from '../recipe.ts';
import { shippedSizes } from '../sizes/shipped-sizes.ts';
import { type Size, sizeOf } from '../sizes/size.ts';

/** What hands have to know. */
export type Technique =
  | 'basic twist'
  | 'lock'
  | 'pinch'
  | 'fold'
  | 'loop'
  | 'tulip'
  | 'apple'
  | 'roll-through'
  | 'split'
  | 'pop'
  | 'ring of bubbles'
  | 'lock to an earlier twist'
  | 'join two balloons'
  | 'tie in a round'
  | 'tuck'
  | 'bend'
  | 'flat gap'
  | 'cut and tie off'
  | 'draw';

const ofKind = {
  bubble: 'basic twist',
  pinch: 'pinch',
  fold: 'fold',
  loop: 'loop',
  tulip: 'tulip',
  apple: 'apple',
  roll: 'roll-through',
  flat: 'flat gap',
} as const;

/**
 * Every technique a recipe uses, without repetition, in the order of first use.
 * @example techniquesOf({ pieces: [{ name: 'a', size: '260', role: 'b', count: 1, run: [{ kind: 'pinch', length: 1 }] }], finishing: [] }) // -> ['pinch']
 */
export function techniquesOf(recipe: Recipe, sizes: readonly Size[] = shippedSizes): readonly Technique[] {
  const found = new Set<Technique>();
  for (const piece of recipe.pieces) {
    const tube = sizeOf(piece.size, sizes)?.shape === 'tube';
    for (const technique of piece.run.flatMap((move) => ofMove(move, tube))) found.add(technique);
  }
  if (recipe.finishing.some((finishing) => finishing.with === 'marker')) found.add('draw');
  return [...found];
}

function ofMove(move: Move, tube: boolean): readonly Technique[] {
  switch (move.kind) {
    case 'repeat':
      return move.moves.flatMap((inner) => ofMove(inner, tube));
    case 'lock':
      return ['to' in move ? 'lock to an earlier twist' : move.last === 2 ? 'lock' : 'ring of bubbles'];
    case 'join':
      return [tube ? 'join two balloons' : 'tie in a round'];
    case 'tuck':
    case 'pop':
      return [move.kind];
    case 'trim':
      return ['cut and tie off'];
    case 'mark':
    case 'note':
      return [];
    case 'flat':
      return ['flat gap'];
    default:
      return [
        ...(tube ? [ofKind[move.kind]] : []),
        ...(move.split ? (['split'] as const) : []),
        ...(tube && (move.bendDegrees ?? 0) >= 45 ? (['bend'] as const) : []),
      ];
  }
}
