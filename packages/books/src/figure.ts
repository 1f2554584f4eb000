import type { Finish } from './item.ts';
import type { TimeLaw } from './line-settings.ts';

/** Something that can be made. The recipe is kept as the text its author wrote; `readRecipe` of the repertoire gives its pieces. */
export interface Figure {
  readonly id: string;
  readonly name: string;
  /** Recipe notation (docs/recipes.md). Missing: it takes no balloons. */
  readonly recipe?: string;
  readonly colourways: readonly Colourway[];
  /** Making time including pumping and tying; estimated from the recipe if missing. */
  readonly minutes?: TimeLaw;
  /** Tools and sundries each one takes: a stick, a sticker. */
  readonly extras?: readonly Extra[];
  /** 1 easy to 5 hard. */
  readonly difficulty?: number;
  readonly tags?: readonly string[];
  /** What it is worth beside the others when a menu is chosen; default 1. */
  readonly worth?: number;
}
/** Colours for every role of a recipe. */
export interface Colourway {
  readonly id: string;
  readonly name: string;
  /** Asking share among the colourways of the figure; default 1. Need not sum to one. */
  readonly share?: number;
  /** Colour by role. */
  readonly fill: Readonly<Record<string, string>>;
  readonly finish?: Finish;
}
export interface Extra {
  readonly item: string;
  readonly count: number;
  /** Minutes of drawing or sticking. */
  readonly minutes?: number;
}
