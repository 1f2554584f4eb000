import { fail, ok, type Problem, type Result } from '@twistwright/units';
import type { Length, Move, Piece, Recipe } from '../recipe.ts';
import { shippedSizes } from '../sizes/shipped-sizes.ts';
import { type Size, sizeOf } from '../sizes/size.ts';

/**
 * The same figure with every balloon of one size code exchanged for another: bubbles grow with the diameter, so that it keeps its looks.
 * Tail and start are worked out anew. Refuses codes that are not known or not of the same shape.
 * @example rescale({ pieces: [], finishing: [] }, '260', '160') // -> { ok: true, value: { pieces: [], finishing: [] } }
 */
export function rescale(recipe: Recipe, from: string, to: string, sizes: readonly Size[] = shippedSizes): Result<Recipe> {
  const [old, other] = [sizeOf(from, sizes), sizeOf(to, sizes)];
  const unknown = [old === undefined ? from : undefined, other === undefined ? to : undefined].filter((code) => code !== undefined);
  if (old === undefined || other === undefined) return fail(unknown.map((code) => problem(`The size “${code}” is not known.`)));
  if (old.shape !== other.shape)
    return fail([problem(`A ${to} cannot stand in for a ${from}: one is a ${other.shape}, the other a ${old.shape}.`)]);
  const factor = other.diameterInches / old.diameterInches;
  return ok({ ...recipe, pieces: recipe.pieces.map((piece) => (piece.size === from ? rescalePiece(piece, to, factor) : piece)) });
}

const problem = (sentence: string): Problem => ({ code: 'recipe.size', path: [], sentence, weight: 'error' });
/** Hundredths of an inch: finer than any hand. */
const times = (inches: number, factor: number): number => Math.max(0.05, Number((inches * factor).toFixed(2)));

function rescalePiece({ tailInches: _tail, inflateInches, keepInches, ...piece }: Piece, size: string, factor: number): Piece {
  return {
    ...piece,
    size,
    ...(inflateInches === undefined ? {} : { inflateInches: times(inflateInches, factor) }),
    ...(keepInches === undefined ? {} : { keepInches: times(keepInches, factor) }),
    run: piece.run.map((move) => rescaleMove(move, factor)),
  };
}

function rescaleMove(move: Move, factor: number): Move {
  if (move.kind === 'repeat') return { ...move, moves: move.moves.map((inner) => rescaleMove(inner, factor)) };
  return 'length' in move ? { ...move, length: rescaleLength(move.length, factor) } : move;
}
const rescaleLength = (length: Length, factor: number): Length => (typeof length === 'number' ? times(length, factor) : length);
