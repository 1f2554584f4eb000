import type { Problem } from '@twistwright/units';
import { exhausted } from '@twistwright/units';
import type { BubbleKind, BubbleMove, Copies, Direction, FlatMove, Length, Move, Piece, Recipe } from '../recipe.ts';
import { shippedSizes } from '../sizes/shipped-sizes.ts';
import { type Size, sizeOf } from '../sizes/size.ts';
import { limits } from './limits.ts';
import type { RecipeProblemCode } from './problem-codes.ts';
import { mirrored, turned, type Vector, vectorOf } from './vector.ts';
import { nearestWord, quoted } from './words.ts';

/** Where a piece, move or finishing stands in the text it was read from; keyed by the object itself. */
export type Places = ReadonlyMap<object, { readonly line: number; readonly column: number }>;

/** One bubble (or stretch of flat rubber) with every repeat written out: an edge between two joints. */
export interface UnfoldedBubble {
  /** Index in `recipe.pieces`. */
  readonly piece: number;
  /** 0 for the first of `count` alike. */
  readonly copy: number;
  readonly kind: BubbleKind | 'flat';
  /** As written; a half of a split bubble has `share` 0.5 of it. */
  readonly length: Length;
  readonly share: 0.5 | 1;
  readonly label?: string;
  /** Joint numbers; equal for a loop. */
  readonly from: number;
  readonly to: number;
  /** Unit vector from joint `from` to joint `to`; of a loop, from its twist outwards. */
  readonly aim?: Vector;
  readonly facing?: Vector;
  readonly bendDegrees?: number;
  readonly bendToward?: Vector;
  readonly soft?: true;
  readonly popped?: true;
  /** The move in the recipe that makes it. */
  readonly move: BubbleMove | FlatMove;
}

/** What a person does, one after the other, with repeats written out. */
export interface Deed {
  readonly piece: number;
  readonly copy: number;
  readonly move: Exclude<Move, { kind: 'repeat' }>;
  /** Bubbles that exist when it is done: the first `bubbles` of `Unfolded.bubbles`. */
  readonly bubbles: number;
}

/** Bubbles pushed into others: indexes in `bubbles`. */
export interface Tuck {
  readonly bubbles: readonly number[];
  readonly into: readonly number[];
}

export interface Unfolded {
  readonly bubbles: readonly UnfoldedBubble[];
  /** How many joints there are; numbers run from 0 without gaps. */
  readonly joints: number;
  /** Joint of every mark. */
  readonly marks: ReadonlyMap<string, number>;
  readonly tucks: readonly Tuck[];
  readonly deeds: readonly Deed[];
  /** What is wrong with it; when not empty the rest is what could be understood. */
  readonly problems: readonly Problem[];
}

/**
 * Writes out repeats and copies, follows every balloon from twist to twist, and merges joints that are locked or joined. Reports everything
 * that cannot be made. Bounded by `limits`, never throws.
 */
export function unfold(recipe: Recipe, sizes: readonly Size[] = shippedSizes, places: Places = new Map()): Unfolded {
  const unfolding = new Unfolding(sizes, places);
  unfolding.recipe(recipe);
  return unfolding.result();
}

type Writable<T> = { -readonly [K in keyof T]: T[K] };
type Turning = (vector: Vector) => Vector;
type Plain = Exclude<Move, { kind: 'repeat' }>;
interface Mark {
  readonly joint: number;
  readonly piece: number;
}
/** One move of the trail of a piece: where it began, which bubbles it made. */
interface Leg {
  readonly start: number;
  readonly end: number;
  readonly bubbles: readonly number[];
}

class Unfolding {
  readonly #sizes: readonly Size[];
  readonly #places: Places;
  readonly #problems: Problem[] = [];
  readonly #bubbles: Writable<UnfoldedBubble>[] = [];
  readonly #parent: number[] = [];
  readonly #marks = new Map<string, Mark>();
  readonly #tucks: Tuck[] = [];
  readonly #deeds: Deed[] = [];

  constructor(sizes: readonly Size[], places: Places) {
    this.#sizes = sizes;
    this.#places = places;
  }

