import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { readRecipe } from '../notation/read-recipe.ts';
import { unfold } from '../notation/unfold.ts';
import { type AirOptions, airOf, inchesOf, volumeShare } from './air-of.ts';
import { minutesOf } from './minutes-of.ts';
import { rescale } from './rescale.ts';
import { bubbleCubicInches, bubbleOfTubeInches, tubeInches } from './volume.ts';

const read = (text: string) => {
  const result = readRecipe(text);
  if (!result.ok) throw new Error(JSON.stringify(result.error));
  return result.value;
};
const air = (text: string, options: AirOptions = {}) => {
  const piece = airOf(read(text), options).pieces[0];
  if (piece === undefined) throw new Error('no piece');
  return piece;
};

describe('one bubble', () => {
  test('volume and tube inches go on without a jump where a bubble becomes a ball', () => {
    for (const radius of [0.5, 1, 1.5, 3]) {
      expect(bubbleCubicInches(2 * radius, radius)).toBeCloseTo((4 / 3) * Math.PI * radius ** 3, 12);
      expect(bubbleCubicInches(2 * radius - 1e-9, radius)).toBeCloseTo(bubbleCubicInches(2 * radius, radius), 6);
      expect(tubeInches(2 * radius - 1e-9, radius)).toBeCloseTo(2 * radius, 7);
    }
    expect(bubbleCubicInches(60, 1)).toBeCloseTo(186.4011641, 7);
    expect(tubeInches(3, 1)).toBe(3);
    expect(tubeInches(1, 1)).toBeCloseTo(1 / 3, 15);
  });
  test('tube inches grow with the bubble and can be taken back', () => {
    fc.assert(
      fc.property(
        fc.double({ min: 0.05, max: 60, noNaN: true }),
        fc.double({ min: 0.05, max: 5, noNaN: true }),
        fc.double({ min: 0.4, max: 3, noNaN: true }),
        (length, more, radius) => {
          expect(tubeInches(length + more, radius)).toBeGreaterThan(tubeInches(length, radius));
          expect(tubeInches(length, radius)).toBeLessThanOrEqual(length + 1e-12);
          expect(bubbleOfTubeInches(tubeInches(length, radius), radius)).toBeCloseTo(length, 8);
        },
      ),
      { seed: 3, numRuns: 500 },
    );
  });
});

