import { type Book, type Item, nameOfItem } from '@twistwright/books';
import type { ReactElement } from 'react';
import { type Rubber, rubberOf } from '../pictures/rubber.ts';
import { Swatch } from '../pictures/swatch.tsx';

export const rubberOfItem = (book: Book, item: Item | undefined): Rubber =>
  rubberOf(
    item?.kind === 'balloon' ? (book.colours.find((c) => c.id === item.colour) ?? { id: item.colour, name: item.colour }) : undefined,
  );

/** A thing that is bought: its picture, its size code, its name. */
export function ItemName({ book, item: id }: { readonly book: Book; readonly item: string }): ReactElement {
  const item = book.items.find((entry) => entry.id === id);
  if (item === undefined || item.kind !== 'balloon') return <span className="item plain">{item?.name ?? id}</span>;
  const name = nameOfItem(item, book.colours);
  const [size, ...rest] = name.split(' ');
  return (
    <span className="item">
      <Swatch
        size={item.size}
        rubber={rubberOfItem(book, item)}
        finish={item.finish}
        {...(item.print === undefined ? {} : { print: item.print })}
      />
      <span>
        <span className="sz">{size}</span> {rest.join(' ')}
      </span>
    </span>
  );
}