  report(code: RecipeProblemCode, at: object, sentence: string, todo?: string): void {
    if (this.#problems.length >= limits.problems) return;
    const place = this.#places.get(at);
    // A line that is repeated is wrong once.
    if (
      place !== undefined &&
      this.#problems.some((known) => known.code === code && known.line === place.line && known.column === place.column)
    )
      return;
    this.#problems.push({ code, path: [], sentence, ...(todo === undefined ? {} : { todo }), weight: 'error', ...place });
  }

  recipe(recipe: Recipe): void {
    if (this.#tooMuch(recipe)) return;
    const names = new Set<string>();
    for (const [index, piece] of recipe.pieces.entries()) {
      if (names.has(piece.name))
        this.report('recipe.same-name', piece, `There are two balloons with the name “${piece.name}”.`, 'Give one of them another name.');
      names.add(piece.name);
      this.#piece(piece, index);
    }
    for (const finishing of recipe.finishing) {
      if (finishing.on !== undefined && this.#labelled(finishing.on).length === 0) this.#noLabel(finishing, finishing.on);
    }
  }

  #tooMuch(recipe: Recipe): boolean {
    let balloons = 0;
    let moves = 0;
    let bubbles = 0;
    for (const piece of recipe.pieces) {
      const size = sizeOfRun(piece.run, 0);
      balloons += piece.count;
      moves += piece.count * size.moves;
      bubbles += piece.count * size.bubbles;
      if (size.depth > limits.depth)
        this.report('recipe.group', piece, `The groups of “${piece.name}” are nested ${size.depth} deep.`, `At most ${limits.depth} deep.`);
      const over = [
        { what: 'balloons', count: balloons, most: limits.balloons },
        { what: 'bubbles', count: bubbles, most: limits.bubbles },
        { what: 'moves', count: moves, most: limits.moves },
      ].find(({ count, most }) => count > most);
      if (over === undefined) continue;
      this.report(
        'recipe.too-many',
        piece,
        `With “${piece.name}” there are ${over.count} ${over.what}.`,
        `At most ${over.most} in one recipe.`,
      );
      break;
    }
    return this.#problems.length > 0;
  }

  #piece(piece: Piece, index: number): void {
    const size = sizeOf(piece.size, this.#sizes);
    if (size === undefined) {
      const meant = nearestWord(
        piece.size,
        this.#sizes.map((known) => known.code),
      );
      this.report(
        'recipe.size',
        piece,
        `The size ${quoted(piece.size)} is not known.`,
        meant === undefined ? `Known: ${this.#sizes.map((known) => known.code).join(', ')}.` : `Perhaps “${meant}” is meant.`,
      );
    }
    for (let copy = 0; copy < piece.count; copy++) {
      const before = this.#problems.length;
      new Run(this, piece, index, copy, size?.shape ?? 'tube').follow(piece.run, copyTurning(piece, copy, piece.count));
      if (this.#problems.length > before) return;
    }
  }

  newJoint(): number {
    this.#parent.push(this.#parent.length);
    return this.#parent.length - 1;
  }

  find(joint: number): number {
    let root = joint;
    while (this.#parent[root] !== root) root = this.#parent[root] ?? root;
    this.#parent[joint] = root;
    return root;
  }

  merge(a: number, b: number): boolean {
    const one = this.find(a);
    const other = this.find(b);
    if (one === other) return false;
    this.#parent[Math.max(one, other)] = Math.min(one, other);
    return true;
  }

  addBubble(bubble: UnfoldedBubble): number {
    this.#bubbles.push({ ...bubble });
    return this.#bubbles.length - 1;
  }

  reverse(bubbles: readonly number[]): void {
    for (const index of bubbles) {
      const bubble = this.#bubbles[index];
      if (bubble?.aim !== undefined && this.find(bubble.from) !== this.find(bubble.to))
        bubble.aim = [0 - bubble.aim[0], 0 - bubble.aim[1], 0 - bubble.aim[2]];
    }
  }

  addDeed(deed: Omit<Deed, 'bubbles'>): void {
    this.#deeds.push({ ...deed, bubbles: this.#bubbles.length });
  }

  mark(move: { readonly name: string }, joint: number, piece: number): void {
    if (this.#marks.has(move.name)) {
      this.report('recipe.same-name', move, `There are two joints with the name “${move.name}”.`, 'Give one of them another name.');
      return;
    }
    this.#marks.set(move.name, { joint, piece });
  }

  /** The mark with this name, or a problem. */
  marked(move: { readonly to: string }): Mark | undefined {
    const mark = this.#marks.get(move.to);
    if (mark !== undefined) return mark;
    const meant = nearestWord(move.to, [...this.#marks.keys()]);
    const known =
      this.#marks.size === 0
        ? 'Write “mark” and a name after the twist that is meant.'
        : `Marked so far: ${[...this.#marks.keys()].slice(-12).join(', ')}.`;
    this.report(
      'recipe.joint',
      move,
      `No joint before this line has the name “${move.to}”.`,
      meant === undefined ? known : `Perhaps “${meant}” is meant.`,
    );
    return undefined;
  }

  /** The last bubble with this label together with its other half; copies of one move are told apart. Empty when there is none. */
  #labelled(label: string, piece?: number): readonly number[] {
    const wanted = label.toLowerCase();
    const found: number[] = [];
    for (let i = this.#bubbles.length - 1; i >= 0; i--) {
      const bubble = this.#bubbles[i];
      if (
        bubble === undefined ||
        bubble.label?.toLowerCase() !== wanted ||
        bubble.popped ||
        (piece !== undefined && bubble.piece !== piece)
      )
        continue;
      found.push(i);
    }
    return found;
  }

  #noLabel(at: object, label: string): void {
    const labels = [...new Set(this.#bubbles.flatMap((bubble) => (bubble.label === undefined ? [] : [bubble.label])))];
    const meant = nearestWord(label, labels);
    const known =
      labels.length === 0
        ? 'Write a label after the length of the bubble that is meant.'
        : `Labels so far: ${labels.slice(-12).join(', ')}.`;
    this.report(
      'recipe.label',
      at,
      `No bubble before this line has the label “${label}”.`,
      meant === undefined ? known : `Perhaps “${meant}” is meant.`,
    );
  }

  tuck(move: { readonly label: string; readonly into: string }): void {
    const bubbles = this.#labelled(move.label);
    const into = this.#labelled(move.into);
    if (bubbles.length === 0) this.#noLabel(move, move.label);
    if (into.length === 0) this.#noLabel(move, move.into);
    if (bubbles.length > 0 && into.length > 0) this.#tucks.push({ bubbles, into });
  }

  pop(move: { readonly label?: string }, piece: number): void {
    const last = this.#bubbles.findLastIndex((bubble) => bubble.piece === piece && !bubble.popped && bubble.kind !== 'flat');
    const index = move.label === undefined ? last : (this.#labelled(move.label, piece)[0] ?? -1);
    const bubble = this.#bubbles[index];
    if (bubble !== undefined) bubble.popped = true;
    else if (move.label === undefined) this.report('recipe.pop', move, 'There is no bubble to pop.', 'Pop after the bubble has been made.');
    else this.#noLabel(move, move.label);
  }

  /** A bubble with a free end points towards it: the first one of a balloon whose knot is tied to nothing is made from its tip inwards. */
  #pointFirstOutwards(): void {
    const ends = new Map<number, number>();
    for (const { from, to } of this.#bubbles) {
      for (const joint of [this.find(from), this.find(to)]) ends.set(joint, (ends.get(joint) ?? 0) + 1);
    }
    let before: UnfoldedBubble | undefined;
    for (const [index, bubble] of this.#bubbles.entries()) {
      const isFirst = before === undefined || before.piece !== bubble.piece || before.copy !== bubble.copy;
      if (isFirst && ends.get(this.find(bubble.from)) === 1 && (ends.get(this.find(bubble.to)) ?? 0) > 1) this.reverse([index]);
      before = bubble;
    }
  }

  result(): Unfolded {
    const numbers = new Map<number, number>();
    const numberOf = (joint: number): number => {
      const root = this.find(joint);
      const number = numbers.get(root) ?? numbers.size;
      numbers.set(root, number);
      return number;
    };
    this.#pointFirstOutwards();
    const bubbles = this.#bubbles.map((bubble) => ({ ...bubble, from: numberOf(bubble.from), to: numberOf(bubble.to) }));
    const marks = new Map([...this.#marks].map(([name, mark]) => [name, numberOf(mark.joint)]));
    return { bubbles, joints: numbers.size, marks, tucks: this.#tucks, deeds: this.#deeds, problems: this.#problems };
  }
}

/** Follows one balloon. */
class Run {
  readonly #all: Unfolding;
  readonly #piece: Piece;
  readonly #index: number;
  readonly #copy: number;
  readonly #shape: Size['shape'];
  readonly #knot: number;
  readonly #legs: Leg[] = [];
  #at: number;
  /** The far twist of the two bubbles that were locked last, while nothing came after. */
  #between: number | undefined;
  #trimmed = false;
  #inGroup = 0;

  constructor(all: Unfolding, piece: Piece, index: number, copy: number, shape: Size['shape']) {
    this.#all = all;
    this.#piece = piece;
    this.#index = index;
    this.#copy = copy;
    this.#shape = shape;
    this.#knot = all.newJoint();
    this.#at = this.#knot;
  }

  follow(moves: readonly Move[], turning: Turning): void {
    for (const move of moves) {
      if (move.kind !== 'repeat') {
        this.#make(move, turning);
        continue;
      }
      this.#inGroup += move.times > 1 ? 1 : 0;
      for (let copy = 0; copy < move.times; copy++) {
        const own = copyTurning(move, copy, move.times);
        this.follow(move.moves, (vector) => turning(own(vector)));
      }
      this.#inGroup -= move.times > 1 ? 1 : 0;
    }
  }

  #make(move: Plain, turning: Turning): void {
    if (this.#trimmed && move.kind !== 'note') {
      this.#all.report(
        'recipe.after-trim',
        move,
        `“${this.#piece.name}” has been cut already.`,
        'Make “trim” the last line of the balloon.',
      );
      return;
    }
    this.#apply(move, turning);
    this.#all.addDeed({ piece: this.#index, copy: this.#copy, move });
  }

  #apply(move: Plain, turning: Turning): void {
    switch (move.kind) {
      case 'bubble':
      case 'pinch':
      case 'fold':
      case 'loop':
      case 'tulip':
      case 'apple':
      case 'roll':
      case 'flat':
        this.#bubble(move, turning);
        break;
      case 'lock':
        if ('to' in move) this.#lockTo(move);
        else this.#lockBack(move);
        break;
      case 'join':
        this.#join(move);
        break;
      case 'mark':
        if (this.#inGroup > 0 || this.#piece.count > 1) {
          this.#all.report(
            'recipe.mark',
            move,
            `“${move.name}” would name a joint of each copy.`,
            'Mark before or after the repeated part.',
          );
          return;
        }
        this.#all.mark(move, this.#at, this.#index);
        break;
      case 'pop':
        this.#all.pop(move, this.#index);
        break;
      case 'tuck':
        this.#all.tuck(move);
        break;
      case 'trim':
        this.#trimmed = true;
        return;
      case 'note':
        return;
      default:
        exhausted(move);
    }
  }

  #bubble(move: BubbleMove | FlatMove, turning: Turning): void {
    if (!this.#allowed(move)) return;
    const start = this.#at;
    const selfLoop = move.kind === 'pinch' || move.kind === 'fold' || move.kind === 'loop';
    const split = move.kind !== 'flat' && move.split === true;
    const end =
      move.kind === 'roll' ? (this.#between ?? start) : selfLoop || (split && this.#shape !== 'tube') ? start : this.#all.newJoint();
    const middle = split ? this.#all.newJoint() : end;
    const bubbles = split
      ? [this.#add(move, turning, start, middle, 0.5), this.#add(move, turning, middle, end, 0.5)]
      : [this.#add(move, turning, start, end, 1)];
    this.#legs.push({ start, end, bubbles });
    this.#at = end;
    this.#between = undefined;
  }

  #allowed(move: BubbleMove | FlatMove): boolean {
    if (this.#shape !== 'tube') {
      const said = `a ${this.#shape}`;
      if (this.#legs.length > 0 && this.#shape !== 'link') {
        this.#all.report(
          'recipe.round',
          move,
          `“${this.#piece.name}” is ${said} and has only one bubble.`,
          'Write “split” after it to divide it into two balls.',
        );
        return false;
      }
      if (move.kind !== 'bubble') {
        this.#all.report(
          'recipe.round',
          move,
          `“${this.#piece.name}” is ${said}; it cannot be made into a ${move.kind}.`,
          'Write “bubble” and how wide it is blown up.',
        );
        return false;
      }
    }
    if ((move.kind === 'tulip' || move.kind === 'apple') && this.#legs.length > 0) {
      this.#all.report(
        'recipe.first',
        move,
        `A ${move.kind} needs the knot, so it has to be the first bubble.`,
        'Move this line to the start of the balloon.',
      );
      return false;
    }
    if (move.kind === 'roll' && this.#between === undefined) {
      this.#all.report(
        'recipe.roll',
        move,
        'There are no two bubbles locked just before, to roll this one through.',
        'Write two bubbles and “lock” on the lines before.',
      );
      return false;
    }
    return true;
  }

  #add(move: BubbleMove | FlatMove, turning: Turning, from: number, to: number, share: 0.5 | 1): number {
    const turn = (words: readonly Direction[] | undefined) => (words === undefined ? undefined : turning(vectorOf(words)));
    const aim = turn(move.aim);
    const facing = turn(move.facing);
    const bendToward = turn(move.bendToward);
    return this.#all.addBubble({
      piece: this.#index,
      copy: this.#copy,
      kind: move.kind,
      length: move.length,
      share,
      ...(move.label === undefined ? {} : { label: move.label }),
      from,
      to,
      ...(aim === undefined ? {} : { aim }),
      ...(facing === undefined ? {} : { facing }),
      ...(move.bendDegrees === undefined ? {} : { bendDegrees: move.bendDegrees }),
      ...(bendToward === undefined ? {} : { bendToward }),
      ...(move.kind !== 'flat' && move.soft ? { soft: true } : {}),
      move,
    });
  }