describe('a piece on two rulers', () => {
  test('inflated at the start = (flat - tail) x stretch; flat left = tail - 0.30 a bubble', () => {
    const piece = air('balloon a: 260 in b\nleave 4\nbubble 10, x 3');
    expect(piece.inflatedInches).toBeCloseTo(37.8, 10);
    expect(piece.leftInflatedInches.mid).toBeCloseTo(7.8, 10);
    expect(piece.leftFlatInches.mid).toBeCloseTo(4 - 0.9, 10);
    expect(piece.litres).toBeCloseTo(bubbleCubicInches(37.8, 1) * 0.016387064, 10);
    expect(piece).toMatchObject({ verdict: 'fits', tailFrom: 'recipe', bubbles: 3, changes: [], cautions: [] });
  });
  test('the verdict goes from fits over tight to does not fit as a bubble grows, and the band says how sure that is', () => {
    const verdicts = [30, 39, 43].map((inches) => air(`balloon a: 260 in b\nleave 4\nbubble ${inches}`).verdict);
    expect(verdicts).toEqual(['fits', 'tight', 'does not fit']);
    expect(air('balloon a: 260 in b\nleave 4\nbubble 37').verdictBand).toEqual({ short: 'tight', long: 'fits' });
  });
  test('what is all that is left is less in a shorter balloon, and fits it', () => {
    const sword = air('balloon a: 260 in b\nleave 2\nbubble 4\nfold 8, x 2\nbubble rest');
    expect(sword).toMatchObject({ verdict: 'fits', verdictBand: { short: 'fits', long: 'fits' } });
    expect(sword.leftInflatedInches.low).toBeCloseTo(0, 9);
    const half = air('balloon a: 260 in b\nleave 2\nbubble 20\nbubble half of rest');
    expect(half.leftInflatedInches.low).toBeLessThan(half.leftInflatedInches.mid);
    expect(air('balloon a: 260 in b\nleave 1\nbubble 55.5\nbubble rest').verdictBand.short).toBe('does not fit');
  });
  test('a short tail is a caution, and tight at worst', () => {
    expect(air('balloon a: 260 in b\nleave 2.5\nbubble 2, x 10')).toMatchObject({
      verdict: 'fits',
      cautions: ['The tail of 2.5 in is a little short for 10 bubbles; usual is 3 in.'],
    });
    expect(air('balloon a: 260 in b\nleave 1\nbubble 2, x 10').verdict).toBe('tight');
  });
  test('where it runs out and what to do: split, size, tail', () => {
    const long = air('balloon a: 260 in b\nbubble 20 head\nbubble 20 neck\nbubble 30 body');
    expect(long.runsOutAt).toEqual({ bubble: 2, label: 'body' });
    expect(long.changes.map((change) => change.kind)).toEqual(['split', 'smaller']);
    expect(long.changes[0]).toMatchObject({ afterBubble: 2, label: 'neck' });
    const wide = air('balloon a: 321 in b\nbubble 40');
    expect(wide.changes[0]).toMatchObject({ kind: 'size', size: '350' });
    expect(air('balloon a: 260 in b\nleave 6\nbubble 40').changes[0]).toMatchObject({ kind: 'less tail' });
    const hopeless = air('balloon a: 260 in b\nbubble 99\nbubble 60');
    expect(hopeless.changes).toEqual([{ kind: 'smaller', share: 0.35, sentence: 'Make every bubble 35 % of its length.' }]);
    expect(hopeless.cautions.join(' ')).toContain('twist them much shorter or softer.');
  });
  test('every change that is offered works', () => {
    const seen = new Set<string>();
    const run = fc.array(fc.tuple(fc.constantFrom('bubble', 'fold', 'pinch'), fc.integer({ min: 1, max: 25 })), {
      minLength: 2,
      maxLength: 12,
    });
    fc.assert(
      fc.property(run, fc.constantFrom('260', '321', '160'), fc.constantFrom('', 'leave 5\n'), (moves, size, start) => {
        const text = (share: number, upTo: number, code: string = size, first: string = start) =>
          `balloon a: ${code} in b\n${first}${moves
            .slice(0, upTo)
            .map(([kind, inches]) => `${kind} ${(inches * share).toFixed(4)}`)
            .join('\n')}`;
        for (const change of air(text(1, moves.length)).changes) {
          seen.add(change.kind);
          const changed = {
            size: () => text(1, moves.length, change.kind === 'size' ? change.size : '', ''),
            smaller: () => text(change.kind === 'smaller' ? change.share : 1, moves.length, size, ''),
            split: () => text(1, change.kind === 'split' ? change.afterBubble : 0, size, ''),
            'less tail': () => text(1, moves.length, size, `leave ${change.kind === 'less tail' ? change.tailInches : 0}\n`),
          }[change.kind]();
          expect(air(changed).verdict, `${change.kind}: ${changed}`).not.toBe('does not fit');
        }
      }),
      { seed: 11, numRuns: 500 },
    );
    expect([...seen].sort()).toEqual(['less tail', 'size', 'smaller', 'split']);
  });
  test('the tail is worked out: enough for the twists, and no more air than is used', () => {
    const few = air('balloon a: 260 in b\nbubble 10, x 2');
    expect(few.inflatedInches).toBeCloseTo(23.5, 10);
    const many = air('balloon a: 260 in b\nbubble 2, x 20');
    expect(many.tailInches).toBeCloseTo(6, 10);
    expect(few.tailFrom).toBe('worked out');
  });
  test('rest and parts of it use up what is there', () => {
    const piece = air('balloon a: 260 in b\nleave 1\nbubble 4\nbubble half of rest\nbubble rest');
    expect(piece.inches).toEqual([4, 25, 25]);
    expect(piece.leftInflatedInches.mid).toBeCloseTo(0, 10);
    expect(air('balloon a: 260 in b\ninflate 2.8\ntulip 2.8\nflat rest stem').inches[1]).toBeCloseTo(11 - 2.8 / 5.4 - 0.3, 10);
  });
  test('inches of all bubbles, copies and halves alike', () => {
    const recipe = read('balloon a: 260 in b, x 2\npinch 1.5, split\nbubble 3\nballoon c: round-5 in d\nbubble 4, split');
    expect(inchesOf(recipe, unfold(recipe)).map((inches) => Number(inches.toFixed(4)))).toEqual([
      0.75, 0.75, 3, 0.75, 0.75, 3, 3.1748, 3.1748,
    ]);
  });
  test('pump strokes and all copies', () => {
    const { litres, strokes, pieces } = airOf(read('balloon a: round-5 in b, x 3\nbubble 4'), { litresPerStroke: 0.25 });
    expect(litres).toBeCloseTo(3 * (pieces[0]?.litres ?? 0), 12);
    expect(strokes).toBeCloseTo(litres / 0.25, 12);
  });
  test('a round wider than it can be', () => {
    expect(air('balloon a: round-5 in b\nbubble 6 head')).toMatchObject({
      verdict: 'does not fit',
      changes: [{ kind: 'size', size: 'round-9' }],
    });
  });
  test('the exact volume check: one bubble of all the air holds all the air', () => {
    expect(volumeShare(air('balloon a: 260 in b\ninflate 30\nbubble 30'))).toBeCloseTo(1, 12);
    expect(volumeShare(air('balloon a: 260 in b\ninflate 30\nbubble 1, x 30'))).toBeCloseTo(30 / 6 / (30 - 2 / 3), 12);
  });
  test('no text makes a number that is not one', () => {
    fc.assert(
      fc.property(
        fc.array(fc.tuple(fc.constantFrom('bubble', 'pinch', 'fold', 'flat'), fc.constantFrom('0.05', '2', '60', 'rest', '1/3 of rest')), {
          maxLength: 12,
        }),
        fc.constantFrom('', 'leave 0\n', 'leave 50\n', 'inflate 90\n', 'keep 30\n'),
        fc.constantFrom('130', '260', '646', 'round-5'),
        (moves, start, size) => {
          const run = size === 'round-5' ? 'bubble 3' : moves.map(([kind, length]) => `${kind} ${length}`).join('\n');
          const piece = air(`balloon a: ${size} in b\n${start}${run}`);
          const all = [
            piece.inflatedInches,
            piece.tailInches,
            piece.litres,
            piece.leftInflatedInches.low,
            piece.leftFlatInches.high,
            ...piece.inches,
          ];
          expect(all.every((value) => Number.isFinite(value))).toBe(true);
          expect(piece.inches.every((inches) => inches > 0)).toBe(true);
        },
      ),
      { seed: 5, numRuns: 400 },
    );
  });
});

