import type { Problem } from '@twistwright/units';
import type { BubbleKind, Copies, Direction, Finishing, Length, Steering } from '../recipe.ts';
import { bubbleKinds, directions } from '../recipe.ts';
import { limits } from './limits.ts';
import type { Line } from './line.ts';
import type { RecipeProblemCode } from './problem-codes.ts';
import { type LineWord, lineWords, type OptionWord } from './vocabulary.ts';
import { hasUnseen, nearestWord, partsOf, quoted, type Span, tidyName, wordsOf } from './words.ts';

export interface ReadLine {
  /** Missing when the line could not be understood. */
  readonly line?: Line;
  /** Text after `#`, trimmed; missing when there is no `#`. */
  readonly comment?: string;
  readonly problems: readonly Problem[];
}

/** Words from elsewhere in the trade, and what they are called here. */
const otherWords: Readonly<Record<string, string>> = {
  twist: 'bubble',
  basic: 'bubble',
  ear: 'pinch',
  petal: 'fold',
  push: 'tuck',
  tie: 'join',
  connect: 'join',
  attach: 'join',
  burst: 'pop',
  cut: 'trim',
  deflate: 'trim',
  tail: 'leave',
  draw: 'finish',
  marker: 'finish',
  stick: 'finish',
  time: 'minutes',
  say: 'note',
  group: 'repeat',
  piece: 'balloon',
  name: 'mark',
};

/** Reads one line by itself; `number` is its 1-based place in the text. Never throws. */
export function readLine(text: string, number: number): ReadLine {
  const hash = text.indexOf('#');
  const body = hash < 0 ? text : text.slice(0, hash);
  const comment = hash < 0 ? {} : { comment: text.slice(hash + 1).trim() };
  const reader = new LineReader(number);
  const line = reader.read({ text: body, column: 1 });
  return { ...(line === undefined ? {} : { line }), ...comment, problems: reader.problems };
}

class LineReader {
  readonly problems: Problem[] = [];
  readonly #line: number;
  constructor(line: number) {
    this.#line = line;
  }

  report(code: RecipeProblemCode, column: number, sentence: string, todo?: string): undefined {
    this.problems.push({ code, path: [], sentence, ...(todo === undefined ? {} : { todo }), weight: 'error', line: this.#line, column });
  }

  read(whole: Span): Line | undefined {
    const [first, ...others] = wordsOf(whole);
    if (first === undefined) return { kind: 'blank' };
    const after = first.column - 1 + first.text.length;
    const rest: Span = { text: whole.text.slice(after), column: after + 1 };
    const word = first.text.toLowerCase() as LineWord;
    if ((bubbleKinds as readonly string[]).includes(word) || word === 'flat') return this.#bubble(word as BubbleKind | 'flat', rest);
    switch (word) {
      case 'balloon':
        return this.#piece(rest);
      case 'leave':
      case 'keep':
        return this.#withInches(word, others, rest, 0);
      case 'inflate':
        return this.#withInches(word, others, rest, limits.shortest);
      case 'burp':
        return this.#alone(others, { kind: 'burp' });
      case 'end':
        return this.#alone(others, { kind: 'end' });
      case 'trim':
        return this.#alone(others, { kind: 'move', move: { kind: 'trim' } });
      case 'lock':
        return this.#lock(others, rest);
      case 'join':
        return this.#join(others, rest);
      case 'mark':
        return this.#mark(rest);
      case 'pop':
        return this.#pop(rest);
      case 'tuck':
        return this.#tuck(rest);
      case 'note':
        return this.#note(rest);
      case 'repeat': {
        const copies = this.#copies(others, rest.column);
        return copies && { kind: 'repeat', copies };
      }
      case 'minutes':
        return this.#minutes(others, rest);
      case 'finish':
        return this.#finish(others, rest);
      default:
        return this.#unknown(first);
    }
  }

  #unknown(word: Span): undefined {
    const lower = word.text.toLowerCase();
    const meant = otherWords[lower] ?? nearestWord(lower, lineWords);
    return this.report(
      'recipe.word',
      word.column,
      `${quoted(word.text)} does not start a line.`,
      meant === undefined ? `Start with one of: ${lineWords.join(', ')}.` : `Perhaps “${meant}” is meant.`,
    );
  }

  #alone(others: readonly Span[], line: Line): Line | undefined {
    const extra = others[0];
    if (extra === undefined) return line;
    return this.report(
      'recipe.expected',
      extra.column,
      `Nothing was expected here, but there is ${quoted(extra.text)}.`,
      'Put it on a line of its own.',
    );
  }

