/** One word of the notation, told to whoever writes a recipe. */
export interface RecipeWord {
  readonly word: string;
  /** `line` starts a line; `option` follows a comma on the line of a bubble or balloon; `length` stands where inches may stand. */
  readonly stands: 'line' | 'option' | 'length';
  /** What is put down for it: a whole line, or the part of a line. */
  readonly writes: string;
  /** Its meaning in a few words. */
  readonly says: string;
  /** A whole line with it. */
  readonly example: string;
}
export interface RecipeWordKind {
  readonly name: string;
  readonly words: readonly RecipeWord[];
}

const line = <const W extends string>(word: W, example: string, says: string) =>
  ({ word, stands: 'line', writes: example, says, example }) as const;
const option = <const W extends string>(word: W, before: string, writes: string, says: string) =>
  ({ word, stands: 'option', writes, says, example: `${before}, ${writes}` }) as const;
const length = <const W extends string>(word: W, writes: string, says: string) =>
  ({ word, stands: 'length', writes, says, example: `bubble ${writes} body` }) as const;

const kinds = [
  {
    name: 'Balloon',
    words: [
      line('balloon', 'balloon dog: 260 in body', 'starts a balloon: its name, its size code, its colour role'),
      line('leave', 'leave 3.5', 'so many flat inches get no air'),
      line('inflate', 'inflate 5', 'so many inches are blown up, all else stays flat'),
      line('keep', 'keep 1', 'so many flat inches should still be seen at the end'),
      line('burp', 'burp', 'let a little air out before tying'),
      option('finish', 'balloon eyes: round-5 in eyes', 'finish pearl', 'which finish it has'),
      option('printed', 'balloon eyes: round-5 in eyes', 'printed eyes', 'what is printed on it'),
    ],
  },
  {
    name: 'Bubbles',
    words: [
      line('bubble', 'bubble 3 nose', 'a bubble, closed with a basic twist'),
      line('pinch', 'pinch 1 ear', 'a small one, its two ends turned together'),
      line('fold', 'fold 6 wing', 'a long one folded in half, its ends turned together'),
      line('loop', 'loop 6 ring', 'the same, left open and round'),
      line('tulip', 'tulip 2.5 bloom', 'first bubble: the knot is pushed in and trapped'),
      line('apple', 'apple 2 fruit', 'first bubble: the same, with the knot right through'),
      line('roll', 'roll 4 belly', 'rolled through between two that were just locked'),
      line('flat', 'flat 1 gap', 'so many flat inches without air'),
      option('split', 'pinch 1.5 eyes', 'split', 'divided by a twist into two balls'),
      option('soft', 'bubble 2 belly', 'soft', 'squeezed less full'),
    ],
  },
  {
    name: 'Lengths',
    words: [
      length('rest', 'rest', 'all that is left'),
      length('half', 'half of rest', 'half of what is left at that point'),
      length('of', '1/3 of rest', 'any other part of what is left'),
      length('in', '3 in', 'inches, which are also meant without a word'),
      length('cm', '8 cm', 'centimetres'),
    ],
  },
  {
    name: 'Joints',
    words: [
      line('lock', 'lock', 'the last two bubbles are turned together'),
      line('mark', 'mark neck', 'gives the twist in hand a name'),
      line('join', 'join to neck', 'tied to a marked joint of an earlier balloon'),
      line('tuck', 'tuck nose into ear', 'pushed in between, without a twist'),
      line('pop', 'pop bridge', 'bursts the bubble with that label'),
      line('trim', 'trim', 'what is left is cut off, tied and hidden'),
    ],
  },
  {
    name: 'Again',
    words: [
      option('x', 'bubble 3 leg', 'x 2', 'the same again, as often as said'),
      option('mirrored', 'bubble 3 leg, down left', 'x 2 mirrored', 'every second one on the other side'),
      option('around', 'loop 6 petal, up', 'x 6 around forward', 'all round that direction, as petals are'),
      line('repeat', 'repeat x 3', 'all lines up to “end”, as often as said'),
      line('end', 'end', 'closes the group'),
    ],
  },
  {
    name: 'Directions',
    words: [
      option('up', 'bubble 3 neck', 'up', 'where it points; words in a row add up, as in up up left'),
      option('down', 'bubble 3 leg', 'down', 'to the floor'),
      option('left', 'bubble 3 wing', 'left', 'to the left of the figure itself'),
      option('right', 'bubble 3 wing', 'right', 'to its right'),
      option('forward', 'bubble 3 nose', 'forward', 'to where it looks'),
      option('back', 'bubble 5 body', 'back', 'to where it does not look'),
      option('facing', 'loop 6 ear, up', 'facing forward', 'which way a loop or fold shows its open side'),
      option('bend', 'bubble 7 trunk, forward', 'bend 90 up', 'bent by so many degrees, its ends to that side'),
    ],
  },
  {
    name: 'Finishing',
    words: [
      line('finish', 'finish with marker: eyes on nose', 'what is drawn; or “with sticker”, “with stick”'),
      line('minutes', 'minutes 2.5', 'how long all of it takes'),
      line('note', 'note Hold the nose.', 'a sentence for whoever makes it'),
    ],
  },
] as const satisfies readonly RecipeWordKind[];

type Word = (typeof kinds)[number]['words'][number];
/** The first word of a line. */
export type LineWord = Extract<Word, { readonly stands: 'line' }>['word'];
/** What may follow a comma. */
export type OptionWord = Extract<Word, { readonly stands: 'option' }>['word'];

/**
 * All words of the notation by kind, each with its meaning and a line with it. The reader of lines takes its words from here, so that nothing
 * can be written that is not told, and nothing is told that cannot be written.
 */
export const recipeWords: readonly RecipeWordKind[] = kinds;

const words: readonly Word[] = kinds.flatMap((kind): readonly Word[] => kind.words);
/** First words of lines, in the order in which they are explained. */
export const lineWords: readonly LineWord[] = words.flatMap((entry) => (entry.stands === 'line' ? [entry.word] : []));
