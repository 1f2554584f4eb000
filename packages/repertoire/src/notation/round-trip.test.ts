import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { type BubbleMove, bubbleKinds, type Direction, type FlatMove, type Move, type Piece, type Recipe } from '../recipe.ts';
import { formatRecipe } from './format-recipe.ts';
import { readRecipe } from './read-recipe.ts';
import { lineWords } from './vocabulary.ts';
import { writeRecipe } from './write-recipe.ts';

const seeded = { seed: 20260714, numRuns: 400 };

const word = fc.constantFrom(
  'ear',
  'front leg',
  'Löwe',
  '耳',
  'x',
  '2',
  'in hand',
  'cm',
  'rest',
  'of rest',
  'Ωmega-3',
  "bird's",
  '🎈',
  'mirrored',
);
const signs: readonly (readonly Direction[])[] = [['up'], ['down', 'down', 'left'], ['forward', 'up', 'right'], ['back']];
const words = fc.constantFrom(...signs);
const optional = <T>(arbitrary: fc.Arbitrary<T>) => fc.option(arbitrary, { nil: undefined, freq: 2 });
/** Keys whose value is undefined left out, as the model wants it. */
const present = <T extends object>(value: T): T =>
  Object.fromEntries(Object.entries(value).filter(([, field]) => field !== undefined)) as T;
const inches = fc.oneof(fc.integer({ min: 1, max: 99 }), fc.double({ min: 0.05, max: 99, noNaN: true }));
const length = fc.oneof(
  inches,
  fc
    .tuple(fc.integer({ min: 1, max: 9 }), fc.integer({ min: 0, max: 9 }))
    .map(([part, more]) => (more === 0 ? { part: 1, of: 1 } : { part, of: part + more })),
);
const steering = {
  aim: optional(words),
  facing: optional(words),
  bendDegrees: optional(fc.integer({ min: 0, max: 720 })),
  bendToward: optional(words),
};
const plainKinds = bubbleKinds.filter((kind) => kind !== 'tulip' && kind !== 'apple' && kind !== 'roll');
const bubble: fc.Arbitrary<BubbleMove | FlatMove> = fc
  .record({
    kind: fc.constantFrom(...plainKinds, 'flat' as const),
    length,
    label: optional(word),
    split: optional(fc.constant(true as const)),
    soft: optional(fc.constant(true as const)),
    ...steering,
  })
  .map(({ split, soft, bendToward, ...rest }) => {
    const bent = rest.bendDegrees === undefined ? {} : { bendToward };
    return present({ ...rest, ...bent, ...(rest.kind === 'flat' ? {} : { split, soft }) }) as BubbleMove | FlatMove;
  });
const note: fc.Arbitrary<Move> = fc.constantFrom('Hold the nose, then let go.', 'ä: ö').map((text) => ({ kind: 'note', text }));
const copies = {
  times: fc.integer({ min: 1, max: 4 }),
  mirrored: optional(fc.constant(true as const)),
  around: optional(fc.constantFrom<Direction>('up', 'forward', 'left')),
};
const { moves } = fc.letrec<{ moves: Move[]; move: Move; group: Move }>((tie) => ({
  moves: fc.array(tie('move'), { minLength: 1, maxLength: 5 }),
  move: fc.oneof({ maxDepth: 3, withCrossShrink: true }, bubble, note, tie('group')),
  group: fc
    .record({ ...copies, moves: fc.array(tie('move'), { minLength: 1, maxLength: 4 }) })
    .map((group) => present({ kind: 'repeat' as const, ...group }) as Move),
}));
/** Run with marks, locks, pops and tucks that can be made: `first` and `second` are bubbles, `joint` the twist between them. */
const run = (index: number) =>
  fc
    .tuple(fc.array(bubble, { maxLength: 3 }), moves, fc.boolean(), fc.boolean())
    .map(([before, middle, linked, trim]): Move[] => [
      ...(linked
        ? ([
            { kind: 'tulip', length: 2.5, label: 'first' },
            { kind: 'mark', name: `joint ${index}` },
            ...before,
            { kind: 'bubble', length: 2, label: 'second' },
            { kind: 'bubble', length: 2, label: 'second' },
            { kind: 'lock', last: 2 },
            { kind: 'roll', length: 1 },
            { kind: 'bubble', length: 1 },
            { kind: 'lock', to: `joint ${index}` },
            { kind: 'tuck', label: 'first', into: 'second' },
            { kind: 'pop', label: 'second' },
          ] as const)
        : before),
      ...middle,
      ...(trim ? [{ kind: 'trim' } as const] : []),
    ]);
const piece = (index: number): fc.Arbitrary<Piece> =>
  fc
    .record({
      name: word.map((text) => `${text} ${index}`),
      size: fc.constantFrom('260', '160', '350'),
      role: word,
      finish: optional(word),
      print: optional(word),
      count: fc.constant(1),
      air: fc.constantFrom({}, { tailInches: 2.25 }, { inflateInches: 12 }),
      keepInches: optional(fc.constantFrom(0, 1.5)),
      burped: optional(fc.constant(true as const)),
      run: run(index),
    })
    .map(({ air, ...rest }) => present({ ...rest, ...air }) as Piece);
