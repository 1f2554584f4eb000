import { checkRecipe, type PieceNeed, piecesOf, type Recipe, readRecipe, type Size } from '@twistwright/repertoire';
import type { Problem } from '@twistwright/units';
import { balloonFor, balloonsByLook, lookOf } from './balloon-for.ts';
import type { Book } from './book.ts';
import { type Names, sizesOf, unknownName } from './check-names.ts';
import type { Colourway, Figure } from './figure.ts';
import { errorAt, warningAt } from './problem-codes.ts';
import { makersOf, workingOfPieces } from './workings.ts';

/** The balloons of every figure whose recipe can be read; figures without a recipe take none. */
export type PiecesByFigure = ReadonlyMap<string, readonly PieceNeed[]>;

/** What is wrong with sizes, items and figures; and, on the way, the pieces of each figure that can be read. */
export function checkFigures(book: Book, names: Names): { readonly problems: readonly Problem[]; readonly pieces: PiecesByFigure } {
  const pieces = new Map<string, readonly PieceNeed[]>();
  const sizes = sizesOf(book);
  const balloons = balloonsByLook(book);
  const checkAir = airChecker(book, sizes);
  const problems = book.figures.flatMap((figure, index): readonly Problem[] => {
    const path = ['figures', index] as const;
    const extras = (figure.extras ?? []).flatMap((extra, at) =>
      unknownName(names, 'item', extra.item, [...path, 'extras', at, 'item'], `Figure "${figure.id}"`),
    );
    const recipe = figure.recipe === undefined ? undefined : readRecipe(figure.recipe, sizes);
    if (recipe !== undefined && !recipe.ok) return [...extras, ...recipe.error.map((problem) => inFigure(problem, figure, index))];
    const needs = recipe === undefined ? [] : piecesOf(recipe.value);
    pieces.set(figure.id, needs);
    const air = recipe === undefined ? [] : checkAir(figure, recipe.value).map((problem) => inFigure(problem, figure, index));
    return [...extras, ...air, ...checkColourways(figure, needs, [...path, 'colourways'], names, balloons)];
  });
  return { problems: [...checkSizes(book), ...checkItems(book, names), ...problems], pieces };
}

/** Checks the recipe of a figure with the balloons of every maker that its colourways take them from. */
function airChecker(book: Book, sizes: readonly Size[]): (figure: Figure, recipe: Recipe) => readonly Problem[] {
  const makerOf = makersOf(book);
  const workingOf = workingOfPieces(book);
  return ({ recipe: text = '', colourways }, { pieces }) => {
    if (workingOf === undefined) return checkRecipe(text, { sizes });
    const byMakers = new Map(colourways.map((way) => [JSON.stringify(pieces.map(makerOf(way))), way]));
    const ways: readonly (Colourway | undefined)[] = byMakers.size === 0 ? [undefined] : [...byMakers.values()];
    const found = ways.map((way) => checkRecipe(text, { sizes, workingOf: workingOf(way) }));
    // What two colourways have at one place is said for the first of them.
    const isSaidBefore = ({ line, code }: Problem, at: number): boolean =>
      found.slice(0, at).some((earlier) => earlier.some((other) => other.line === line && other.code === code));
    return found.flatMap((problems, at) =>
      problems.flatMap((problem) => {
        if (isSaidBefore(problem, at)) return [];
        const way = ways.length > 1 ? `in colourway "${ways[at]?.id}" ` : '';
        return [{ ...problem, sentence: `${way}${problem.sentence}` }];
      }),
    );
  };
}
/** The recipe's own line and column are kept in the sentence: those of the file are another thing. */
function inFigure(problem: Problem, figure: Figure, index: number): Problem {
  const { line, column, ...rest } = problem;
  const where = line === undefined ? '' : `, line ${line}${column === undefined ? '' : `, column ${column}`}`;
  return {
    ...rest,
    path: ['figures', index, 'recipe', ...problem.path],
    sentence: `Recipe of figure "${figure.id}"${where}: ${problem.sentence}`,
  };
}