describe('rescaling and minutes', () => {
  test('half the diameter, half of every bubble', () => {
    const small = rescale(
      read('balloon a: 260 in b\nleave 3\nbubble 3\nrepeat x 2\nfold 5\nend\nbubble rest\nballoon e: round-5 in e'),
      '260',
      '160',
    );
    expect(small).toMatchObject({
      ok: true,
      value: {
        pieces: [
          { size: '160', run: [{ length: 1.5 }, { moves: [{ length: 2.5 }] }, { length: { part: 1, of: 1 } }] },
          { size: 'round-5' },
        ],
      },
    });
    expect(small.ok && 'tailInches' in (small.value.pieces[0] ?? {})).toBe(false);
    expect(rescale(read(''), '260', 'round-5').ok).toBe(false);
    expect(rescale(read(''), '260', '999').ok).toBe(false);
  });
  test('written minutes win; else more bubbles take longer', () => {
    expect(minutesOf(read('minutes 2\nballoon a: 260 in b'))).toEqual({ minutes: 2, from: 'recipe' });
    const estimate = (count: number) => minutesOf(read(`balloon a: 260 in b\nbubble 1, x ${count}`)).minutes;
    expect(estimate(20)).toBeGreaterThan(2 * estimate(10) - 0.15);
    expect(minutesOf(read('')).minutes).toBe(0);
  });
});
