import type { Copies, Finishing, Move, RepeatMove } from '../recipe.ts';

/** One line of notation, understood by itself. */
export type Line =
  | {
      readonly kind: 'piece';
      readonly name: string;
      readonly size: string;
      readonly role: string;
      readonly finish?: string;
      readonly print?: string;
      readonly copies?: Copies;
    }
  | { readonly kind: 'leave' | 'inflate' | 'keep'; readonly inches: number }
  | { readonly kind: 'burp' }
  | { readonly kind: 'move'; readonly move: Exclude<Move, RepeatMove>; readonly copies?: Copies }
  | { readonly kind: 'repeat'; readonly copies: Copies }
  | { readonly kind: 'end' }
  | { readonly kind: 'minutes'; readonly minutes: number }
  | { readonly kind: 'finish'; readonly finishing: Finishing }
  | { readonly kind: 'blank' };
