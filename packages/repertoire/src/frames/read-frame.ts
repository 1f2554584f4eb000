import { cmPerInch, fail, ok, type Problem, type Result } from '@twistwright/units';
import {
  checkFrame,
  type Frame,
  type FrameEdge,
  type FrameJoint,
  isEdgeLength,
  mostFrameEdges,
  mostFrameProblems,
  noEdges,
  tooManyEdges,
} from './frame.ts';
import { asWord, type FrameWord, frameWords } from './frame-words.ts';

/**
 * Reads a frame file (`docs/frames.md`): one `edge FROM TO LENGTH COLOUR`, `loop JOINT LENGTH COLOUR`, `joint NAME` or `frame NAME` a
 * line. Lengths are inches, or centimetres as in `12cm`. Without a `joint` line every name makes a joint; with one, all must be listed.
 * Problems carry line and column; at most twenty are told.
 * @example readFrame('edge A B 5 red').value.edges // -> [{ from: 'A', to: 'B', lengthInches: 5, colour: 'red' }]
 */
export function readFrame(text: string): Result<Frame> {
  const reader = new FrameReader();
  for (const [index, line] of text.split(/\r\n|\n|\r/u).entries()) {
    reader.line(line, index + 1);
    if (reader.problems.length >= mostFrameProblems) break;
  }
  return reader.result();
}

class FrameReader {
  readonly problems: Problem[] = [];
  #name: string | undefined;
  readonly #joints = new Map<string, FrameJoint>();
  #listed = false;
  readonly #edges: FrameEdge[] = [];
  /** Where each joint was first named, for the sentence when it is not in the list. */
  readonly #firstNamed = new Map<string, { readonly line: number; readonly column: number }>();
  #line = 0;

  line(text: string, line: number): void {
    this.#line = line;
    const words = frameWords(text);
    if ('openAt' in words) {
      this.#report('frame.quote', words.openAt, 'A quotation mark is opened and not closed.', 'Close it, or leave it out.');
      return;
    }
    const [keyword, ...rest] = words;
    if (keyword === undefined) return;
    switch (keyword.text.toLowerCase()) {
      case 'edge':
        this.#edge(keyword, rest[0], rest[1], rest.slice(2));
        break;
      case 'loop':
        this.#edge(keyword, rest[0], rest[0], rest.slice(1));
        break;
      case 'joint':
        this.#joint(keyword, rest);
        break;
      case 'frame':
        this.#name = rest.map((word) => word.text).join(' ');
        break;
      default:
        this.#report(
          'frame.word',
          keyword.column,
          `A line cannot start with “${short(keyword.text)}”.`,
          'Start it with edge, loop, joint or frame.',
        );
    }
  }

  result(): Result<Frame> {
    if (this.problems.length === 0) this.#checkListed();
    if (this.problems.length === 0 && this.#edges.length === 0) this.problems.push(noEdges());
    if (this.#edges.length > mostFrameEdges) this.problems.push(tooManyEdges(this.#edges.length));
    if (this.problems.length > 0) return fail(this.problems);
    const joints = this.#listed ? [...this.#joints.values()] : [...this.#firstNamed.keys()].map((name) => ({ name }));
    return ok({ ...(this.#name === undefined || this.#name === '' ? {} : { name: this.#name }), joints, edges: this.#edges });
  }

  #edge(keyword: FrameWord, from: FrameWord | undefined, to: FrameWord | undefined, rest: readonly FrameWord[]): void {
    const [lengthWord, ...colourWords] = rest;
    if (from === undefined || to === undefined || lengthWord === undefined) {
      const form = keyword.text.toLowerCase() === 'loop' ? 'loop A 5 red' : 'edge A B 5 red';
      this.#report(
        'frame.edge-form',
        keyword.column,
        `This ${keyword.text.toLowerCase()} is not complete.`,
        `Write it like “${form}”; the colour may be left out.`,
      );
      return;
    }
    const lengthInches = inchesOf(lengthWord.text);
    if (lengthInches === undefined) {
      this.#report(
        'frame.length',
        lengthWord.column,
        `“${short(lengthWord.text)}” is not a length.`,
        'Write inches as 5 or 4.5, or centimetres as 12cm.',
      );
      return;
    }
    if (!isEdgeLength(lengthInches)) {
      this.#report(
        'frame.edge-length',
        lengthWord.column,
        `An edge cannot be ${short(lengthWord.text)} long.`,
        'Give it more than nothing and at most 10,000 inches.',
      );
      return;
    }
    for (const word of [from, to]) {
      if (word.text.trim() === '') this.#report('frame.joint-unnamed', word.column, 'A joint needs a name.');
      else if (!this.#firstNamed.has(word.text)) this.#firstNamed.set(word.text, { line: this.#line, column: word.column });
    }
    const colour = colourWords
      .map((word) => word.text)
      .join(' ')
      .trim();
    this.#edges.push({ from: from.text, to: to.text, lengthInches, ...(colour === '' ? {} : { colour }) });
  }

  #joint(keyword: FrameWord, rest: readonly FrameWord[]): void {
    const [name, at, ...numbers] = rest;
    if (name === undefined || name.text.trim() === '') {
      this.#report('frame.joint-unnamed', keyword.column, 'A joint needs a name.', 'Write it like “joint A” or “joint A at 0 0 5”.');
      return;
    }
    if (this.#joints.has(name.text)) {
      this.#report('frame.joint-twice', name.column, `Two joints are called ${short(name.text)}.`, 'Give each joint a name of its own.');
      return;
    }
    this.#listed = true;
    if (at === undefined) {
      this.#joints.set(name.text, { name: name.text });
      return;
    }
    const [x, y, z] = numbers.map((word) => numberOf(word.text));
    if (at.text !== 'at' || numbers.length !== 3 || x === undefined || y === undefined || z === undefined) {
      this.#report(
        'frame.joint-place',
        at.column,
        'The place of a joint is three numbers.',
        `Write it like “joint ${asWord(short(name.text))} at 0 0 5”, or leave it out.`,
      );
      return;
    }
    this.#joints.set(name.text, { name: name.text, at: [x, y, z] });
  }

  #checkListed(): void {
    if (!this.#listed) return;
    for (const [name, place] of this.#firstNamed) {
      if (this.#joints.has(name)) continue;
      if (this.problems.length >= mostFrameProblems) return;
      this.#line = place.line;
      this.#report(
        'frame.joint-unknown',
        place.column,
        `There is no joint called ${short(name)}.`,
        'Name it in a joint line, or correct the name.',
      );
    }
  }

  #report(code: string, column: number, sentence: string, todo?: string): void {
    this.problems.push({ code, path: [], sentence, ...(todo === undefined ? {} : { todo }), weight: 'error', line: this.#line, column });
  }
}

