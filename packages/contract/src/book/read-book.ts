import { type Book, type BookProblemCode, errorAt } from '@twistwright/books';
import { fail, ok, type Problem, type Result } from '@twistwright/units';
import { bookSchema } from './book-schema.ts';
import { readJsonSource } from './json-source.ts';
import { problemsOfIssues } from './problems-of-issues.ts';
import { Lines, nodeAt, type SourceNode } from './source.ts';
import { isRecord, schemaUnder } from './walk-schema.ts';
import { readYamlSource } from './yaml-source.ts';

/** Bytes that a book file may have; YAML takes about a second a million. */
export const mostBookBytes = { yaml: 8_000_000, json: 40_000_000 } as const;
/** Problems that are listed one by one. */
const mostProblems = 200;

export interface ReadBookOptions {
  /** Name of the file; one that ends in `.json` is read as JSON. */
  readonly name: string;
  /** Largest file, in bytes; default {@link mostBookBytes}. */
  readonly maxBytes?: number;
}

/** A book, and where each part of it stands in the text that it was read from. */
export interface PlacedBook {
  readonly book: Book;
  /** The same problem with line and column, for problems that were found in the book later, such as those of `checkBook`. */
  readonly placed: (problem: Problem) => Problem;
}

/**
 * The book in the text of a book file, YAML or JSON, or everything that is wrong with it: each problem with path, line, column, a sentence
 * and what to do. Nothing is read halfway. The parts of a book are not yet held against each other; `checkBook` does that.
 * A number stands for a text where only a text can be (`size: 260`); a key with nothing after it counts as not there.
 * @example readBook('{"book": 2}', { name: 'a.json' }).ok // -> false
 */
export function readBook(text: string, options: ReadBookOptions): Result<Book> {
  const read = readPlacedBook(text, options);
  return read.ok ? ok(read.value.book) : read;
}

/** As {@link readBook}, with the places. */
export function readPlacedBook(text: string, options: ReadBookOptions): Result<PlacedBook> {
  const read = readUsableBook(text, options);
  if (!read.ok) return read;
  const { problems, ...placed } = read.value;
  return problems.length === 0 ? ok(placed) : fail(problems);
}

/** A book without the entries that could not be read, and what is wrong with these. */
export interface UsableBook extends PlacedBook {
  readonly problems: readonly Problem[];
}

/**
 * As {@link readPlacedBook}, but entries of lists that are wrong (an offer, a figure) are left out instead of standing in the way of all the
 * others. For what is the nearest that is possible, never to go on with.
 */
