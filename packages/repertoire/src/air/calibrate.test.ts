import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { readRecipe } from '../notation/read-recipe.ts';
import { shippedSizes } from '../sizes/shipped-sizes.ts';
import { isTube, sizeOf, type Tube } from '../sizes/size.ts';
import { airOf, type PieceAir } from './air-of.ts';
import { type Calibration, calibrate, type MakersTest, spreadParts } from './calibrate.ts';
import { poolNormal } from './pool-normal.ts';
import { measurementProblems } from './two-minute-test.ts';
import { defaultWorking, leastTailShare, type Working } from './working.ts';

const tube = (code: string): Tube => {
  const size = sizeOf(code, shippedSizes);
  if (size === undefined || !isTube(size)) throw new Error(code);
  return size;
};
const size = tube('260');
const numbers = ['flat', 'stretch', 'tailPerBubble'] as const;
const near = (from: number, to: number) => fc.double({ min: from, max: to, noNaN: true });
const anyTest: fc.Arbitrary<MakersTest> = fc.record(
  {
    maker: fc.constantFrom('Osprey', 'Larkfield'),
    flatInches: fc.array(near(9, 13), { minLength: 1, maxLength: 5 }),
    fullInches: fc.array(near(45, 70), { minLength: 1, maxLength: 2 }),
    twists: fc.array(
      near(0.5, 5).map((left) => ({ bubbles: 10, tailInches: 6, leftInches: left })),
      { minLength: 1, maxLength: 2 },
    ),
  },
  { requiredKeys: [] },
);
const air = (text: string, working: Working): PieceAir => {
  const read = readRecipe(text);
  const piece = read.ok ? airOf(read.value, { workingOf: () => working }).pieces[0] : undefined;
  if (piece === undefined) throw new Error(text);
  return piece;
};

describe('a worked case, by hand', () => {
  // Variance of the flat length of a 260: 0.5 x 0.5 = 0.25. Two tests of one maker: 10.4 (5 balloons) and 10.8 (1 balloon).
  // Their variances: 0.25 x (0.15 + 0.25 / 5) = 0.05 and 0.25 x (0.15 + 0.25) = 0.1, so precisions 20 and 10.
  // Prior of the maker's middle: 11, variance 0.25 x 0.6 = 0.15, precision 6 2/3.
  const tests: readonly MakersTest[] = [
    { maker: 'Osprey', flatInches: [10.2, 10.3, 10.4, 10.5, 10.6] },
    { maker: 'Osprey', flatInches: [10.8] },
  ];
  test('own tests', () => {
    const { flat } = calibrate(size, 'Osprey', tests).working;
    expect(flat.mean).toBeCloseTo((20 * 10.4 + 10 * 10.8 + (20 / 3) * 11) / (36 + 2 / 3), 12);
    expect(flat.sd ** 2).toBeCloseTo(1 / (36 + 2 / 3) + 0.25 * 0.4, 12);
    expect(flat.parts.own).toBeCloseTo(30 / (36 + 2 / 3), 12);
    expect([flat.parts.others, flat.measured, flat.tests]).toEqual([0, 6, 2]);
  });
  // Another maker: the size's middle has prior precision 1 / (0.25 x 0.3) = 13 1/3 and Osprey's middle with variance
  // 0.25 x 0.3 + 1 / 30 = 0.108333, precision 9.230769; the other maker's middle lies around it with variance 0.075.
  test('a maker without tests of its own learns from the others', () => {
    const { flat } = calibrate(size, 'Larkfield', tests).working;
    const [weight, prior, mean] = [1 / (0.075 + 1 / 30), 40 / 3, (20 * 10.4 + 10 * 10.8) / 30];
    expect(flat.mean).toBeCloseTo((prior * 11 + weight * mean) / (prior + weight), 12);
    expect(flat.sd ** 2).toBeCloseTo(1 / (prior + weight) + 0.075 + 0.25 * 0.4, 12);
    expect(flat.parts).toMatchObject({ own: 0, others: expect.closeTo(weight / (prior + weight), 12) });
    expect(calibrate(size, undefined, tests).working.flat.mean).toBe(flat.mean);
  });
  test('stretch is full length over flat length of the same test; without one, over what is believed of that maker', () => {
    const { stretch } = calibrate(size, 'Osprey', [{ maker: 'Osprey', flatInches: [10, 10], fullInches: [55] }]).working;
    const variance = 0.25 ** 2;
    const [own, prior] = [1 / (variance * 0.4), 1 / (variance * 0.6)];
    expect(stretch.mean).toBeCloseTo((own * 5.5 + prior * 5.4) / (own + prior), 12);
    const alone = calibrate(size, 'Osprey', [{ maker: 'Osprey', fullInches: [55] }]).working.stretch;
    expect(alone.mean).toBeCloseTo((own * (55 / 11) + prior * 5.4) / (own + prior), 12);
  });
  test('capitals and spaces do not make another maker', () => {
    expect(calibrate(size, ' osprey ', tests).working).toEqual(calibrate(size, 'Osprey', tests).working);
  });
});

