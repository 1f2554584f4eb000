import { type Size, shippedSizes } from '@twistwright/repertoire';
import type { Problem } from '@twistwright/units';
import { type Book, bookLists } from './book.ts';
import { type BookProblemCode, errorAt } from './problem-codes.ts';

/** Everything in a book that can be named from elsewhere in it, by kind. */
export interface Names {
  readonly item: ReadonlySet<string>;
  readonly figure: ReadonlySet<string>;
  readonly colour: ReadonlySet<string>;
  readonly artist: ReadonlySet<string>;
  readonly place: ReadonlySet<string>;
  readonly supplier: ReadonlySet<string>;
  readonly offer: ReadonlySet<string>;
  readonly client: ReadonlySet<string>;
  readonly gig: ReadonlySet<string>;
  readonly order: ReadonlySet<string>;
  readonly size: ReadonlySet<string>;
}
export type NameKind = keyof Names;

/** The sizes that hold in a book: its own, and the shipped ones that it does not replace. */
export const sizesOf = (book: Pick<Book, 'sizes'>): readonly Size[] => {
  const own = book.sizes ?? [];
  return [...own, ...shippedSizes.filter((size) => !own.some((mine) => mine.code === size.code))];
};

const ids = (entries: readonly { readonly id: string }[]): ReadonlySet<string> => new Set(entries.map((entry) => entry.id));
export const namesOf = (book: Book): Names => ({
  item: ids(book.items),
  figure: ids(book.figures),
  colour: ids(book.colours),
  artist: ids(book.artists),
  place: ids(book.places),
  supplier: ids(book.suppliers),
  offer: ids(book.offers),
  client: ids(book.clients),
  gig: ids(book.gigs),
  order: ids(book.orders),
  size: new Set(sizesOf(book).map((size) => size.code)),
});

/** Where else the book keeps things of a kind. */
const listOf: Readonly<Record<NameKind, string>> = {
  item: 'items',
  figure: 'figures',
  colour: 'colours',
  artist: 'artists',
  place: 'places',
  supplier: 'suppliers',
  offer: 'offers',
  client: 'clients',
  gig: 'gigs',
  order: 'orders',
  size: 'sizes',
};

/** A problem if nothing of that kind has the name; nothing if the name is missing or known. `by` says who uses it: `gig "fair"`. */
export function unknownName(names: Names, kind: NameKind, name: string | undefined, path: Problem['path'], by: string): readonly Problem[] {
  if (name === undefined || names[kind].has(name)) return [];
  const code: BookProblemCode = `${kind}.unknown`;
  const noun = kind === 'size' ? 'size code' : kind;
  return [
    errorAt(
      code,
      path,
      `${by} names the ${noun} "${name}", which the book does not have.`,
      `Add it to "${listOf[kind]}", or name another.`,
    ),
  ];
}

/** Ids that stand twice in their list. */
export function checkIds(book: Book): readonly Problem[] {
  const sizes = twice((book.sizes ?? []).map((size) => size.code)).map((index) =>
    errorAt('id.twice', ['sizes', index, 'code'], `The size code "${book.sizes?.[index]?.code}" stands twice.`, 'Leave one of them out.'),
  );
  const lists = bookLists.flatMap((list) =>
    twice((book[list] ?? []).map((entry) => entry.id)).map((index) =>
      errorAt(
        'id.twice',
        [list, index, 'id'],
        `The id "${book[list]?.[index]?.id}" stands twice in "${list}".`,
        'Give one of them another id.',
      ),
    ),
  );
  const ways = book.figures.flatMap((figure, at) =>
    twice(figure.colourways.map((way) => way.id)).map((index) =>
      errorAt(
        'id.twice',
        ['figures', at, 'colourways', index, 'id'],
        `Figure "${figure.id}" has two colourways with the id "${figure.colourways[index]?.id}".`,
        'Give one of them another id.',
      ),
    ),
  );
  return [...sizes, ...lists, ...ways];
}
/** Positions of values that were there before. */
function twice(values: readonly string[]): readonly number[] {
  const seen = new Set<string>();
  return values.flatMap((value, index) => {
    if (seen.has(value)) return [index];
    seen.add(value);
    return [];
  });
}