function checkSizes(book: Book): readonly Problem[] {
  return (book.sizes ?? []).flatMap((size, index) => {
    if (size.shape !== 'tube') return [];
    const missing = (['lengthInches', 'flatInches', 'stretch', 'tailPerBubbleInches'] as const).filter((key) => size[key] === undefined);
    if (missing.length === 0) return [];
    const sentence = `The tube "${size.code}" lacks ${missing.map((key) => `"${key}"`).join(', ')}: air and tail cannot be worked out.`;
    return [warningAt('size.incomplete', ['sizes', index], sentence, 'Measure five balloons flat and one full.')];
  });
}

function checkItems(book: Book, names: Names): readonly Problem[] {
  const seen = new Map<string, string>();
  return book.items.flatMap((item, index): readonly Problem[] => {
    if (item.kind !== 'balloon') return [];
    const by = `Item "${item.id}"`;
    const look = lookOf(item);
    const same = seen.get(look);
    if (same === undefined) seen.set(look, item.id);
    return [
      ...unknownName(names, 'size', item.size, ['items', index, 'size'], by),
      ...unknownName(names, 'colour', item.colour, ['items', index, 'colour'], by),
      ...(same === undefined
        ? []
        : [
            errorAt(
              'item.twice',
              ['items', index],
              `${by} is the same balloon as item "${same}".`,
              'Keep one of them, or tell them apart by finish or print.',
            ),
          ]),
    ];
  });
}

function checkColourways(
  figure: Figure,
  needs: readonly PieceNeed[],
  path: Problem['path'],
  names: Names,
  balloons: ReadonlyMap<string, string>,
): readonly Problem[] {
  const by = `Figure "${figure.id}"`;
  if (needs.length === 0) return [];
  if (figure.colourways.length === 0)
    return [errorAt('figure.no-colourway', path, `${by} takes balloons and has no colourway.`, 'Add one that fills its colour roles.')];
  const roles = new Set(needs.map((piece) => piece.role));
  const shares = figure.colourways.reduce((sum, way) => sum + (way.share ?? 1), 0);
  return [
    ...(shares > 0
      ? []
      : [
          errorAt('shares.zero', path, `The shares of the colourways of figure "${figure.id}" sum to nought.`, 'Give one of them a share.'),
        ]),
    ...figure.colourways.flatMap((way, index) => checkColourway(way, by, roles, needs, [...path, index], names, balloons)),
  ];
}
function checkColourway(
  way: Colourway,
  by: string,
  roles: ReadonlySet<string>,
  needs: readonly PieceNeed[],
  path: Problem['path'],
  names: Names,
  balloons: ReadonlyMap<string, string>,
): readonly Problem[] {
  const it = `${by}, colourway "${way.id}",`;
  const without = [...roles].filter((role) => way.fill[role] === undefined);
  const lost = Object.keys(way.fill).filter((role) => !roles.has(role));
  const missing = new Set(
    needs.flatMap((piece) => {
      const balloon = balloonFor(piece, way, balloons);
      return balloon === undefined || balloon.item !== undefined ? [] : [balloon.look];
    }),
  );
  return [
    ...without.map((role) =>
      errorAt('role.without-colour', [...path, 'fill'], `${it} has no colour for the role "${role}".`, `Add "${role}" to its fill.`),
    ),
    ...lost.map((role) =>
      warningAt(
        'role.unknown',
        [...path, 'fill', role],
        `${it} fills the role "${role}", which its recipe does not have.`,
        `The recipe has: ${[...roles].join(', ')}.`,
      ),
    ),
    ...Object.entries(way.fill).flatMap(([role, colour]) => unknownName(names, 'colour', colour, [...path, 'fill', role], it.slice(0, -1))),
    ...[...missing].map((look) =>
      warningAt(
        'colourway.no-item',
        path,
        `${it} takes a ${look} balloon, which is no item of the book.`,
        `Add the item "${look}", or change the colour.`,
      ),
    ),
  ];
}