  #lockBack(move: { readonly last: number }): void {
    const legs = this.#legs.slice(-move.last);
    const first = legs[0];
    if (first === undefined || legs.length < move.last) {
      this.#all.report(
        'recipe.lock',
        move,
        `${thereAre(this.#legs.length)} to lock, not ${move.last}.`,
        'Make more bubbles first, or lock fewer.',
      );
      return;
    }
    if (!this.#all.merge(this.#at, first.start)) {
      this.#all.report('recipe.lock', move, 'These bubbles are locked together already.', 'Leave this line out.');
      return;
    }
    this.#at = first.start;
    this.#between = legs.length === 2 ? legs[0]?.end : undefined;
    // Both halves of a pair point away from their lock; the second one is made on the way back, so its own direction is the other way.
    if (legs.length === 2) this.#all.reverse(legs[1]?.bubbles ?? []);
  }

  #lockTo(move: { readonly to: string }): void {
    const knot = move.to.toLowerCase() === 'knot';
    const mark = knot ? { joint: this.#knot, piece: this.#index } : this.#all.marked(move);
    if (mark === undefined) return;
    if (mark.piece !== this.#index) {
      this.#all.report('recipe.joint', move, `“${move.to}” belongs to another balloon.`, `Write: join to ${move.to}`);
      return;
    }
    if (!this.#all.merge(this.#at, mark.joint))
      this.#all.report(
        'recipe.lock',
        move,
        `The twist in hand is at “${move.to}” already.`,
        'Leave this line out, or make a bubble first.',
      );
    this.#between = undefined;
  }

  #join(move: { readonly to: string }): void {
    const mark = this.#all.marked(move);
    if (mark === undefined) return;
    if (mark.piece === this.#index) {
      this.#all.report('recipe.joint', move, `“${move.to}” is a joint of this balloon.`, `Write: lock to ${move.to}`);
      return;
    }
    if (!this.#all.merge(this.#at, mark.joint))
      this.#all.report(
        'recipe.lock',
        move,
        `The twist in hand is at “${move.to}” already.`,
        'Leave this line out, or make a bubble first.',
      );
  }
}

