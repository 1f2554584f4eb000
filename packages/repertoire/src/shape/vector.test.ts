import { describe, expect, test } from 'vitest';
import { across, cross, dot, rotated, sizeOfVector, turned, unit } from './vector.ts';

describe('turned', () => {
  test('sine and cosine agree with the engine', () => {
    for (let degrees = -800; degrees <= 800; degrees += 7.3) {
      expect(turned(degrees).sine).toBeCloseTo(Math.sin((degrees * Math.PI) / 180), 11);
      expect(turned(degrees).cosine).toBeCloseTo(Math.cos((degrees * Math.PI) / 180), 11);
    }
  });
  test('quarter turns are exact', () =>
    expect([turned(90), turned(180)]).toEqual([
      { sine: 1, cosine: -0 },
      { sine: -0, cosine: -1 },
    ]));
});

describe('directions', () => {
  test('a quarter turn about up takes forward to the left', () => {
    const [x, y, z] = rotated([1, 0, 0], [0, 1, 0], 90);
    expect([x, y, z].map((value) => Math.round(value * 1e9) / 1e9 + 0)).toEqual([0, 0, -1]);
  });
  test('a turn keeps length and angle to its axis', () => {
    const axis = unit([1, 2, -0.5]) ?? [1, 0, 0];
    const vector = rotated([0.3, -2, 1], axis, 123.4);
    expect(sizeOfVector(vector)).toBeCloseTo(sizeOfVector([0.3, -2, 1]), 10);
    expect(dot(vector, axis)).toBeCloseTo(dot([0.3, -2, 1], axis), 10);
  });
  test('the part across an axis is square to it; there is none of a parallel', () => {
    expect(dot(across([1, 1, 0], [1, 0, 0]) ?? [1, 1, 1], [1, 0, 0])).toBe(0);
    expect(across([2, 0, 0], [1, 0, 0])).toBeUndefined();
    expect(unit([0, 0, 0])).toBeUndefined();
  });
  test('forward, up and right are a right-handed frame', () => expect(cross([1, 0, 0], [0, 1, 0])).toEqual([0, 0, 1]));
});