const recipe: fc.Arbitrary<Recipe> = fc
  .record({
    pieces: fc.integer({ min: 0, max: 3 }).chain((count) => fc.tuple(...Array.from({ length: count }, (_, index) => piece(index)))),
    finishing: fc.array(
      fc
        .record({
          with: fc.constantFrom('marker' as const, 'stick' as const, 'sticker' as const),
          what: word,
          minutes: optional(fc.constantFrom(0, 0.25, 2)),
        })
        .map(present),
      { maxLength: 2 },
    ),
    minutes: optional(fc.double({ min: 0.05, max: 600, noNaN: true })),
  })
  .map((value) => present(value) as Recipe);

describe('reading, writing and formatting', () => {
  test('reading what was written gives the same model', () => {
    fc.assert(
      fc.property(recipe, (model) => {
        expect(readRecipe(writeRecipe(model))).toEqual({ ok: true, value: model });
      }),
      seeded,
    );
  });
  test('what was written is in its plain form, and formatting is idempotent and keeps the meaning', () => {
    fc.assert(
      fc.property(recipe, fc.array(fc.tuple(fc.nat(40), fc.constantFrom('', '# why', '   ', '#'))), (model, inserted) => {
        const text = writeRecipe(model);
        expect(formatRecipe(text)).toEqual({ ok: true, value: text });
        const lines = text.split('\n');
        for (const [at, line] of inserted) lines.splice(at % (lines.length + 1), 0, line);
        const untidy = lines.map((line) => `\t ${line}  `).join('\r\n');
        const once = formatRecipe(untidy);
        if (!once.ok) throw new Error(JSON.stringify(once.error));
        expect(formatRecipe(once.value)).toEqual(once);
        expect(readRecipe(once.value)).toEqual(readRecipe(text));
        expect(once.value.match(/#/gu)?.length ?? 0).toBe(untidy.match(/#/gu)?.length ?? 0);
      }),
      seeded,
    );
  });
});

describe('any text', () => {
  const token = fc.oneof(
    fc.constantFrom(...lineWords),
    fc.constantFrom(
      'x',
      '2',
      '3',
      '0',
      '-1',
      'rest',
      '1/2',
      'of',
      'last',
      'to',
      'into',
      'on',
      'in',
      '260',
      'a',
      'b',
      ':',
      ',',
      '#',
      'up',
      'left',
      'around',
      'mirrored',
      'split',
      'knot',
      'with',
      'marker:',
    ),
    fc.string({ unit: 'grapheme', maxLength: 6 }),
  );
  const line = fc.array(token, { maxLength: 9 }).map((tokens) => tokens.join(' '));
  const text = fc.oneof(
    fc.string({ unit: 'binary', maxLength: 300 }),
    fc.array(line, { maxLength: 25 }).map((lines) => lines.join('\n')),
    fc.array(line, { maxLength: 25 }).map((lines) => `balloon a: 260 in body\n${lines.join('\n')}`),
  );
  test('is read or refused with a place for every problem; whatever is read survives the round trip', () => {
    fc.assert(
      fc.property(text, (source) => {
        const result = readRecipe(source);
        if (result.ok) {
          expect(readRecipe(writeRecipe(result.value))).toEqual(result);
          expect(formatRecipe(source).ok).toBe(true);
          return;
        }
        expect(result.error.length).toBeGreaterThan(0);
        const lines = source.split(/\r\n|\r|\n/u);
        for (const problem of result.error) {
          expect(problem.sentence).toMatch(/[.?!]$/u);
          expect(problem.line).toBeGreaterThanOrEqual(1);
          expect(problem.line).toBeLessThanOrEqual(lines.length);
          expect(problem.column).toBeGreaterThanOrEqual(1);
          expect(problem.column).toBeLessThanOrEqual((lines[(problem.line ?? 1) - 1]?.length ?? 0) + 2);
        }
        expect(formatRecipe(source).ok).toBe(result.error.every((problem) => problem.code === 'recipe.size'));
      }),
      { ...seeded, numRuns: 4000 },
    );
  });
  test('long and deep texts are refused quickly', () => {
    const start = performance.now();
    for (const source of [
      'repeat x 100\n'.repeat(15_000),
      'balloon a: 260 in b\n'.repeat(9000),
      `${'a'.repeat(199_990)}`,
      '#'.repeat(200_000),
      ' '.repeat(200_000),
      ', '.repeat(99_000),
      `balloon ${'x '.repeat(90_000)}`,
    ]) {
      readRecipe(source);
      formatRecipe(source);
    }
    expect(performance.now() - start).toBeLessThan(5000);
  });
});
