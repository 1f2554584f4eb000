import { type Book, type Colourway, type Figure, makersOf } from '@twistwright/books';
import { airOf, type PieceAir, type Recipe, readRecipe, type Verdict } from '@twistwright/repertoire';
import { airOfBook, favouriteColourway } from './figure-facts.ts';

/** What becomes of one figure when more is known of the balloons it is made of. */
export interface FitChange {
  readonly figure: Figure;
  /** Missing for a figure without colourways. */
  readonly way?: Colourway;
  /** The figure has other colourways whose balloons are of other makers. */
  readonly isOneOfSeveral: boolean;
  /** The balloon that decides: the worst afterwards, or if all fit the worst before, or else the one that changes most. */
  readonly before: PieceAir;
  readonly after: PieceAir;
}

/** Changes of less than this are not worth a word: a tenth of an inch on a flat ruler cannot be measured. */
const leastFlatInches = 0.1;
const leastInflatedInches = 0.5;

/**
 * The figures of a book whose air, tail or verdict differ between two states of what was measured (`balloonTests`, `sizes` or the makers of
 * items). Verdicts that change come first, then the largest change of how far to blow up.
 */
export function fitChanges(before: Book, after: Book): readonly FitChange[] {
  const [airBefore, airAfter, makerOf] = [airOfBook(before), airOfBook(after), makersOf(after)];
  const changes = after.figures.flatMap((figure): readonly FitChange[] => {
    const read = figure.recipe === undefined ? undefined : readRecipe(figure.recipe, airAfter(undefined).sizes);
    if (read?.ok !== true) return [];
    const ways = waysByMakers(figure, read.value, makerOf);
    return ways.flatMap((way): readonly FitChange[] => {
      const deciding = decidingPiece(airOf(read.value, airBefore(way)).pieces, airOf(read.value, airAfter(way)).pieces);
      return deciding === undefined
        ? []
        : [{ figure, ...(way === undefined ? {} : { way }), isOneOfSeveral: ways.length > 1, ...deciding }];
    });
  });
  return changes.sort((a, b) => Number(isNewVerdict(b)) - Number(isNewVerdict(a)) || blownUpMore(b) - blownUpMore(a));
}

export const isNewVerdict = ({ before, after }: Pick<FitChange, 'before' | 'after'>): boolean => before.verdict !== after.verdict;
const blownUpMore = ({ before, after }: Pick<FitChange, 'before' | 'after'>): number =>
  Math.abs(after.inflatedInches - before.inflatedInches);

/** The favourite colourway, and one of each other that takes balloons of other makers. */
function waysByMakers(figure: Figure, recipe: Recipe, makerOf: ReturnType<typeof makersOf>): readonly (Colourway | undefined)[] {
  const favourite = favouriteColourway(figure);
  const ways = new Map<string, Colourway | undefined>();
  for (const way of [favourite, ...figure.colourways]) {
    const key = JSON.stringify(recipe.pieces.map(makerOf(way)));
    if (!ways.has(key)) ways.set(key, way);
  }
  return [...ways.values()];
}

const rank: Readonly<Record<Verdict, number>> = { fits: 0, tight: 1, 'does not fit': 2 };

function decidingPiece(before: readonly PieceAir[], after: readonly PieceAir[]): Pick<FitChange, 'before' | 'after'> | undefined {
  const pairs = after.flatMap((piece, index) => {
    const old = before[index];
    return old === undefined ? [] : [{ before: old, after: piece }];
  });
  const worstFirst = [...pairs].sort(
    (a, b) =>
      rank[b.after.verdict] - rank[a.after.verdict] || rank[b.before.verdict] - rank[a.before.verdict] || blownUpMore(b) - blownUpMore(a),
  );
  const isChanged = pairs.some(
    (pair) =>
      isNewVerdict(pair) ||
      blownUpMore(pair) >= leastInflatedInches ||
      Math.abs(pair.after.tailInches - pair.before.tailInches) >= leastFlatInches,
  );
  return isChanged ? worstFirst[0] : undefined;
}