describe('laws', () => {
  test('no test is the default, exactly, for every tube', () => {
    for (const each of shippedSizes.filter(isTube)) {
      const learned = calibrate(each, 'anybody', []);
      expect(learned.working).toMatchObject(defaultWorking(each));
      for (const number of numbers) expect(learned.working[number].parts).toEqual({ own: 0, others: 0, prior: 1 });
    }
  });
  test('a test more never widens a band, and one of this maker narrows it', () => {
    fc.assert(
      fc.property(fc.array(anyTest, { maxLength: 6 }), anyTest, (tests, more) => {
        const [before, after] = [calibrate(size, 'Osprey', tests), calibrate(size, 'Osprey', [...tests, more])];
        for (const number of numbers) expect(after.working[number].sd).toBeLessThanOrEqual(before.working[number].sd + 1e-12);
        if (more.maker === 'Osprey' && more.flatInches !== undefined) expect(after.working.flat.sd).toBeLessThan(before.working.flat.sd);
      }),
      { seed: 4, numRuns: 300 },
    );
  });
  test('the order of tests does not matter, to the last bit', () => {
    fc.assert(
      fc.property(
        fc
          .array(anyTest, { minLength: 2, maxLength: 7 })
          .chain((tests) => fc.tuple(fc.constant(tests), fc.shuffledSubarray(tests, { minLength: tests.length }))),
        ([tests, shuffled]) => {
          expect(calibrate(size, 'Osprey', shuffled)).toEqual(calibrate(size, 'Osprey', tests));
        },
      ),
      { seed: 5, numRuns: 300 },
    );
  });
  test('parts sum to one, and the mean lies between the default and what was measured', () => {
    fc.assert(
      fc.property(fc.array(anyTest, { minLength: 1, maxLength: 6 }), (tests) => {
        const { flat } = calibrate(size, 'Osprey', tests).working;
        const means = tests.flatMap(({ flatInches }) =>
          flatInches === undefined ? [] : [flatInches.reduce((a, b) => a + b, 0) / flatInches.length],
        );
        expect(flat.parts.own + flat.parts.others + flat.parts.prior).toBeCloseTo(1, 12);
        for (const part of Object.values(flat.parts)) expect(part).toBeGreaterThanOrEqual(-1e-12);
        expect(flat.mean).toBeGreaterThanOrEqual(Math.min(11, ...means) - 1e-9);
        expect(flat.mean).toBeLessThanOrEqual(Math.max(11, ...means) + 1e-9);
      }),
      { seed: 6, numRuns: 300 },
    );
  });
  test('with very many tests the mean is that of the tests, and what is left of the band are bags and balloons', () => {
    const means = (count: number): readonly MakersTest[] =>
      Array.from({ length: count }, (_, index) => ({ maker: 'Osprey', flatInches: [index % 2 === 0 ? 10 : 10.4] }));
    const errors = [10, 100, 10_000].map((count) => Math.abs(calibrate(size, 'Osprey', means(count)).working.flat.mean - 10.2));
    expect(errors[0]).toBeGreaterThan(errors[1] ?? 0);
    expect(errors[2]).toBeLessThan(1e-4);
    const { flat } = calibrate(size, 'Osprey', means(10_000)).working;
    expect(flat.sd).toBeCloseTo(0.5 * Math.sqrt(spreadParts.bag + spreadParts.balloon), 4);
    expect(flat.parts.own).toBeGreaterThan(0.999);
  });
  test('the parts of the spread sum to one', () => {
    expect(Object.values(spreadParts).reduce((sum, part) => sum + part, 0)).toBeCloseTo(1, 12);
  });
});

