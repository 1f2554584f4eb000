import { describe, expect, test } from 'vitest';
import { bend, drop, hairpin, ring } from './curves.ts';

type Line = readonly (readonly [number, number])[];
const lengthOf = (line: Line): number =>
  line.slice(1).reduce((sum, [x, y], i) => sum + Math.hypot(x - (line[i]?.[0] ?? 0), y - (line[i]?.[1] ?? 0)), 0);
const ends = (line: Line): readonly number[] =>
  [...(line[0] ?? []), ...(line.at(-1) ?? [])].map((value) => Math.round(value * 1e9) / 1e9 + 0);

describe('templates of curved bubbles', () => {
  test.each([
    ['drop', drop(9, 0.78, 12)],
    ['hairpin', hairpin(9, 0.78, 10)],
    ['ring', ring(9, 14)],
    ['bend', bend(9, 150, 8)],
  ] as const)('%s is as long as its bubble', (_, line) => expect(lengthOf(line)).toBeCloseTo(9, 9));
  test.each([
    ['drop', drop(9, 0.78, 12)],
    ['hairpin', hairpin(9, 0.78, 10)],
    ['ring', ring(9, 14)],
  ] as const)('%s ends where it begins', (_, line) => expect(ends(line)).toEqual([0, 0, 0, 0]));
  test('a bend has both ends on its aim and bulges away from where its end turns', () => {
    const line = bend(10, 120, 9);
    expect(ends(line)[3]).toBe(0);
    expect(line[4]?.[1]).toBeLessThan(-1);
  });
  test('the sides of a hairpin are as far apart as the balloon is thick', () => {
    const across = hairpin(12, 0.8, 24).map(([, y]) => y);
    const apart = (Math.max(...across) - Math.min(...across)) / 1.6;
    expect(apart).toBeGreaterThan(0.93);
    expect(apart).toBeLessThan(1.07);
  });
});
