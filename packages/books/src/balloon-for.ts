import type { PieceNeed } from '@twistwright/repertoire';
import type { Book } from './book.ts';
import type { Colourway } from './figure.ts';
import type { BalloonItem } from './item.ts';

type Look = Pick<BalloonItem, 'size' | 'colour' | 'finish' | 'print'>;
/** What a balloon looks like, as one text. */
export const lookOf = ({ size, colour, finish = 'standard', print = '' }: Look): string =>
  JSON.stringify([size, colour, finish, print.toLowerCase()]);
/** Item ids by what the balloon looks like; of two that look alike the first. */
export const balloonsByLook = (book: Pick<Book, 'items'>): ReadonlyMap<string, string> =>
  new Map(book.items.toReversed().flatMap((item) => (item.kind === 'balloon' ? [[lookOf(item), item.id] as const] : [])));

/** The balloon that a piece takes in a colourway: the item's id if the book has it, else what it would look like; nothing without a colour. */
export function balloonFor(
  piece: Omit<PieceNeed, 'name' | 'count'>,
  way: Colourway,
  balloons: ReadonlyMap<string, string>,
): { readonly item?: string; readonly look: string } | undefined {
  const colour = way.fill[piece.role];
  if (colour === undefined) return undefined;
  const finish = (piece.finish ?? way.finish) as BalloonItem['finish'];
  const look: Look = {
    size: piece.size,
    colour,
    ...(finish === undefined ? {} : { finish }),
    ...(piece.print === undefined ? {} : { print: piece.print }),
  };
  const item = balloons.get(lookOf(look));
  const words = [
    piece.size,
    colour,
    ...(finish === undefined || finish === 'standard' ? [] : [finish]),
    ...(piece.print === undefined ? [] : [`printed ${piece.print}`]),
  ];
  return { look: words.join(' '), ...(item === undefined ? {} : { item }) };
}
