import type { Book } from '@twistwright/books';
import { makerKey } from '@twistwright/repertoire';

/** Makers that the book names anywhere, each as it is first written, by name. */
export function knownMakers({ items, balloonTests = [] }: Pick<Book, 'items' | 'balloonTests'>): readonly string[] {
  const found = new Map<string, string>();
  const balloons = items.flatMap((item) => (item.kind === 'balloon' ? [item] : []));
  for (const { maker } of [...balloonTests, ...balloons])
    if (maker !== undefined && !found.has(makerKey(maker))) found.set(makerKey(maker), maker);
  return [...found.values()].sort((a, b) => a.localeCompare(b));
}