const thereAre = (bubbles: number): string =>
  bubbles === 0 ? 'There is no bubble' : bubbles === 1 ? 'There is only one bubble' : `There are only ${bubbles} bubbles`;

/** How copy `copy` of `times` is turned before anything around it is. */
function copyTurning({ mirrored: everySecond, around }: Pick<Copies, 'mirrored' | 'around'>, copy: number, times: number): Turning {
  const flip: Turning = everySecond && copy % 2 === 1 ? mirrored : (vector) => vector;
  return around === undefined ? flip : (vector) => turned(flip(vector), around, copy / times);
}

/** Counted by multiplication, so that endless repeats cost nothing. */
function sizeOfRun(run: readonly Move[], depth: number): { readonly moves: number; readonly bubbles: number; readonly depth: number } {
  let moves = 0;
  let bubbles = 0;
  let deepest = depth;
  if (depth > limits.depth) return { moves, bubbles, depth };
  for (const move of run) {
    if (move.kind === 'repeat') {
      const inner = sizeOfRun(move.moves, depth + 1);
      moves += move.times * Math.max(1, inner.moves);
      bubbles += move.times * inner.bubbles;
      deepest = Math.max(deepest, inner.depth);
    } else {
      moves += 1;
      if ('length' in move) bubbles += move.kind !== 'flat' && move.split ? 2 : 1;
    }
  }
  return { moves, bubbles, depth: deepest };
}
