import { type Document, isAlias, isMap, isScalar, type Node, type ParsedNode, parseDocument, type YAMLMap, type YAMLSeq } from 'yaml';
import { deepest, type Source, type SourceNode, type SourcePart, type SourceProblem } from './source.ts';

/** Uses of aliases that one file may have, and values it may come to with all of them written out. */
const mostAliases = 1000;
const mostNodes = 3_000_000;
/** Signs of opened lists and maps on one line, and spaces before one, beyond which a text is only meant to exhaust its reader. */
const deepestOnALine = 200;
const widestIndent = 1000;
const mostSyntaxProblems = 20;

/** Reads YAML 1.2 (core schema) with the place of every value. Aliases are written out, within bounds; merge keys, tags and cycles are problems. */
export function readYamlSource(text: string): Source {
  const deep = tooDeepAt(text);
  if (deep !== undefined)
    return { problems: [{ code: 'file.too-deep', at: deep, sentence: 'This is nested far more deeply than any book.' }] };
  const document = parseDocument(text, { version: '1.2', schema: 'core', uniqueKeys: false, prettyErrors: false, keepSourceTokens: false });
  if (document.errors.length > 0) return { problems: document.errors.slice(0, mostSyntaxProblems).map(problemOfSyntax) };
  const walk = new YamlWalk(text, document);
  return walk.source();
}
const problemOfSyntax = (error: { readonly message: string; readonly pos: readonly [number, number] }): SourceProblem => ({
  code: 'file.syntax',
  at: error.pos[0],
  sentence: `This is not YAML: ${error.message.replace(/\.?$/, '.')}`,
});

