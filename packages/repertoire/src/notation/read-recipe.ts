import type { Problem, Result } from '@twistwright/units';
import { exhausted, fail, ok } from '@twistwright/units';
import type { Finishing, Move, Piece, Recipe } from '../recipe.ts';
import { shippedSizes } from '../sizes/shipped-sizes.ts';
import type { Size } from '../sizes/size.ts';
import { limits } from './limits.ts';
import type { Line } from './line.ts';
import type { RecipeProblemCode } from './problem-codes.ts';
import { readLine } from './read-line.ts';
import { type Places, unfold } from './unfold.ts';

/** A recipe and where each of its pieces, moves and finishings stands in the text. */
export interface PlacedRecipe {
  readonly recipe: Recipe;
  readonly places: Places;
}

/**
 * Reads a recipe in the notation of `docs/recipes.md`. All problems are reported at once, each with line and column (1-based), what was
 * expected and what to do; the text is bounded by `limits`; nothing is thrown, whatever the text.
 * @example readRecipe('balloon sword: 260 in blade') // -> { ok: true, value: { pieces: [{ name: 'sword', size: '260', role: 'blade', count: 1, run: [] }], finishing: [] } }
 */
export function readRecipe(text: string, sizes: readonly Size[] = shippedSizes): Result<Recipe> {
  const read = readPlacedRecipe(text, sizes);
  return read.ok ? ok(read.value.recipe) : read;
}

/** As `readRecipe`, with the places, for an editor that shows a sentence beside its line. */
export function readPlacedRecipe(text: string, sizes: readonly Size[] = shippedSizes): Result<PlacedRecipe> {
  if (text.length > limits.characters) {
    const sentence = `This text has ${text.length} characters; a recipe has at most ${limits.characters}.`;
    return fail([{ code: 'recipe.too-long-text', path: [], sentence, weight: 'error', line: 1, column: 1 }]);
  }
  const assembly = new Assembly();
  for (const [index, line] of text.split(/\r\n|\r|\n/u).entries()) {
    const read = readLine(line, index + 1);
    assembly.problems.push(...read.problems);
    const indent = line.length - line.trimStart().length;
    if (read.line !== undefined) assembly.take(read.line, { line: index + 1, column: indent + 1 });
    else assembly.skip(line);
    if (assembly.problems.length >= limits.problems) break;
  }
  const recipe = assembly.finish();
  if (assembly.problems.length > 0) return fail(assembly.problems.slice(0, limits.problems));
  const { problems } = unfold(recipe, sizes, assembly.places);
  return problems.length > 0 ? fail(problems) : ok({ recipe, places: assembly.places });
}

interface Place {
  readonly line: number;
  readonly column: number;
}
type Writable<T> = { -readonly [K in keyof T]: T[K] };
interface OpenGroup {
  readonly line: Extract<Line, { kind: 'repeat' }>;
  readonly place: Place;
  readonly moves: Move[];
}

/** Puts lines together to a recipe. */
class Assembly {
  readonly problems: Problem[] = [];
  readonly places = new Map<object, Place>();
  readonly #pieces: Writable<Piece>[] = [];
  readonly #finishing: Finishing[] = [];
  readonly #groups: OpenGroup[] = [];
  #run: Move[] = [];
  #minutes: number | undefined;
  /** A header that could not be read still starts a balloon, so that its lines are not reported as well. */
  #lostHeader = false;

