import { type Book, type Colourway, type Figure, nameOfItem, sizesOf, workingOfPieces } from '@twistwright/books';
import {
  type AirOptions,
  airOf,
  minutesOf,
  type Piece,
  piecesOf,
  type Recipe,
  type RecipeAir,
  type RoleColours,
  readRecipe,
  rubberOf,
  type Technique,
  techniquesOf,
} from '@twistwright/repertoire';
import { ok, type Result } from '@twistwright/units';
import { type MinutesSpread, minutesSpread } from './minutes-spread.ts';

/** What there is to say about a figure, whatever is in store. */
export interface FigureFacts {
  readonly figure: Figure;
  readonly recipe: Recipe;
  readonly air: RecipeAir;
  readonly minutes: MinutesSpread & { readonly from: 'figure' | 'recipe' | 'estimate' };
  /** Balloons that it takes. */
  readonly balloons: number;
  /** Bubbles of all of them. */
  readonly bubbles: number;
  readonly techniques: readonly Technique[];
  /** Colour roles in the order in which the recipe names them. */
  readonly roles: readonly string[];
}

/** Spread of making times where only a middle is known: common practice, no published source. */
const usualSigma = 0.3;

/** The parts of a book that air and tail depend on. */
export type AirBook = Pick<Book, 'sizes' | 'settings' | 'items' | 'balloonTests'>;

/** Sizes, pump and measured balloons of a business, for air and tail in any colourway. */
export function airOfBook(book: AirBook): (way: Colourway | undefined) => AirOptions {
  const workingOf = workingOfPieces(book);
  const options: AirOptions = {
    sizes: sizesOf(book),
    ...(book.settings?.pump === undefined ? {} : { litresPerStroke: book.settings.pump.litresPerStroke }),
  };
  return (way) => (workingOf === undefined ? options : { ...options, workingOf: workingOf(way) });
}

/** The same for one colourway, which says of which maker each balloon is; without one a size code's balloons may be anybody's. */
export const airOptionsOf = (book: AirBook, way?: Colourway): AirOptions => airOfBook(book)(way);

interface FactsOptions {
  /** Decides whose balloons it is made of; the favourite one if missing. */
  readonly way?: Colourway | undefined;
  /** `airOfBook(book)`, where many figures of one book are looked at. */
  readonly air?: (way: Colourway | undefined) => AirOptions;
}

/** Reads the recipe of a figure and works out air, minutes and techniques; fails with the problems of the recipe. */
export function figureFacts(book: Book, figure: Figure, { way, air: airOfWay }: FactsOptions = {}): Result<FigureFacts> {
  const options = (airOfWay ?? airOfBook(book))(way ?? favouriteColourway(figure));
  const read = figure.recipe === undefined ? ok<Recipe>({ pieces: [], finishing: [] }) : readRecipe(figure.recipe, options.sizes);
  if (!read.ok) return read;
  const recipe = read.value;
  const air = airOf(recipe, options);
  return ok({
    figure,
    recipe,
    air,
    minutes: minutesOfFigure(figure, recipe, options),
    balloons: recipe.pieces.reduce((sum, piece) => sum + piece.count, 0),
    bubbles: air.pieces.reduce((sum, piece) => sum + piece.count * piece.bubbles, 0),
    techniques: techniquesOf(recipe, options.sizes),
    roles: [...new Set(piecesOf(recipe).map((piece) => piece.role))],
  });
}

function minutesOfFigure(figure: Figure, recipe: Recipe, { sizes }: AirOptions): FigureFacts['minutes'] {
  if (figure.minutes !== undefined) return { ...minutesSpread(figure.minutes), from: 'figure' };
  const { minutes, from } = minutesOf(recipe, sizes);
  return { ...minutesSpread({ law: 'log-normal', median: minutes, sigma: usualSigma }), from };
}

/** The colourway of a figure that is asked for most; undefined where it has none. */
export function favouriteColourway(figure: Pick<Figure, 'colourways'>): Colourway | undefined {
  return figure.colourways.reduce<Colourway | undefined>(
    (best, way) => (best === undefined || (way.share ?? 1) > (best.share ?? 1) ? way : best),
    undefined,
  );
}

/**
 * What a colour is painted with: its own body colour in the book, else itself if it is a plain name or `#rrggbb`, else the last plain colour
 * word in its id or name, else grey, since the name is always written beside it.
 */
export const paintOf = (book: Pick<Book, 'colours'>, id: string): string => knownPaint(book, id) ?? 'grey';

/** As `paintOf`; undefined for what is no colour: not of the book, without a plain colour word, not `#rrggbb`. */
export function knownPaint(book: Pick<Book, 'colours'>, id: string): string | undefined {
  const colour = book.colours.find((entry) => entry.id === id);
  if (colour?.body !== undefined && rubberOf(colour.body) !== undefined) return colour.body;
  if (rubberOf(id) !== undefined) return id;
  const words = [id, colour?.name ?? ''].flatMap((text) =>
    text
      .toLowerCase()
      .split(/[^a-z]+/u)
      .toReversed(),
  );
  return words.find((word) => word !== '' && rubberOf(word) !== undefined) ?? (colour === undefined ? undefined : 'grey');
}

/** Paint of every role in a colourway. */
export const paintsOf = (book: Pick<Book, 'colours'>, fill: Readonly<Record<string, string>>): RoleColours =>
  Object.fromEntries(Object.entries(fill).map(([role, colour]) => [role, paintOf(book, colour)]));

/** The colour of every role by the name that the business gives it. */
export const colourNames = (book: Pick<Book, 'colours'>, fill: Readonly<Record<string, string>>): Readonly<Record<string, string>> =>
  Object.fromEntries(
    Object.entries(fill).map(([role, colour]) => [role, book.colours.find((entry) => entry.id === colour)?.name.toLowerCase() ?? colour]),
  );

/** The recipe with the finish that a colourway has wherever the recipe does not say one. */
export function finished(recipe: Recipe, way: Colourway | undefined): Recipe {
  const finish = way?.finish;
  if (finish === undefined) return recipe;
  return { ...recipe, pieces: recipe.pieces.map((piece): Piece => ({ finish, ...piece })) };
}

/** Balloons of one look that a figure takes. */
export interface BalloonTaken {
  readonly size: string;
  readonly colour?: string;
  readonly print?: string;
  /** "260 pink". */
  readonly name: string;
  readonly count: number;
}

/** "2 x 260 pink" as words of the balloons that a figure takes in a colourway; equal ones together, in the order of the recipe. */
export function balloonsTaken(book: Pick<Book, 'colours'>, recipe: Recipe, way: Colourway | undefined): readonly BalloonTaken[] {
  const taken = new Map<string, BalloonTaken>();
  for (const piece of piecesOf(finished(recipe, way))) {
    const colour = way?.fill[piece.role];
    const { size, finish, print } = piece;
    const look = nameOfItem(
      {
        id: '',
        kind: 'balloon',
        size,
        colour: colour ?? '',
        ...(finish === undefined ? {} : { finish: finish as never }),
        ...(print === undefined ? {} : { print }),
      },
      book.colours,
    );
    const name = colour === undefined ? `${look} in the ${piece.role} colour` : look;
    const known = taken.get(name);
    taken.set(name, {
      size,
      ...(colour === undefined ? {} : { colour }),
      ...(print === undefined ? {} : { print }),
      name,
      count: (known?.count ?? 0) + piece.count,
    });
  }
  return [...taken.values()];
}
