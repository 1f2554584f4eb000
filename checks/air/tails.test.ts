/**
 * Tails and lengths that teachers print with their figures: common practice, no published source. The flat length of 11 in was itself taken
 * from the pair of dogs (23 cm flat and 20 cm inflated), so that figure is no independent check of it; the seated bear is.
 */
import { type AirOptions, airOf, type PieceAir, readRecipe } from '@twistwright/repertoire';
import { describe, expect, test } from 'vitest';

function air(text: string, options: AirOptions = {}): PieceAir {
  const read = readRecipe(text);
  if (!read.ok) throw new Error(JSON.stringify(read.error));
  const piece = airOf(read.value, options).pieces[0];
  if (piece === undefined) throw new Error('no piece');
  return piece;
}

/** 14 bubbles, tail 10 to 11 cm, nothing left at the end; head 3.1, ear, 2.4, ear, 3.1, and so on. */
const bear = (tailInches: number) => `balloon bear: 260 in body
leave ${tailInches}
bubble 3.1
pinch 1.2
bubble 2.4
pinch 1.2
bubble 3.1
lock last 5
bubble 4.7, x 2
lock
bubble 2.8
bubble 1.2, x 2
bubble 2.8
lock last 4
fold 3.5, soft
bubble 3.5
bubble 0.8`;

describe('the seated bear', () => {
  const piece = air(bear(4.13));
  test('has 14 bubbles that sum to 36 in of which the start holds 37', () => {
    expect(piece.bubbles).toBe(14);
    expect(piece.inches.reduce((sum, inches) => sum + inches, 0)).toBeCloseTo(36.2, 1);
    expect(piece.inflatedInches).toBeGreaterThan(36);
    expect(piece.inflatedInches).toBeLessThan(38);
  });
  test('needs the tail that is printed, 10 to 11 cm, and fits', () => {
    expect(piece.tailNeededInches.mid).toBeGreaterThan(10 / 2.54);
    expect(piece.tailNeededInches.mid).toBeLessThan(11 / 2.54);
    expect(piece.verdict).toBe('fits');
  });
  test('ends with next to nothing: no flat rubber, under 1.5 in by the sum of lengths, under 5 in when its small bubbles count as balls', () => {
    expect(Math.abs(piece.leftFlatInches.mid)).toBeLessThan(0.3);
    expect(Math.abs(piece.inflatedInches - piece.inches.reduce((sum, inches) => sum + inches, 0))).toBeLessThan(1.5);
    expect(Math.abs(piece.leftInflatedInches.mid)).toBeLessThan(5);
  });
  test('does not fit with 2 in more of every limb', () => {
    expect(air(bear(4.13).replaceAll('2.8', '6').replaceAll('4.7', '6.7')).verdict).toBe('does not fit');
  });
});

describe('the pair of dogs: thirty bubbles', () => {
  /** Each of two dogs: tail, four small feet and legs twice, body, neck, three of the head, nose. */
  const dogs = 'balloon dogs: 260 in body\nleave 9.06\nbubble 1, x 30';
  const piece = air(dogs);
  test('23 cm flat leave 20 cm to blow up; the model says 8 to 11 in', () => {
    expect(piece.inflatedInches).toBeGreaterThan(8);
    expect(piece.inflatedInches).toBeLessThan(11);
  });
  test('needs the tail that is printed, 9.1 in, within 5 %', () => expect(piece.tailNeededInches.mid / 9.06).toBeCloseTo(1, 1));
  test('sums to three times its start, and is still no more than tight, because little bubbles are balls', () => {
    expect(30 / piece.inflatedInches).toBeGreaterThan(2.5);
    expect(piece.verdict).not.toBe('does not fit');
    expect(piece.bubbleLitres).toBeLessThan(piece.litres);
  });
});

describe('the spread of practice', () => {
  /** Tail over bubbles of figures whose pages give both, in flat inches; the monkey keeps a tail that is seen. */
  const printed = [
    ['bear', 4.13, 14],
    ['pair of dogs', 9.06, 30],
    ['poodle', 4.75, 17],
    ['dog, four fingers', 3.1, 10],
    ['small dog', 1.6, 10],
    ['giraffe', 2, 12],
    ['monkey', 6.5, 12],
  ] as const;
  test.each(printed)('%s lies in the band of the model', (_name, tail, bubbles) => {
    const { tailNeededInches } = air(`balloon a: 260 in b\nbubble 1, x ${bubbles}`);
    expect(tail).toBeGreaterThanOrEqual(tailNeededInches.low - 0.01);
    expect(tail).toBeLessThanOrEqual(tailNeededInches.high + 0.03);
  });
  test('one flat inch is about 5.4 inflated ones', () => {
    const [less, more] = [air('balloon a: 260 in b\nleave 4\nbubble 3'), air('balloon a: 260 in b\nleave 5\nbubble 3')];
    expect(less.inflatedInches - more.inflatedInches).toBeCloseTo(5.4, 10);
  });
});