  #report(code: RecipeProblemCode, place: Place, sentence: string, todo?: string): void {
    this.problems.push({ code, path: [], sentence, ...(todo === undefined ? {} : { todo }), weight: 'error', ...place });
  }

  skip(text: string): void {
    if (/^\s*balloon\b/iu.test(text)) {
      this.#closePiece();
      this.#lostHeader = true;
    }
    if (/^\s*repeat\b/iu.test(text))
      this.#groups.push({ line: { kind: 'repeat', copies: { times: 1 } }, place: { line: 0, column: 0 }, moves: [] });
    const group = this.#groups.at(-1);
    if (group !== undefined && !/^\s*repeat\b/iu.test(text)) group.moves.push({ kind: 'trim' });
  }

  take(line: Line, place: Place): void {
    switch (line.kind) {
      case 'blank':
        return;
      case 'piece':
        this.#startPiece(line, place);
        break;
      case 'minutes':
        if (this.#minutes !== undefined) this.#report('recipe.twice', place, 'The minutes are given twice.', 'Leave one of the lines out.');
        this.#minutes = line.minutes;
        return;
      case 'finish':
        this.#finishing.push(line.finishing);
        this.places.set(line.finishing, place);
        return;
      case 'leave':
      case 'inflate':
      case 'keep':
      case 'burp':
        this.#air(line, place);
        break;
      case 'move':
        this.#move(line, place);
        break;
      case 'repeat':
        if (!this.#hasBalloon(place)) return;
        this.#groups.push({ line, place, moves: [] });
        if (this.#groups.length === limits.depth + 1)
          this.#report('recipe.group', place, `This group is nested ${this.#groups.length} deep.`, `At most ${limits.depth} deep.`);
        return;
      case 'end':
        this.#endGroup(place);
        break;
      default:
        exhausted(line);
    }
  }

  finish(): Recipe {
    this.#closePiece();
    return { pieces: this.#pieces, finishing: this.#finishing, ...(this.#minutes === undefined ? {} : { minutes: this.#minutes }) };
  }

  #startPiece(line: Extract<Line, { kind: 'piece' }>, place: Place): void {
    this.#closePiece();
    this.#lostHeader = false;
    this.#run = [];
    const { name, size, role, finish, print, copies } = line;
    const piece = {
      name,
      size,
      role,
      ...(finish === undefined ? {} : { finish }),
      ...(print === undefined ? {} : { print }),
      count: copies?.times ?? 1,
      ...(copies?.mirrored ? { mirrored: copies.mirrored } : {}),
      ...(copies?.around === undefined ? {} : { around: copies.around }),
      run: this.#run,
    };
    this.#pieces.push(piece);
    this.places.set(piece, place);
  }

  #closePiece(): void {
    for (const group of this.#groups.splice(0)) {
      if (group.place.line > 0)
        this.#report('recipe.group', group.place, 'This group is not closed.', 'Write “end” on a line of its own after its last move.');
    }
  }

  #hasBalloon(place: Place): boolean {
    if (this.#lostHeader || this.#pieces.length > 0) return true;
    this.#report('recipe.no-balloon', place, 'No balloon has been started yet.', 'Write first, for example: balloon dog: 260 in body');
    return false;
  }

  #air(line: Extract<Line, { kind: 'leave' | 'inflate' | 'keep' | 'burp' }>, place: Place): void {
    if (!this.#hasBalloon(place)) return;
    const piece = this.#pieces.at(-1);
    if (piece === undefined || this.#lostHeader) return;
    if (this.#groups.length > 0) {
      this.#report('recipe.group', place, `“${line.kind}” cannot be inside a group.`, 'Put it after the line of the balloon.');
      return;
    }
    if (line.kind === 'burp') {
      if (piece.burped) this.#report('recipe.twice', place, '“burp” is given twice.', 'Leave one of the lines out.');
      piece.burped = true;
      return;
    }
    const key = ({ leave: 'tailInches', inflate: 'inflateInches', keep: 'keepInches' } as const)[line.kind];
    if (piece[key] !== undefined) this.#report('recipe.twice', place, `“${line.kind}” is given twice.`, 'Leave one of the lines out.');
    const other = key === 'tailInches' ? piece.inflateInches : key === 'inflateInches' ? piece.tailInches : undefined;
    if (other !== undefined)
      this.#report('recipe.twice', place, '“leave” and “inflate” say the same on two rulers.', 'Leave one of the lines out.');
    piece[key] = line.inches;
  }

  #move(line: Extract<Line, { kind: 'move' }>, place: Place): void {
    this.places.set(line.move, place);
    if (!this.#hasBalloon(place)) return;
    const into = this.#groups.at(-1)?.moves ?? this.#run;
    if (line.copies === undefined) {
      into.push(line.move);
      return;
    }
    const repeat: Move = { kind: 'repeat', ...line.copies, moves: [line.move] };
    this.places.set(repeat, place);
    into.push(repeat);
  }

  #endGroup(place: Place): void {
    const group = this.#groups.pop();
    if (group === undefined) {
      this.#report('recipe.group', place, 'There is no group to end here.', 'Leave this line out, or start the group with “repeat x 2”.');
      return;
    }
    if (group.moves.length === 0 && group.place.line > 0)
      this.#report('recipe.group', group.place, 'There is nothing in this group.', 'Put the moves between “repeat” and “end”.');
    const repeat: Move = { kind: 'repeat', ...group.line.copies, moves: group.moves };
    this.places.set(repeat, group.place);
    (this.#groups.at(-1)?.moves ?? this.#run).push(repeat);
  }
}