/** Where the text opens more lists and maps than could ever be meant, before a parser is let loose on it. */
function tooDeepAt(text: string): number | undefined {
  let open = 0;
  let lineStart = 0;
  while (lineStart < text.length) {
    const newline = text.indexOf('\n', lineStart);
    const lineEnd = newline < 0 ? text.length : newline;
    const indent = /^(?:\s*[-?:](?=\s))*\s*/.exec(text.slice(lineStart, Math.min(lineEnd, lineStart + 2 * widestIndent)))?.[0] ?? '';
    if (indent.length > widestIndent || indent.replaceAll(/\s/g, '').length > deepestOnALine) return lineStart;
    if (/^[\w"']/.test(text.slice(lineStart, lineStart + 1))) open = 0;
    for (let at = lineStart; at < lineEnd; at++) {
      const sign = text.charCodeAt(at);
      if (sign === 91 || sign === 123) open++;
      else if ((sign === 93 || sign === 125) && open > 0) open--;
      if (open > deepestOnALine) return at;
    }
    lineStart = lineEnd + 1;
  }
  return undefined;
}

class YamlWalk {
  readonly #text: string;
  readonly #document: Document.Parsed;
  readonly #problems: SourceProblem[] = [];
  readonly #anchors = new Map<string, Node>();
  readonly #open = new Set<Node>();
  #aliases = 0;
  #nodes = 0;
  #stopped = false;
  constructor(text: string, document: Document.Parsed) {
    this.#text = text;
    this.#document = document;
  }

  source(): Source {
    for (const warning of this.#document.warnings)
      this.#problems.push({ code: 'file.tag', at: warning.pos[0], sentence: 'Tags are not used in books.', todo: 'Leave the tag out.' });
    const contents = this.#document.contents as ParsedNode | null;
    const root = contents === null ? { at: 0, value: null } : this.#node(contents, 0);
    return this.#stopped ? { problems: this.#problems } : { root, problems: this.#problems };
  }
  #stop(problem: SourceProblem): SourceNode {
    if (!this.#stopped) this.#problems.push(problem);
    this.#stopped = true;
    return { at: problem.at, value: null };
  }
  #node(node: Node, depth: number): SourceNode {
    const at = node.range?.[0] ?? 0;
    if (this.#stopped) return { at, value: null };
    this.#nodes++;
    if (depth > deepest)
      return this.#stop({ code: 'file.too-deep', at, sentence: `This is nested more than ${deepest} deep; a book is not.` });
    if (this.#nodes > mostNodes)
      return this.#stop({ code: 'file.alias', at, sentence: `With its aliases written out this file has more than ${mostNodes} values.` });
    if (isAlias(node)) return this.#alias(node.source, at, depth);
    if (node.anchor !== undefined && node.anchor !== '') this.#anchors.set(node.anchor, node);
    if (isScalar(node)) return this.#scalar(node.value, node.range?.[1] ?? at, at);
    this.#open.add(node);
    const read = isMap(node) ? this.#map(node as YAMLMap<Node, Node | null>, at, depth) : this.#list(node as YAMLSeq<Node>, at, depth);
    this.#open.delete(node);
    return read;
  }
  #alias(name: string, at: number, depth: number): SourceNode {
    const target = this.#anchors.get(name);
    if (target === undefined) return this.#stop({ code: 'file.syntax', at, sentence: `Nothing before this place is named "${name}".` });
    if (this.#open.has(target))
      return this.#stop({
        code: 'file.cycle',
        at,
        sentence: `"*${name}" stands inside the part that it names: the file would have no end.`,
        todo: 'Write out what is meant.',
      });
    this.#aliases++;
    if (this.#aliases > mostAliases)
      return this.#stop({ code: 'file.alias', at, sentence: `This file uses more than ${mostAliases} aliases.` });
    return { ...this.#node(target, depth), at };
  }
  #scalar(value: unknown, end: number, at: number): SourceNode {
    return typeof value === 'string' ? { at, value } : { at, value, written: this.#text.slice(at, end) };
  }
  #list(list: YAMLSeq<Node>, at: number, depth: number): SourceNode {
    const parts = new Map<string | number, SourcePart>();
    const value = list.items.map((item, index) => {
      const node = this.#node(item, depth + 1);
      parts.set(index, { keyAt: node.at, node });
      return node.value;
    });
    return { at, value, parts };
  }
  #map(map: YAMLMap<Node, Node | null>, at: number, depth: number): SourceNode {
    const parts = new Map<string | number, SourcePart>();
    const value: Record<string, unknown> = {};
    const seen = new Set<string>();
    for (const pair of map.items) {
      const keyAt = pair.key.range?.[0] ?? at;
      const key = isScalar(pair.key)
        ? typeof pair.key.value === 'string'
          ? pair.key.value
          : this.#text.slice(keyAt, pair.key.range?.[1])
        : undefined;
      const problem = key === undefined ? notPlain : this.#problemOfKey(key, seen);
      if (problem !== undefined) this.#problems.push({ ...problem, at: keyAt });
      if (key === undefined || problem !== undefined) continue;
      seen.add(key);
      const node = pair.value === null ? { at: keyAt, value: null } : this.#node(pair.value, depth + 1);
      if (node.value === null) this.#noticeLostColour(key, keyAt);
      if (node.value === null) continue; // a key with nothing after it counts as not there
      parts.set(key, { keyAt, node });
      value[key] = node.value;
    }
    return { at, value, parts };
  }
  #problemOfKey(key: string, seen: ReadonlySet<string>): Omit<SourceProblem, 'at'> | undefined {
    if (key === '<<')
      return { code: 'file.merge-key', sentence: 'Merge keys ("<<") are not used in books.', todo: 'Write out what is merged.' };
    if (key === '__proto__') return { code: 'key.form', sentence: '"__proto__" cannot be a key.' };
    if (seen.has(key)) return { code: 'file.duplicate-key', sentence: `"${key}" stands twice here.`, todo: 'Leave one of them out.' };
    return undefined;
  }
  /** `body: #b8923a` is a key with a comment: YAML gives nothing, and somebody's colour would be gone without a word. */
  #noticeLostColour(key: string, keyAt: number): void {
    const lost = /^[^\n]*?:\s+(#[0-9a-fA-F]{3,8})\b/.exec(this.#text.slice(keyAt, keyAt + 300))?.[1];
    if (lost !== undefined)
      this.#problems.push({
        code: 'value.missing',
        at: keyAt,
        sentence: `Nothing is read after "${key}": in YAML ${lost} is a comment.`,
        todo: `Write "${lost}" in quotes.`,
      });
  }
}
const notPlain: Omit<SourceProblem, 'at'> = {
  code: 'key.form',
  sentence: 'A key has to be a plain text.',
  todo: 'Write a word before the colon.',
};
