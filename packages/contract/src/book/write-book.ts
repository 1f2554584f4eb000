import type { Book } from '@twistwright/books';
import { Document, isCollection, isMap, isScalar, type Node, visit } from 'yaml';
import { bookSchema } from './book-schema.ts';
import { inOrder } from './walk-schema.ts';

export type BookForm = 'yaml' | 'json';

/** Longest line on which a small entry is written whole. */
const lineLength = 140;

/**
 * The book as the text of a book file. Keys come in the order of the schema, lists in the order of the book; small entries stand on one
 * line, recipes as blocks of text. Reading the text gives the same book again, exactly. Comments of a file that was read are not kept.
 * @example writeBook(emptyBook({ name: 'Six Turns', currency: 'GBP', zone: 'Europe/London' }), 'yaml').slice(0, 8) // -> 'book: 1\n'
 */
export function writeBook(book: Book, form: BookForm): string {
  const ordered = inOrder(bookSchema, book);
  if (form === 'json') return `${JSON.stringify(ordered, undefined, 2)}\n`;
  const document = new Document(ordered, { aliasDuplicateObjects: false });
  visit(document, {
    Collection(_, node, path) {
      if (path.length > 3 && fitsOnALine(node)) node.flow = true;
    },
    Pair(_, pair, path) {
      // an empty line before each list or section of the book
      const first = path.length === 2;
      if (first && isCollection(pair.value) && pair.value.items.length > 0 && isScalar(pair.key)) pair.key.spaceBefore = true;
    },
  });
  return document.toString({ lineWidth: 0, blockQuote: 'literal', flowCollectionPadding: true });
}

/** True for a map or list of scalars, or of such maps and lists two deep, that is short and has no text of several lines. */
function fitsOnALine(node: Node, depth = 0): boolean {
  return lengthOf(node, depth) <= lineLength;
}
function lengthOf(node: unknown, depth: number): number {
  if (isScalar(node)) {
    const text = String(node.value);
    return text.includes('\n') ? Number.POSITIVE_INFINITY : text.length + 2;
  }
  if (!isCollection(node) || depth > 1) return Number.POSITIVE_INFINITY;
  let length = 4;
  for (const item of node.items) {
    length += isMap(node)
      ? lengthOf((item as { key: unknown }).key, depth) + lengthOf((item as { value: unknown }).value, depth + 1)
      : lengthOf(item, depth + 1);
    if (length > lineLength) return Number.POSITIVE_INFINITY;
  }
  return length;
}