  /** `what` is said when the number is missing, for example "how many inches". */
  #number(word: Span | undefined, column: number, what: string, least: number, most: number): number | undefined {
    if (word === undefined) return this.report('recipe.number', column, `Expected ${what}.`, 'Write a number, such as 3 or 2.5.');
    if (/^[+-]?(\d+\.?\d*|\.\d+)$/u.test(word.text) === false) {
      const half = /^\d+\/\d+$/u.test(word.text)
        ? 'Write 0.5, not 1/2; for a part of what is left write “1/2 of rest”.'
        : 'Write digits with a point: 3 or 2.5.';
      return this.report('recipe.number', word.column, `Expected ${what}, but there is ${quoted(word.text)}.`, half);
    }
    const value = Number(word.text);
    if (value < least || value > most) {
      return this.report(
        'recipe.number',
        word.column,
        `${word.text.slice(0, limits.name)} is out of range for ${what}.`,
        `It has to be from ${least} to ${most}.`,
      );
    }
    return value;
  }

  #name(span: Span, what: string): string | undefined {
    const name = tidyName(span.text);
    if (name === '') return this.report('recipe.name', span.column, `Expected ${what}.`, 'Write one or more words.');
    if (name.length > limits.name) {
      return this.report('recipe.name', span.column, `This is too long for ${what}.`, `At most ${limits.name} characters.`);
    }
    if (hasUnseen(name)) {
      return this.report(
        'recipe.name',
        span.column,
        `There is a character that cannot be seen in ${quoted(name)}.`,
        'Type the name again, without it.',
      );
    }
    const wrong = /[,:#]|(?<!\S)(?:into|on)(?!\S)/iu.exec(name);
    if (wrong !== null) {
      return this.report(
        'recipe.name',
        span.column,
        `“${wrong[0]}” cannot be part of ${what}.`,
        'Names have no comma, colon or #, and not the words “into” and “on”.',
      );
    }
    return name;
  }

  /** Number with an optional unit at `at`; returns inches and how many words it took. */
  #inches(
    words: readonly Span[],
    column: number,
    what: string,
    least: number,
  ): { readonly inches: number; readonly taken: number } | undefined {
    const unit = words[1]?.text.toLowerCase();
    const centimetres = unit === 'cm';
    const scale = centimetres ? 2.54 : 1;
    const value = this.#number(words[0], column, what, least * scale, limits.longest * scale);
    if (value === undefined) return undefined;
    const hasUnit = centimetres || unit === 'in' || unit === 'inch' || unit === 'inches';
    return { inches: centimetres ? Number((value / scale).toFixed(4)) : value, taken: hasUnit ? 2 : 1 };
  }

  #withInches(kind: 'leave' | 'inflate' | 'keep', words: readonly Span[], rest: Span, least: number): Line | undefined {
    const read = this.#inches(
      words,
      rest.column,
      kind === 'inflate' ? 'how many inches to blow up' : `how many flat inches to ${kind}`,
      least,
    );
    if (read === undefined) return undefined;
    return this.#alone(words.slice(read.taken), { kind, inches: read.inches });
  }

  #piece(rest: Span): Line | undefined {
    const colon = rest.text.indexOf(':');
    if (colon < 0) {
      return this.report(
        'recipe.expected',
        rest.column,
        'Expected a name, a colon, a size and a colour role.',
        'For example: balloon dog: 260 in body',
      );
    }
    const lead = rest.text.length - rest.text.trimStart().length;
    const name = this.#name({ text: rest.text.slice(0, colon), column: rest.column + Math.min(lead, colon) }, 'the name of a balloon');
    const [first, ...options] = partsOf({ text: rest.text.slice(colon + 1), column: rest.column + colon + 1 });
    const [size, join, ...roleWords] = wordsOf(first ?? { text: '', column: rest.column });
    if (size === undefined || (size.text.toLowerCase() === 'in' && join?.text.toLowerCase() !== 'in'))
      return this.report(
        'recipe.size',
        size?.column ?? rest.column + colon + 1,
        'Expected a size code after the colon.',
        'For example 260, 160 or round-5.',
      );
    if (join?.text.toLowerCase() !== 'in') {
      return this.report(
        'recipe.expected',
        join?.column ?? size.column + size.text.length,
        'Expected “in” and a colour role after the size.',
        'For example: 260 in body',
      );
    }
    const role = this.#name(spanOf(roleWords, join.column + 2), 'a colour role');
    const extra = this.#pieceOptions(options);
    if (name === undefined || role === undefined || extra === undefined) return undefined;
    return { kind: 'piece', name, size: size.text, role, ...extra };
  }

  #pieceOptions(options: readonly Span[]): { finish?: string; print?: string; copies?: Copies } | undefined {
    const found: { finish?: string; print?: string; copies?: Copies } = {};
    for (const option of options) {
      const [first, ...others] = wordsOf(option);
      const word = first?.text.toLowerCase();
      if (word === 'finish' || word === 'printed') {
        const key = word === 'finish' ? 'finish' : 'print';
        const value = this.#name(spanOf(others, option.column + word.length), word === 'finish' ? 'a finish' : 'a print');
        if (value === undefined) return undefined;
        if (found[key] !== undefined) return this.report('recipe.twice', option.column, `“${word}” is given twice.`);
        found[key] = value;
      } else if (isCopies(word)) {
        const copies = this.#copies(wordsOf(option), option.column);
        if (copies === undefined) return undefined;
        if (found.copies !== undefined) return this.report('recipe.twice', option.column, 'The number of balloons is given twice.');
        found.copies = copies;
      } else {
        return this.report(
          'recipe.expected',
          option.column,
          'Expected “finish …”, “printed …” or “x 2” after the comma.',
          'For example: balloon eyes: round-5 in eyes, printed eyes, x 2',
        );
      }
    }
    return found;
  }

  /** `x 6 mirrored around forward` */
  #copies(words: readonly Span[], column: number): Copies | undefined {
    const glued = /^[x×](\d+)$/iu.exec(words[0]?.text ?? '');
    const isX = /^[x×]$/iu.test(words[0]?.text ?? '');
    if (glued === null && !isX)
      return this.report('recipe.expected', words[0]?.column ?? column, 'Expected “x” and how many times.', 'For example: x 2');
    const place = words[0]?.column ?? column;
    const number = glued === null ? words[1] : { text: glued[1] ?? '', column: place + 1 };
    const times = this.#number(number, place + 1, 'how many times', 1, limits.times);
    if (times === undefined) return undefined;
    if (!Number.isInteger(times)) return this.report('recipe.number', number?.column ?? place, `${times} times is not a whole number.`);
    let left = words.slice(glued === null ? 2 : 1);
    const mirrored = left[0]?.text.toLowerCase() === 'mirrored';
    if (mirrored) left = left.slice(1);
    if (left.length === 0) return { times, ...(mirrored ? { mirrored } : {}) };
    const direction = left[1]?.text.toLowerCase() as Direction | undefined;
    if (left[0]?.text.toLowerCase() !== 'around' || left.length > 2) {
      return this.report(
        'recipe.expected',
        left[0]?.column ?? place,
        'Expected “mirrored”, “around” and a direction, or nothing.',
        'For example: x 6 around forward',
      );
    }
    if (direction === undefined || !directions.includes(direction)) {
      return this.report(
        'recipe.direction',
        left[1]?.column ?? place,
        'Expected a direction after “around”.',
        `One of: ${directions.join(', ')}.`,
      );
    }
    return { times, ...(mirrored ? { mirrored } : {}), around: direction };
  }

  #length(words: readonly Span[], column: number): { readonly length: Length; readonly taken: number } | undefined {
    const first = words[0]?.text.toLowerCase();
    if (first === 'rest') return { length: { part: 1, of: 1 }, taken: 1 };
    const fraction = /^(\d{1,3})\/(\d{1,3})$/u.exec(first ?? '') ?? (first === 'half' ? ['', '1', '2'] : null);
    if (fraction !== null && words[1]?.text.toLowerCase() === 'of') {
      const part = Number(fraction[1]);
      const of = Number(fraction[2]);
      if (words[2]?.text.toLowerCase() !== 'rest')
        return this.report(
          'recipe.expected',
          words[2]?.column ?? column,
          'Expected “rest” after “of”.',
          'For example: bubble 1/2 of rest body',
        );
      if (part < 1 || of < part)
        return this.report(
          'recipe.number',
          words[0]?.column ?? column,
          `${first} is not a part of what is left.`,
          'Write a fraction from 1/100 to 1/1.',
        );
      return { length: part === of ? { part: 1, of: 1 } : { part, of }, taken: 3 };
    }
    const read = this.#inches(words, column, 'how many inches, or “rest”', limits.shortest);
    return read && { length: read.inches, taken: read.taken };
  }

  #bubble(kind: BubbleKind | 'flat', rest: Span): Line | undefined {
    const [first, ...options] = partsOf(rest);
    const words = wordsOf(first ?? rest);
    const read = this.#length(words, rest.column);
    if (read === undefined) return undefined;
    const labelWords = words.slice(read.taken);
    const label = labelWords.length === 0 ? undefined : this.#name(spanOf(labelWords, rest.column), 'a label');
    if (labelWords.length > 0 && label === undefined) return undefined;
    const extra = this.#bubbleOptions(options, kind);
    if (extra === undefined) return undefined;
    const { copies, split, soft, ...steering } = extra;
    const shown = { length: read.length, ...(label === undefined ? {} : { label }), ...steering };
    const move = kind === 'flat' ? { kind, ...shown } : { kind, ...shown, ...(split ? { split } : {}), ...(soft ? { soft } : {}) };
    return { kind: 'move', move, ...(copies === undefined ? {} : { copies }) };
  }

  #bubbleOptions(options: readonly Span[], kind: BubbleKind | 'flat'): BubbleOptions | undefined {
    const found: { -readonly [K in keyof BubbleOptions]: BubbleOptions[K] } = {};
    for (const option of options) {
      const words = wordsOf(option);
      const word = words[0]?.text.toLowerCase();
      let read: BubbleOptions | undefined;
      if ((word === 'split' || word === 'soft') && kind !== 'flat') {
        if (this.#alone(words.slice(1), { kind: 'blank' }) === undefined) return undefined;
        read = word === 'split' ? { split: true } : { soft: true };
      } else if (isCopies(word)) {
        const copies = this.#copies(words, option.column);
        read = copies && { copies };
      } else if (word === 'facing') {
        const facing = this.#directions(words.slice(1), option.column);
        read = facing && { facing };
      } else if (word === 'bend') {
        read = this.#bend(words.slice(1), option.column);
      } else if (directions.includes(word as Direction)) {
        const aim = this.#directions(words, option.column);
        read = aim && { aim };
      } else {
        return this.#unknownOption(words[0], option.column);
      }
      if (read === undefined) return undefined;
      const twice = Object.keys(read).find((key) => key in found);
      if (twice !== undefined)
        return this.report('recipe.twice', option.column, `${quoted(option.text)} says again what was said before on this line.`);
      Object.assign(found, read);
    }
    return found;
  }

  #unknownOption(word: Span | undefined, column: number): undefined {
    const meant = word === undefined ? undefined : nearestWord(word.text, bubbleOptions);
    const decimal = word !== undefined && /^\d+$/u.test(word.text) ? 'Write a length with a point, not a comma: 2.5.' : undefined;
    const all = `One of: ${directions.join(', ')}, facing …, bend …, split, soft, x 2.`;
    return this.report(
      'recipe.expected',
      column,
      word === undefined ? 'Expected something after the comma.' : `${quoted(word.text)} was not expected after the comma.`,
      decimal ?? (meant === undefined ? all : `Perhaps “${meant}” is meant.`),
    );
  }

  #bend(words: readonly Span[], column: number): Steering | undefined {
    const bendDegrees = this.#number(words[0], column, 'by how many degrees it is bent', 0, 720);
    if (bendDegrees === undefined) return undefined;
    if (words.length === 1) return { bendDegrees };
    const bendToward = this.#directions(words.slice(1), column);
    return bendToward && { bendDegrees, bendToward };
  }

  #directions(words: readonly Span[], column: number): readonly Direction[] | undefined {
    const found: Direction[] = [];
    for (const word of words) {
      const direction = word.text.toLowerCase() as Direction;
      if (!directions.includes(direction)) {
        const meant = nearestWord(direction, directions);
        return this.report(
          'recipe.direction',
          word.column,
          `${quoted(word.text)} is not a direction.`,
          meant === undefined ? `One of: ${directions.join(', ')}.` : `Perhaps “${meant}” is meant.`,
        );
      }
      found.push(direction);
    }
    const place = words[0]?.column ?? column;
    if (found.length === 0) return this.report('recipe.direction', place, 'Expected a direction.', `One of: ${directions.join(', ')}.`);
    if (found.length > 6) return this.report('recipe.direction', place, 'These are too many directions in one.', 'At most six words.');
    const clash = opposites.find(([one, other]) => found.includes(one) && found.includes(other));
    if (clash !== undefined)
      return this.report('recipe.direction', place, `${clash[0]} and ${clash[1]} contradict each other.`, 'Leave one of them out.');
    return found;
  }

  #lock(words: readonly Span[], rest: Span): Line | undefined {
    const first = words[0];
    if (first === undefined) return { kind: 'move', move: { kind: 'lock', last: 2 } };
    const word = first.text.toLowerCase();
    if (word === 'last') {
      const last = this.#number(words[1], rest.column, 'how many bubbles to lock', 2, limits.bubbles);
      if (last === undefined) return undefined;
      if (!Number.isInteger(last))
        return this.report('recipe.number', words[1]?.column ?? rest.column, `${last} bubbles is not a whole number.`);
      return this.#alone(words.slice(2), { kind: 'move', move: { kind: 'lock', last } });
    }
    if (word !== 'to')
      return this.report(
        'recipe.expected',
        first.column,
        'Expected nothing, “last” and a number, or “to” and a joint.',
        'For example: lock, lock last 4, lock to neck',
      );
    const to = this.#name(spanOf(words.slice(1), first.column + 2), 'the name of a joint');
    return to === undefined ? undefined : { kind: 'move', move: { kind: 'lock', to } };
  }

  #join(words: readonly Span[], rest: Span): Line | undefined {
    const first = words[0];
    if (first?.text.toLowerCase() !== 'to')
      return this.report(
        'recipe.expected',
        first?.column ?? rest.column,
        'Expected “to” and the joint of another balloon.',
        'For example: join to neck',
      );
    const to = this.#name(spanOf(words.slice(1), first.column + 2), 'the name of a joint');
    return to === undefined ? undefined : { kind: 'move', move: { kind: 'join', to } };
  }

  #mark(rest: Span): Line | undefined {
    const name = this.#name(trimmed(rest), 'the name of a joint');
    if (name === undefined) return undefined;
    if (name.toLowerCase() === 'knot')
      return this.report('recipe.name', rest.column + 1, 'The knot has its name already.', 'Choose another name, or write “lock to knot”.');
    return { kind: 'move', move: { kind: 'mark', name } };
  }

  #pop(rest: Span): Line | undefined {
    if (rest.text.trim() === '') return { kind: 'move', move: { kind: 'pop' } };
    const label = this.#name(trimmed(rest), 'a label');
    return label === undefined ? undefined : { kind: 'move', move: { kind: 'pop', label } };
  }

  #tuck(rest: Span): Line | undefined {
    const split = /(?<!\S)into(?!\S)/iu.exec(rest.text);
    if (split === null)
      return this.report(
        'recipe.expected',
        rest.column,
        'Expected one label, “into” and another label.',
        'For example: tuck nose into ear',
      );
    const label = this.#name(trimmed({ text: rest.text.slice(0, split.index), column: rest.column }), 'a label');
    const into = this.#name(trimmed({ text: rest.text.slice(split.index + 4), column: rest.column + split.index + 4 }), 'a label');
    return label === undefined || into === undefined ? undefined : { kind: 'move', move: { kind: 'tuck', label, into } };
  }

  #note(rest: Span): Line | undefined {
    const text = tidyName(rest.text);
    if (text === '') return this.report('recipe.expected', rest.column, 'Expected a sentence after “note”.');
    if (text.length > limits.note)
      return this.report('recipe.name', rest.column, 'This note is too long.', `At most ${limits.note} characters.`);
    if (hasUnseen(text))
      return this.report(
        'recipe.name',
        rest.column,
        'There is a character that cannot be seen in this note.',
        'Type it again, without it.',
      );
    return { kind: 'move', move: { kind: 'note', text } };
  }

  #minutes(words: readonly Span[], rest: Span): Line | undefined {
    const minutes = this.#number(words[0], rest.column, 'how many minutes', 0.05, 600);
    return minutes === undefined ? undefined : this.#alone(words.slice(1), { kind: 'minutes', minutes });
  }

  /** `finish with marker: eyes on head, 0.2 minutes` */
  #finish(words: readonly Span[], rest: Span): Line | undefined {
    const colon = rest.text.indexOf(':');
    const tool = words[1]?.text.toLowerCase().replace(/:.*$/u, '') as Finishing['with'] | undefined;
    if (words[0]?.text.toLowerCase() !== 'with' || colon < 0 || tool === undefined || !['marker', 'stick', 'sticker'].includes(tool)) {
      return this.report(
        'recipe.expected',
        rest.column,
        'Expected “with marker:”, “with stick:” or “with sticker:” and what is done.',
        'For example: finish with marker: eyes on head, 0.2 minutes',
      );
    }
    const [first, ...options] = partsOf({ text: rest.text.slice(colon + 1), column: rest.column + colon + 1 });
    const said = first ?? rest;
    const place = /(?<!\S)on(?!\S)/iu.exec(said.text);
    const what = this.#name(
      { text: place === null ? said.text : said.text.slice(0, place.index), column: said.column },
      'what is drawn or stuck',
    );
    const on =
      place === null
        ? undefined
        : this.#name(trimmed({ text: said.text.slice(place.index + 2), column: said.column + place.index + 2 }), 'a label');
    if (what === undefined || (place !== null && on === undefined)) return undefined;
    const minutes = this.#finishMinutes(options);
    if (minutes === undefined) return undefined;
    return { kind: 'finish', finishing: { with: tool, what, ...(on === undefined ? {} : { on }), ...minutes } };
  }

  #finishMinutes(options: readonly Span[]): { readonly minutes?: number } | undefined {
    const option = options[0];
    if (option === undefined) return {};
    const words = wordsOf(option);
    if (options.length > 1 || words.length !== 2 || !/^minutes?$/iu.test(words[1]?.text ?? '')) {
      return this.report(
        'recipe.expected',
        option.column,
        'Expected the minutes it takes, or nothing, after the comma.',
        'For example: , 0.2 minutes',
      );
    }
    const minutes = this.#number(words[0], option.column, 'how many minutes', 0, 60);
    return minutes === undefined ? undefined : { minutes };
  }
}

interface BubbleOptions extends Steering {
  readonly copies?: Copies;
  readonly split?: true;
  readonly soft?: true;
}

/** Told in the vocabulary, or it would not be an option. */
const bubbleOptions: readonly OptionWord[] = [...directions, 'split', 'soft', 'facing', 'bend'];
const opposites: readonly (readonly [Direction, Direction])[] = [
  ['up', 'down'],
  ['left', 'right'],
  ['forward', 'back'],
];
const isCopies = (word: string | undefined): boolean => /^[x×]\d*$/iu.test(word ?? '');
const trimmed = (span: Span): Span => ({ text: span.text.trim(), column: span.column + span.text.length - span.text.trimStart().length });

/** The words as one span again; `column` where they would have been when there are none. */
function spanOf(words: readonly Span[], column: number): Span {
  return { text: words.map((word) => word.text).join(' '), column: words[0]?.column ?? column };
}
