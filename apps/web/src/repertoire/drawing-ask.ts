import type { Colourway } from '@twistwright/books';
import type { AirBook } from '@twistwright/planner';
import type { PieceAir, RoleColours, Size, Step, View } from '@twistwright/repertoire';
import type { Problem } from '@twistwright/units';
import type { FigureBody } from './bodies-of.ts';

interface Asking {
  /** Same key, same answer; the worker says it back. */
  readonly key: string;
  readonly recipe: string;
  readonly sizes: readonly Size[];
  /** Finish of the colourway, for pieces whose recipe does not say one. */
  readonly finish?: string;
}
/** A flat picture. */
export interface PictureAsk extends Asking {
  readonly kind: 'picture';
  readonly paints: RoleColours;
  readonly dark: boolean;
  /** Only what is there after so many deeds. */
  readonly upToMove?: number;
  readonly view?: View;
}
/** The body in space. */
export interface ShapeAsk extends Asking {
  readonly kind: 'shape';
}
/** Everything that an editor shows beside the text. */
export interface DesignAsk extends Asking {
  readonly kind: 'design';
  readonly paints: RoleColours;
  readonly dark: boolean;
  /** What air and tail depend on: pump, sizes, and what was measured of the balloons of this colourway. */
  readonly airBook: AirBook;
  readonly colourway: Colourway | undefined;
}
export type DrawingAsk = PictureAsk | ShapeAsk | DesignAsk;

export interface Design {
  readonly problems: readonly Problem[];
  /** Missing while the recipe cannot be read. */
  readonly made?: {
    readonly svg: string;
    readonly pieces: readonly PieceAir[];
    readonly roles: readonly string[];
    readonly minutes: number;
    readonly bubbles: number;
    readonly steps: readonly Step[];
  };
}
export type DrawingAnswer =
  | { readonly key: string; readonly kind: 'picture'; readonly svg?: string }
  | { readonly key: string; readonly kind: 'shape'; readonly body?: FigureBody }
  | { readonly key: string; readonly kind: 'design'; readonly design: Design };