function inchesOf(text: string): number | undefined {
  const centimetres = /^(.*)cm$/iu.exec(text)?.[1];
  const number = numberOf(centimetres ?? text.replace(/in$/iu, ''));
  return number === undefined || centimetres === undefined ? number : number / cmPerInch;
}

/** A plain decimal; a sign is read so that the sentence about a negative length can be the right one. */
const numberOf = (text: string): number | undefined => (/^[+-]?(\d+(\.\d*)?|\.\d+)$/u.test(text) ? Number(text) : undefined);

const short = (text: string): string => (text.length > 40 ? `${text.slice(0, 40)}…` : text);

/** The frame as a file that reads back equal. Throws for a frame with problems, whose names might not survive. */
export function writeFrame(frame: Frame): string {
  const wrong = checkFrame(frame)[0];
  if (wrong !== undefined) throw new Error(`a frame that cannot be written: ${wrong.sentence}`);
  const title = frame.name === undefined ? [] : [`frame ${asWord(frame.name)}`];
  const joints = frame.joints.map(({ name, at }) => `joint ${asWord(name)}${at === undefined ? '' : ` at ${at.map(plain).join(' ')}`}`);
  const edges = frame.edges.map(({ from, to, lengthInches, colour }) => {
    const end = `${plain(lengthInches)}${colour === undefined ? '' : ` ${colour.split(' ').map(asWord).join(' ')}`}`;
    return from === to ? `loop ${asWord(from)} ${end}` : `edge ${asWord(from)} ${asWord(to)} ${end}`;
  });
  return `${[...title, ...joints, ...edges].join('\n')}\n`;
}

/** Enough decimals for a hundred-millionth of an inch, never an exponent. */
const plain = (value: number): string => `${Number.isInteger(value) ? value : value.toFixed(8).replace(/0+$/u, '')}`;
