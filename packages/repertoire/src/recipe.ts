/**
 * The recipe model: what a figure is made of and in which order. Lengths of bubbles are inches on the **inflated** balloon; `tailInches`,
 * `keepInches` and the length of a `flat` move are inches of **flat** rubber. The two rulers are never added to one another.
 * The text notation is the fact that is stored; `readRecipe` derives this model from it and `writeRecipe` is its inverse.
 */

/** A figure looks forward; left is its own left. Directions only steer the picture. */
export type Direction = 'up' | 'down' | 'left' | 'right' | 'forward' | 'back';
export const directions: readonly Direction[] = ['up', 'down', 'left', 'right', 'forward', 'back'];

/** `{part: 1, of: 1}` is all that is left at that point, `{part: 1, of: 3}` a third of it. */
export interface PartOfRest {
  readonly part: number;
  readonly of: number;
}
/** Inches, or a part of what is left. */
export type Length = number | PartOfRest;

/** How a group, or a whole piece, is repeated. */
export interface Copies {
  /** 1 to 100. */
  readonly times: number;
  /** Every second copy has left and right exchanged. */
  readonly mirrored?: true;
  /** The directions of copy k of n are turned by k/n of a full turn about this direction. */
  readonly around?: Direction;
}

/** Hints for the picture only; leaving them out never changes air, tail or topology. */
export interface Steering {
  /** Where the bubble points, from its first twist to its last (a loop: from its twist outwards). The words add up: up + up + left is steep. */
  readonly aim?: readonly Direction[];
  /** Which way a loop, fold or pinch shows its open side: the normal of its plane. */
  readonly facing?: readonly Direction[];
  /** Degrees by which the bubble is bent over its whole length, 0 to 720. */
  readonly bendDegrees?: number;
  /** The side to which the far end of a bent bubble goes. */
  readonly bendToward?: readonly Direction[];
}

/**
 * bubble: plain section closed by a basic twist · pinch: small bubble, its two ends twisted together (an ear) · fold: long bubble folded in
 * half, ends twisted together · loop: the same, left open and round · tulip, apple: first bubble with the knot pushed inside and trapped ·
 * roll: bubble rolled through between the two that were locked last.
 */
export type BubbleKind = 'bubble' | 'pinch' | 'fold' | 'loop' | 'tulip' | 'apple' | 'roll';
export const bubbleKinds: readonly BubbleKind[] = ['bubble', 'pinch', 'fold', 'loop', 'tulip', 'apple', 'roll'];

export interface BubbleMove extends Steering {
  readonly kind: BubbleKind;
  /** Inflated inches along the tube; for a round or heart its width across. */
  readonly length: Length;
  /** What it is: ear, front leg. */
  readonly label?: string;
  /** Divided by a twist into two balls. */
  readonly split?: true;
  /** Squeezed less full than the others. */
  readonly soft?: true;
}
/** Rubber left without air inside the run: a stem, the gap before a poodle's tail ball. Length in flat inches. */
export interface FlatMove extends Steering {
  readonly kind: 'flat';
  readonly length: Length;
  readonly label?: string;
}
/** Turns the twist in hand together with the one before the last `last` bubbles (2 or more). */
export interface LockBackMove {
  readonly kind: 'lock';
  readonly last: number;
}
/** Turns the twist in hand together with a named joint of the same piece; `knot` is the piece's own knot. */
export interface LockToMove {
  readonly kind: 'lock';
  readonly to: string;
}
/** Turns the twist in hand (or, before any bubble, the knot) together with a named joint of an earlier piece. */
export interface JoinMove {
  readonly kind: 'join';
  readonly to: string;
}
/** Gives the twist in hand a name. */
export interface MarkMove {
  readonly kind: 'mark';
  readonly name: string;
}
/** Bursts the last bubble, or the last one with this label. Its two ends become free limbs. */
export interface PopMove {
  readonly kind: 'pop';
  readonly label?: string;
}
/** Pushes one bubble between or into others, without a twist. */
export interface TuckMove {
  readonly kind: 'tuck';
  readonly label: string;
  readonly into: string;
}
/** Cuts what is left, lets it out and ties it off. Last move of a piece. */
export interface TrimMove {
  readonly kind: 'trim';
}
/** A sentence for the person who makes it. */
export interface NoteMove {
  readonly kind: 'note';
  readonly text: string;
}
export interface RepeatMove extends Copies {
  readonly kind: 'repeat';
  readonly moves: readonly Move[];
}
export type Move =
  | BubbleMove
  | FlatMove
  | LockBackMove
  | LockToMove
  | JoinMove
  | MarkMove
  | PopMove
  | TuckMove
  | TrimMove
  | NoteMove
  | RepeatMove;

/** One balloon (or `count` alike), from its knot to its tip. */
export interface Piece {
  readonly name: string;
  /** Size code: `260`, `round-5`, `heart-6`. */
  readonly size: string;
  /** Colour role; a colourway fills it. */
  readonly role: string;
  readonly finish?: string;
  readonly print?: string;
  /** How many such balloons, 1 to 100. */
  readonly count: number;
  /** Copies 2, 4, ... have left and right exchanged. */
  readonly mirrored?: true;
  readonly around?: Direction;
  /** Flat inches to leave without air; at most one of this and `inflateInches`. Neither: it is worked out. */
  readonly tailInches?: number;
  /** Inflated inches to blow up, everything else stays flat. */
  readonly inflateInches?: number;
  /** Flat inches that should still be seen at the end. */
  readonly keepInches?: number;
  /** A little air let out before tying, to soften. */
  readonly burped?: true;
  /** Empty: the run is not known yet (or there is nothing to twist). */
  readonly run: readonly Move[];
}

/** What is done when the last twist is made. */
export interface Finishing {
  readonly with: 'marker' | 'stick' | 'sticker';
  /** What is drawn or stuck: eyes, smile, spots. */
  readonly what: string;
  /** Label of the bubble it goes on. */
  readonly on?: string;
  readonly minutes?: number;
}

export interface Recipe {
  readonly pieces: readonly Piece[];
  readonly finishing: readonly Finishing[];
  /** Minutes for the whole figure, pumping and finishing included; missing: estimated. */
  readonly minutes?: number;
}

/** What one figure takes out of the bag. */
export interface PieceNeed {
  readonly name: string;
  readonly size: string;
  readonly role: string;
  readonly finish?: string;
  readonly print?: string;
  readonly count: number;
}

/**
 * The balloons a recipe takes, in its order; what the planner counts.
 * @example piecesOf({ pieces: [{ name: 'dog', size: '260', role: 'body', count: 1, run: [] }], finishing: [] }) // -> [{ name: 'dog', size: '260', role: 'body', count: 1 }]
 */
export function piecesOf(recipe: Recipe): readonly PieceNeed[] {
  return recipe.pieces.map(({ name, size, role, finish, print, count }) => ({
    name,
    size,
    role,
    ...(finish === undefined ? {} : { finish }),
    ...(print === undefined ? {} : { print }),
    count,
  }));
}