describe('pooling', () => {
  test('nothing known at all is said so, not divided by', () => {
    expect(poolNormal({ mean: 3, variance: Number.POSITIVE_INFINITY }, 1, [])).toMatchObject({
      mean: 3,
      variance: Number.POSITIVE_INFINITY,
    });
  });
  test('makers that do not differ are one maker', () => {
    const observed = [
      { group: 'a', value: 2, variance: 1 },
      { group: 'b', value: 5, variance: 0.5 },
    ];
    const [a, b] = ['a', 'b'].map((group) => poolNormal({ mean: 0, variance: 4 }, 0, observed, group));
    expect(a?.mean).toBeCloseTo((2 + 10) / 3.25, 12);
    expect(b?.mean).toBeCloseTo(a?.mean ?? 0, 12);
  });
});

describe('what a test changes in a figure', () => {
  const text = 'balloon a: 260 in b\nleave 4\nbubble 10';
  const learned = (tests: readonly MakersTest[]): Calibration['working'] => calibrate(size, 'Osprey', tests).working;
  const short: MakersTest = {
    maker: 'Osprey',
    flatInches: [10.2, 10.3, 10.2],
    fullInches: [52],
    twists: [{ bubbles: 10, tailInches: 6, leftInches: 1.8 }],
  };
  test('how far it is blown up, and the band of what is left', () => {
    const after = learned([short]);
    expect(air(text, after).inflatedInches).toBeCloseTo((after.flat.mean - 4) * after.stretch.mean, 10);
    const width = (working: Working): number => {
      const { low, high } = air(text, working).leftInflatedInches;
      return high - low;
    };
    expect(width(learned([short, short, short]))).toBeLessThan(width(after));
    expect(width(after)).toBeLessThan(width(defaultWorking(size)));
  });
  test('the tail that bubbles need moves with what they ate in the tests', () => {
    const after = learned([short, short]);
    expect(after.tailPerBubble.mean).toBeGreaterThan(0.36);
    const needed = air('balloon a: 260 in b\nleave 5\nbubble 2, x 10', after).tailNeededInches;
    expect(needed.mid).toBeCloseTo(10 * after.tailPerBubble.mean, 10);
    expect(needed.low).toBeCloseTo(10 * leastTailShare * after.tailPerBubble.mean, 10);
  });
});

describe('measurements', () => {
  const paths = (problems: ReturnType<typeof measurementProblems>) => problems.map(({ path }) => path);
  test('what cannot be is refused where it stands', () => {
    const problems = measurementProblems(size, {
      flatInches: [28, -1],
      fullInches: [Number.NaN],
      twists: [
        { bubbles: 0, tailInches: 6, leftInches: 7 },
        { bubbles: 10, tailInches: 6, leftInches: 7 },
        { bubbles: 10, tailInches: -6, leftInches: -7 },
      ],
    });
    expect(paths(problems)).toEqual([
      ['flatInches', 0],
      ['flatInches', 1],
      ['fullInches', 0],
      ['twists', 0, 'bubbles'],
      ['twists', 1, 'leftInches'],
      ['twists', 2, 'tailInches'],
      ['twists', 2, 'leftInches'],
    ]);
    expect(problems[5 - 1]?.sentence).toBe('More tail is left, 7 in, than there was, 6 in.');
  });
  test('a full balloon is longer than a flat one', () => {
    expect(measurementProblems(size, { flatInches: [11], fullInches: [10.5] })[0]?.sentence).toBe(
      'A full length of 10.5 in is no longer than a flat balloon of the same test, 11 in.',
    );
  });
  test('nothing measured is no test', () => {
    expect(measurementProblems(size, {})[0]?.sentence).toBe('Nothing was measured.');
    expect(measurementProblems(size, { fullInches: [58] })).toEqual([]);
  });
});

test('measurements are said on the ruler that is asked for', () => {
  expect(measurementProblems(size, { flatInches: [30 / 2.54] }, 'cm')).toEqual([]);
  expect(measurementProblems(size, { flatInches: [60 / 2.54] }, 'cm')[0]).toMatchObject({
    sentence: 'A flat length of 60 cm cannot be right; expected 8.38 to 55.88 cm.',
    todo: 'Measure again, in centimetres.',
  });
});
