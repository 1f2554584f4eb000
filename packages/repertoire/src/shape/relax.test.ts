import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { type Body, noLeanings } from './body.ts';
import { closest } from './closest.ts';
import { fitOf } from './measure.ts';
import { NeighbourSearch } from './neighbours.ts';
import { relax } from './relax.ts';

/** Separate bubbles, each between two points of its own. */
function bubbles(places: readonly (readonly [number, number, number])[], length: number, radius: number): Body {
  const count = places.length;
  const numbers = Int32Array.from({ length: count }, (_, i) => i);
  return {
    points: Float64Array.from(places.flatMap(([x, y, z], i) => [x, y, z, x + (i % 2 ? length : 0), y + (i % 2 ? 0 : length), z])),
    rods: {
      a: numbers.map((i) => 2 * i),
      b: numbers.map((i) => 2 * i + 1),
      length: new Float64Array(count).fill(length),
      stiffness: new Float64Array(count).fill(1),
    },
    capsules: {
      a: numbers.map((i) => 2 * i),
      b: numbers.map((i) => 2 * i + 1),
      radius: new Float64Array(count).fill(radius),
      length: new Float64Array(count).fill(length),
      bubble: numbers,
      startJoint: numbers.map((i) => 2 * i),
      endJoint: numbers.map((i) => 2 * i + 1),
      toStart: new Float64Array(count),
      toEnd: new Float64Array(count),
      squeeze: new Float64Array(count).fill(4 * radius),
      bundle: new Int32Array(count).fill(-1),
    },
    leanings: noLeanings,
  };
}

const place = fc.tuple(
  fc.double({ min: -4, max: 4, noNaN: true }),
  fc.double({ min: -4, max: 4, noNaN: true }),
  fc.double({ min: -4, max: 4, noNaN: true }),
);

describe('relax', () => {
  test('bubbles thrown together come apart and keep their lengths', () => {
    fc.assert(
      fc.property(fc.array(place, { minLength: 1, maxLength: 14 }), (places) => {
        const body = bubbles(places, 2, 0.4);
        relax(body, { sweeps: 400 });
        const { lengthError, penetration } = fitOf(body);
        expect(lengthError).toBeLessThan(0.005);
        expect(penetration).toBeLessThan(0.05);
      }),
      { numRuns: 60, seed: 7 },
    );
  });
  test('the same body gives the same bits', () => {
    const places = Array.from({ length: 12 }, (_, i): [number, number, number] => [i % 3, (i * 7) % 4, i / 5]);
    const [one, other] = [bubbles(places, 2, 0.5), bubbles(places, 2, 0.5)];
    relax(one, { sweeps: 150 });
    relax(other, { sweeps: 150 });
    expect(one.points).toEqual(other.points);
  });
  test('no pair is missed that is within the slack of touching, and pairs come in the order of their numbers', () => {
    fc.assert(
      fc.property(fc.array(place, { minLength: 2, maxLength: 30 }), (places) => {
        const body = bubbles(places, 1.5, 0.3);
        const { free, freeCount } = new NeighbourSearch(body).find(0.5);
        const found = new Set(Array.from({ length: freeCount }, (_, k) => `${free[2 * k]} ${free[2 * k + 1]}`));
        expect(found.size).toBe(freeCount);
        const keys = [...found].map((pair) => pair.split(' ').reduce((sum, one) => 100 * sum + Number(one), 0));
        expect(keys).toEqual(keys.toSorted((one, other) => one - other));
        const into = new Float64Array(5);
        const wanted = new Set<string>();
        for (let i = 0; i < places.length; i++)
          for (let j = i + 1; j < places.length; j++)
            if (Math.sqrt(closest(body, i, j, Float64Array.of(0, 1, 0, 1), 0, into)) < 0.6 + 0.5 - 1e-9) wanted.add(`${i} ${j}`);
        for (const pair of wanted) expect(found).toContain(pair);
      }),
      { numRuns: 60, seed: 3 },
    );
  });
});