export function readUsableBook(text: string, { name, maxBytes }: ReadBookOptions): Result<UsableBook> {
  const clean = text.startsWith('\uFEFF') ? text.slice(1) : text;
  const json = name.toLowerCase().endsWith('.json') || /^\s*\{/.test(clean.slice(0, 1000));
  const most = maxBytes ?? (json ? mostBookBytes.json : mostBookBytes.yaml);
  const bytes = byteLength(clean, most);
  if (bytes > most)
    return whole(
      'file.too-big',
      `${name} has ${bytes} bytes; a book file has at most ${most}.`,
      json
        ? 'Look whether this is the right file; a business of many years fits.'
        : 'Look whether this is the right file; larger books can be JSON.',
    );
  if (clean.trim() === '') return whole('file.empty', `${name} is empty.`, 'A book begins with "book: 1".');
  const source = json ? readJsonSource(clean) : readYamlSource(clean);
  const lines = new Lines(clean);
  const problems: Problem[] = source.problems.map(({ code, at, sentence, todo }) => ({
    ...errorAt(code, [], sentence, todo),
    ...lines.placeOf(at),
  }));
  if (source.root === undefined) return fail(problems);
  const { root } = source;
  const placed = (problem: Problem): Problem => ({ ...problem, ...lines.placeOf(offsetOf(root, problem)) });
  const read = parseWithTexts(root);
  if (read.success && problems.length === 0) return ok({ book: read.data, placed, problems });
  const issues = read.success ? [] : read.issues;
  const found = read.success ? [] : problemsOfIssues(bookSchema, read.value, issues.slice(0, mostProblems + 1));
  const usable = problems.length === 0 && !read.success ? withoutEntries(read.value, issues) : undefined;
  problems.push(...found.map(placed));
  problems.sort((a, b) => (a.line ?? 0) - (b.line ?? 0));
  if (usable === undefined) return fail(bounded(problems));
  const { book, before } = usable;
  return ok({
    book,
    placed: (problem) => ({ ...placed({ ...problem, path: before(problem.path) }), path: problem.path }),
    problems: bounded(problems),
  });
}

/** The book without the entries of lists in which there are issues, and the path that a path in it had before; undefined if that is no book. */
function withoutEntries(
  value: unknown,
  issues: Issues,
): { readonly book: Book; readonly before: (path: Problem['path']) => Problem['path'] } | undefined {
  if (!isRecord(value) || issues.length > mostProblems) return undefined;
  const wrong = new Map<string, Set<number>>();
  for (const { path } of issues) {
    const [list, index] = path;
    if (typeof list !== 'string' || typeof index !== 'number') return undefined;
    wrong.set(list, (wrong.get(list) ?? new Set()).add(index));
  }
  const kept = new Map<string, readonly number[]>();
  const smaller: Record<string, unknown> = { ...value };
  for (const [list, indices] of wrong) {
    const entries = value[list];
    if (!Array.isArray(entries)) return undefined;
    kept.set(
      list,
      [...entries.keys()].filter((index) => !indices.has(index)),
    );
    smaller[list] = entries.filter((_, index) => !indices.has(index));
  }
  const read = bookSchema.safeParse(smaller);
  if (!read.success) return undefined;
  const before = ([list, index, ...rest]: Problem['path']): Problem['path'] => {
    const own = typeof list === 'string' && typeof index === 'number' ? kept.get(list)?.[index] : undefined;
    return own === undefined || list === undefined
      ? [...(list === undefined ? [] : [list]), ...(index === undefined ? [] : [index]), ...rest]
      : [list, own, ...rest];
  };
  return { book: read.data, before };
}

const whole = (code: BookProblemCode, sentence: string, todo?: string): Result<never> => fail([errorAt(code, [], sentence, todo)]);
/** Bytes in UTF-8, counted only where the number of characters does not settle it. */
const byteLength = (text: string, most: number): number =>
  text.length > most || text.length * 3 <= most ? text.length : new TextEncoder().encode(text).length;

function bounded(problems: readonly Problem[]): readonly Problem[] {
  if (problems.length <= mostProblems) return problems;
  return [...problems.slice(0, mostProblems), errorAt('file.more', [], 'There are more problems than these.', 'Put these right first.')];
}
/** Where to look: at the value, or at its key when the key is the problem, or at the thing that lacks it. */
function offsetOf(root: SourceNode, problem: Problem): number {
  const { node, keyAt, whole: found } = nodeAt(root, problem.path);
  return problem.code === 'key.unknown' || problem.code === 'key.form' || !found ? keyAt : node.at;
}

type Issues = Parameters<typeof problemsOfIssues>[2];
type Parsed =
  | { readonly success: true; readonly data: Book }
  | { readonly success: false; readonly value: unknown; readonly issues: Issues };
/** The book in the value; numbers and truth values where only a text can be are taken as they are written. */
function parseWithTexts(root: SourceNode): Parsed {
  const { value } = root;
  for (;;) {
    const read = parse(value);
    if (read.success) return read;
    const texts = read.issues.filter(
      (issue) => issue.code === 'invalid_type' && issue.expected === 'string' && replaceByText(root, value, issue.path),
    );
    if (texts.length === 0) return read;
  }
}
/**
 * As the schema's own `safeParse`, but it stops when there are more issues than are listed: a file with a million bad entries
 * would take minutes otherwise.
 */
function parse(value: unknown): Parsed {
  const issues = isRecord(value) ? firstIssues(value) : [];
  if (issues.length > 0) return { success: false, value, issues };
  const read = bookSchema.safeParse(value);
  return read.success ? { success: true, data: read.data } : { success: false, value, issues: read.error.issues };
}
function firstIssues(value: Readonly<Record<string, unknown>>): Issues {
  const lists = Object.entries(value).filter((entry): entry is [string, unknown[]] => Array.isArray(entry[1]));
  const frame = { ...value, ...Object.fromEntries(lists.map(([key]) => [key, []])) };
  const issues = [...(bookSchema.safeParse(frame).error?.issues ?? [])];
  for (const [key, list] of lists) {
    const schema = schemaUnder(schemaUnder(bookSchema, value, key) ?? bookSchema, list, 0);
    for (const [index, entry] of list.entries()) {
      if (issues.length > mostProblems) return issues;
      const read = schema?.safeParse(entry);
      for (const issue of read?.error?.issues ?? []) issues.push({ ...issue, path: [key, index, ...issue.path] });
    }
  }
  return issues;
}
function replaceByText(root: SourceNode, value: unknown, path: readonly PropertyKey[]): boolean {
  const { node, whole: found } = nodeAt(root, path);
  const key = path.at(-1);
  if (!found || node.written === undefined || key === undefined) return false;
  let here = value as Record<PropertyKey, unknown>;
  for (const step of path.slice(0, -1)) here = here[step] as Record<PropertyKey, unknown>;
  if (typeof here[key] === 'string') return false;
  here[key] = node.written;
  return true;
}
