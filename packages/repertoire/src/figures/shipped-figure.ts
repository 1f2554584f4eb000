/** What a figure is good for, and what to mind about it. */
export type FigureTag = 'wearable' | 'stands' | 'safe outdoors' | 'not for under threes' | 'sword-like' | 'show-piece';
export const figureTags: readonly FigureTag[] = ['wearable', 'stands', 'safe outdoors', 'not for under threes', 'sword-like', 'show-piece'];

/** Where it stands on a menu board. */
export type FigureGroup =
  | 'animals'
  | 'birds'
  | 'sea'
  | 'insects'
  | 'flowers'
  | 'hats'
  | 'swords and wands'
  | 'bracelets'
  | 'hearts'
  | 'vehicles'
  | 'toys'
  | 'letters and numbers';

/** The plain colour names of the shipped colourways. */
export type PlainColour =
  | 'white'
  | 'black'
  | 'red'
  | 'orange'
  | 'yellow'
  | 'green'
  | 'sky'
  | 'blue'
  | 'violet'
  | 'pink'
  | 'rose'
  | 'brown'
  | 'blush'
  | 'grey';
export const plainColours: readonly PlainColour[] = [
  'white',
  'black',
  'red',
  'orange',
  'yellow',
  'green',
  'sky',
  'blue',
  'violet',
  'pink',
  'rose',
  'brown',
  'blush',
  'grey',
];

export interface Colourway {
  readonly id: string;
  readonly name: string;
  /** A colour for every role of the recipe. */
  readonly fill: Readonly<Record<string, PlainColour>>;
  /** Share of the guests who ask for this one; the shares of a figure add up to 1. An estimate, to be overwritten by what is learned. */
  readonly share: number;
}

/** A figure that comes with the program: classic designs in general circulation, written down by us. */
export interface ShippedFigure {
  readonly id: string;
  readonly name: string;
  readonly group: FigureGroup;
  /** In the notation of `docs/recipes.md`. */
  readonly recipe: string;
  /** A practised hand, pumping and finishing included: median, and standard deviation of the logarithm. Common practice, to be overwritten. */
  readonly minutes: { readonly median: number; readonly sigma: number };
  /** 1 first day, 2 first weeks, 3 sure hands, 4 practised, 5 show. */
  readonly difficulty: 1 | 2 | 3 | 4 | 5;
  readonly tags: readonly FigureTag[];
  readonly colourways: readonly Colourway[];
}
