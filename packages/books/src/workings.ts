import {
  type Calibration,
  calibrate,
  isTube,
  makerKey,
  measurementProblems,
  type PieceNeed,
  type Recipe,
  sizeOf,
  type Tube,
  type Working,
} from '@twistwright/repertoire';
import { balloonFor, balloonsByLook } from './balloon-for.ts';
import type { BalloonTest } from './balloon-test.ts';
import type { Book } from './book.ts';
import { sizesOf } from './check-names.ts';
import type { Colourway } from './figure.ts';

type Tested = Pick<Book, 'sizes' | 'balloonTests'>;

/** The tests of a size code that can be used; what is wrong with the others is said when the book is checked. */
export function testsOf({ balloonTests = [] }: Tested, size: Tube): readonly BalloonTest[] {
  return balloonTests.filter((test) => test.size === size.code && measurementProblems(size, test).length === 0);
}

/**
 * What is believed of the balloons of a size code and maker: the size's default where nothing was measured, tests of this maker first, then
 * those of others. The answer for each is worked out once.
 */
export function workingsOf(book: Tested): (size: Tube, maker?: string) => Calibration {
  const known = new Map<string, Calibration>();
  return (size, maker) => {
    const key = JSON.stringify([size, makerKey(maker)]);
    const found = known.get(key) ?? calibrate(size, maker, testsOf(book, size));
    known.set(key, found);
    return found;
  };
}

/** What says which balloon a piece takes. */
type Look = Omit<PieceNeed, 'name' | 'count'>;
type Balloons = Tested & Pick<Book, 'items'>;

/** Who makes the balloon that a piece takes in a colourway; undefined where the book does not say. */
export function makersOf(book: Pick<Book, 'items'>): (way: Colourway | undefined) => (piece: Look) => string | undefined {
  const makers = new Map(
    book.items.flatMap((item) => (item.kind === 'balloon' && item.maker !== undefined ? [[item.id, item.maker]] : [])),
  );
  const balloons = makers.size === 0 ? new Map<string, string>() : balloonsByLook(book);
  return (way) => (piece) =>
    way === undefined || makers.size === 0 ? undefined : makers.get(balloonFor(piece, way, balloons)?.item ?? '');
}

/**
 * The numbers of the very balloon that a piece takes: of its size code, and of the maker of its item in the colourway. Undefined where
 * nothing was measured at all, so that defaults need no working out.
 */
export function workingOfPieces(book: Balloons): ((way: Colourway | undefined) => (size: Tube, piece: Look) => Working) | undefined {
  if ((book.balloonTests ?? []).length === 0) return undefined;
  const workings = workingsOf(book);
  const makerOf = makersOf(book);
  return (way) => (size, piece) => workings(size, makerOf(way)({ ...piece, size: size.code })).working;
}

/** The kinds of tube that a figure takes in a colourway, each once: size code and maker, undefined where the book does not say. */
export function tubesTaken(
  book: Pick<Book, 'sizes' | 'items'>,
  recipe: Pick<Recipe, 'pieces'>,
  way: Colourway | undefined,
): readonly { readonly size: Tube; readonly maker: string | undefined }[] {
  const sizes = sizesOf(book);
  const makerOf = makersOf(book)(way);
  const kinds = recipe.pieces.flatMap((piece) => {
    const size = sizeOf(piece.size, sizes);
    return size !== undefined && isTube(size) ? [{ size, maker: makerOf(piece) }] : [];
  });
  return kinds.filter(
    ({ size, maker }, index) =>
      kinds.findIndex((other) => other.size.code === size.code && makerKey(other.maker) === makerKey(maker)) === index,
  );
}

/** The makers of a size code by its tests and items, each as it is first written; undefined where a test or an item says none. */
export function makersOfSize({ items, balloonTests = [] }: Balloons, size: string): readonly (string | undefined)[] {
  const found = new Map<string, string | undefined>();
  const balloons = items.flatMap((item) => (item.kind === 'balloon' ? [item] : []));
  for (const { size: code, maker } of [...balloonTests, ...balloons])
    if (code === size && !found.has(makerKey(maker))) found.set(makerKey(maker), maker);
  return [...found.values()].sort((a, b) => Number(a === undefined) - Number(b === undefined));
}
