import type { Problem } from '@twistwright/units';
import type { Book } from './book.ts';
import { type Names, unknownName } from './check-names.ts';

/** Kits that name what the book no longer has. Warnings only: a kit tells what was advised on its day, and price lists move on. */
export function checkKits(book: Book, names: Names): readonly Problem[] {
  return (book.kits ?? []).flatMap((kit, index): readonly Problem[] => {
    const path = ['kits', index] as const;
    const by = `Kit "${kit.name}"`;
    return [
      ...kit.lines.flatMap((line, at) => unknownName(names, 'offer', line.offer, [...path, 'lines', at, 'offer'], by)),
      ...kit.tools.flatMap((tool, at) => unknownName(names, 'item', tool, [...path, 'tools', at], by)),
      ...(kit.wishes.figures ?? []).flatMap((figure, at) => unknownName(names, 'figure', figure, [...path, 'wishes', 'figures', at], by)),
    ].map((problem): Problem => ({ ...problem, weight: 'warning', todo: 'Put the kit together again, or delete it.' }));
  });
}
