import { deepest, type Source, type SourceNode, type SourcePart, type SourceProblem } from './source.ts';

/**
 * Reads JSON (RFC 8259) with the place of every value, all duplicate keys, and a bound on nesting, which `JSON.parse` does not give.
 * Stops at the first error of syntax.
 */
export function readJsonSource(text: string): Source {
  const reader = new JsonReader(text);
  try {
    const root = reader.document();
    return { root, problems: reader.problems };
  } catch (problem) {
    if (!(problem instanceof Unreadable)) throw problem;
    return { problems: [...reader.problems, problem.problem] };
  }
}

class Unreadable extends Error {
  readonly problem: SourceProblem;
  constructor(problem: SourceProblem) {
    super(problem.sentence);
    this.problem = problem;
  }
}

const space = /[ \t\n\r]*/y;
const numberForm = /-?(?:0|[1-9]\d*)(?:\.\d+)?(?:[eE][+-]?\d+)?/y;
const words = { true: true, false: false, null: null } as const;
const wordForm = /true|false|null/y;

class JsonReader {
  readonly problems: SourceProblem[] = [];
  readonly #text: string;
  #at = 0;
  constructor(text: string) {
    this.#text = text;
  }

  document(): SourceNode {
    this.#skipSpace();
    const root = this.#value(0);
    this.#skipSpace();
    if (this.#at < this.#text.length) throw this.#unexpected('the end of the file');
    return root;
  }
  #value(depth: number): SourceNode {
    const at = this.#at;
    if (depth > deepest)
      throw new Unreadable({ code: 'file.too-deep', at, sentence: `This is nested more than ${deepest} deep; a book is not.` });
    const first = this.#text[at];
    if (first === '{') return this.#object(depth);
    if (first === '[') return this.#list(depth);
    if (first === '"') return { at, value: this.#string() };
    const word = this.#match(wordForm) as keyof typeof words | undefined;
    if (word !== undefined) return { at, value: words[word], written: word };
    const number = this.#match(numberForm);
    if (number !== undefined) return { at, value: Number(number), written: number };
    throw this.#unexpected('a value');
  }
  #object(depth: number): SourceNode {
    const at = this.#at++;
    const value: Record<string, unknown> = {};
    const parts = new Map<string | number, SourcePart>();
    this.#skipSpace();
    if (this.#take('}')) return { at, value, parts };
    for (;;) {
      const keyAt = this.#at;
      if (this.#text[keyAt] !== '"') throw this.#unexpected('a key in double quotes');
      const key = this.#string();
      this.#skipSpace();
      if (!this.#take(':')) throw this.#unexpected('":"');
      this.#skipSpace();
      const node = this.#value(depth + 1);
      if (parts.has(key))
        this.problems.push({
          code: 'file.duplicate-key',
          at: keyAt,
          sentence: `"${key}" stands twice here.`,
          todo: 'Leave one of them out.',
        });
      else if (key === '__proto__') this.problems.push({ code: 'key.form', at: keyAt, sentence: '"__proto__" cannot be a key.' });
      else if (node.value !== null) {
        parts.set(key, { keyAt, node });
        value[key] = node.value;
      }
      this.#skipSpace();
      if (this.#take('}')) return { at, value, parts };
      if (!this.#take(',')) throw this.#unexpected('"," or "}"');
      this.#skipSpace();
    }
  }
  #list(depth: number): SourceNode {
    const at = this.#at++;
    const value: unknown[] = [];
    const parts = new Map<string | number, SourcePart>();
    this.#skipSpace();
    if (this.#take(']')) return { at, value, parts };
    for (;;) {
      const node = this.#value(depth + 1);
      parts.set(value.length, { keyAt: node.at, node });
      value.push(node.value);
      this.#skipSpace();
      if (this.#take(']')) return { at, value, parts };
      if (!this.#take(',')) throw this.#unexpected('"," or "]"');
      this.#skipSpace();
    }
  }
  #string(): string {
    let end = this.#at + 1;
    if (this.#text[this.#at] !== '"') throw this.#unexpected('a text in double quotes');
    while (end < this.#text.length && this.#text[end] !== '"') end += this.#text[end] === '\\' ? 2 : 1;
    const written = this.#text.slice(this.#at, end + 1);
    try {
      const value = JSON.parse(written) as string;
      this.#at = end + 1;
      return value;
    } catch {
      throw this.#unexpected('a text that ends with a double quote and has no line end in it'); // JSON.parse says no in no other way
    }
  }
  #skipSpace(): void {
    this.#match(space);
  }
  #match(form: RegExp): string | undefined {
    form.lastIndex = this.#at;
    const found = form.exec(this.#text)?.[0];
    if (found !== undefined) this.#at += found.length;
    return found;
  }
  #take(sign: string): boolean {
    if (this.#text[this.#at] !== sign) return false;
    this.#at++;
    return true;
  }
  #unexpected(wanted: string): Unreadable {
    const found = this.#at < this.#text.length ? JSON.stringify(this.#text.slice(this.#at, this.#at + 12)) : 'the end of the file';
    return new Unreadable({ code: 'file.syntax', at: this.#at, sentence: `This is not JSON: ${wanted} was expected here, not ${found}.` });
  }
}
