import type { Copies, Move, Piece, Recipe } from '../recipe.ts';
import type { Line } from './line.ts';
import { writeLine } from './write-line.ts';

/**
 * The recipe in the notation, in its plain form: minutes first, then the balloons with a blank line between, then the finishing. Reading it
 * again gives an equal model.
 * @example writeRecipe({ pieces: [{ name: 'eyes', size: 'round-5', role: 'eyes', print: 'eyes', count: 2, run: [] }], finishing: [] }) // -> 'balloon eyes: round-5 in eyes, printed eyes, x 2\n'
 */
export function writeRecipe(recipe: Recipe): string {
  const blocks: string[][] = [];
  if (recipe.minutes !== undefined) blocks.push([writeLine({ kind: 'minutes', minutes: recipe.minutes })]);
  for (const piece of recipe.pieces) blocks.push(writePiece(piece));
  if (recipe.finishing.length > 0) blocks.push(recipe.finishing.map((finishing) => writeLine({ kind: 'finish', finishing })));
  return blocks.length === 0 ? '' : `${blocks.map((block) => block.join('\n')).join('\n\n')}\n`;
}

/** Two spaces for each level. */
export const indented = (level: number, line: Line): string => {
  const text = writeLine(line);
  return text === '' ? '' : '  '.repeat(level) + text;
};

function writePiece(piece: Piece): string[] {
  const { name, size, role, finish, print, count, mirrored, around } = piece;
  const copies =
    count === 1 && !mirrored && around === undefined
      ? undefined
      : copiesOf({ times: count, ...(mirrored ? { mirrored } : {}), ...(around === undefined ? {} : { around }) });
  const header: Line = {
    kind: 'piece',
    name,
    size,
    role,
    ...(finish === undefined ? {} : { finish }),
    ...(print === undefined ? {} : { print }),
    ...(copies === undefined ? {} : { copies }),
  };
  const air: Line[] = [];
  if (piece.tailInches !== undefined) air.push({ kind: 'leave', inches: piece.tailInches });
  if (piece.inflateInches !== undefined) air.push({ kind: 'inflate', inches: piece.inflateInches });
  if (piece.keepInches !== undefined) air.push({ kind: 'keep', inches: piece.keepInches });
  if (piece.burped) air.push({ kind: 'burp' });
  return [indented(0, header), ...air.map((line) => indented(1, line)), ...writeMoves(piece.run, 1)];
}

function writeMoves(moves: readonly Move[], level: number): string[] {
  return moves.flatMap((move) => {
    if (move.kind !== 'repeat') return [indented(level, { kind: 'move', move })];
    const copies = copiesOf(move);
    const only = move.moves.length === 1 ? move.moves[0] : undefined;
    if (only !== undefined && only.kind !== 'repeat' && 'length' in only) return [indented(level, { kind: 'move', move: only, copies })];
    return [indented(level, { kind: 'repeat', copies }), ...writeMoves(move.moves, level + 1), indented(level, { kind: 'end' })];
  });
}

const copiesOf = ({ times, mirrored, around }: Copies): Copies => ({
  times,
  ...(mirrored ? { mirrored } : {}),
  ...(around === undefined ? {} : { around }),
});
