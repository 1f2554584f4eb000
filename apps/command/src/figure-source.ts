import { basename } from 'node:path';
import type { Book, Figure } from '@twistwright/books';
import { knownPaint, shippedBook } from '@twistwright/planner';
import type { Problem } from '@twistwright/units';
import type { Arguments } from './arguments.ts';
import { openBook } from './open-book.ts';
import type { Outside } from './outside.ts';

/** The book that a figure is looked up in: the one that was named, else the shipped figures. */
export type FigureBook =
  | { readonly ok: true; readonly book: Book; readonly isShipped: boolean }
  | { readonly ok: false; readonly problems: readonly Problem[]; readonly file: string };

export async function figureBook(args: Arguments, outside: Outside): Promise<FigureBook> {
  const path = args.text('book');
  if (path === undefined) return { ok: true, isShipped: true, book: shippedBook({ name: 'Twistwright', currency: 'EUR', zone: 'UTC' }) };
  const opened = await openBook(path, args.day('today'), outside);
  return opened.ok ? { ok: true, isShipped: false, book: opened.book } : { ok: false, problems: opened.problems, file: path };
}

/** A figure by its id in the book, else a recipe file; undefined when there is neither. Every role of a file gets a colour of its own. */
export async function figureNamed(name: string, book: Book, outside: Outside): Promise<Figure | undefined> {
  const known = book.figures.find((figure) => figure.id === name);
  if (known !== undefined) return known;
  let recipe: string;
  try {
    recipe = await outside.readFile(name);
  } catch {
    return undefined;
  }
  const title = basename(name).replace(/\.[^.]*$/u, '');
  return { id: title, name: title.charAt(0).toUpperCase() + title.slice(1).replaceAll('-', ' '), recipe, colourways: [] };
}

/**
 * Reads `body=red,eyes=#ffffff`; a sentence if it cannot be understood.
 * @example readColours('body=red', ['body'], { colours: [] }) // -> { ok: true, value: { body: 'red' } }
 */
export function readColours(
  text: string,
  roles: readonly string[],
  book: Pick<Book, 'colours'>,
): { readonly ok: true; readonly value: Readonly<Record<string, string>> } | { readonly ok: false; readonly error: string } {
  const fill: Record<string, string> = {};
  for (const part of text.split(',')) {
    const [role = '', colour = '', more] = part.split('=').map((word) => word.trim());
    if (role === '' || colour === '' || more !== undefined)
      return { ok: false, error: `--colours takes ROLE=COLOUR with commas between, such as body=red; "${part}" is none.` };
    if (!roles.includes(role)) return { ok: false, error: `There is no role "${role}"; the recipe has ${roles.join(', ')}.` };
    if (knownPaint(book, colour) === undefined)
      return { ok: false, error: `"${colour}" is no colour: write one of the book, a plain name such as red, or #rrggbb.` };
    fill[role] = colour;
  }
  return { ok: true, value: fill };
}
