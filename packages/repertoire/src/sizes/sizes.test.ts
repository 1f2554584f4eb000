import { expect, test } from 'vitest';
import { shippedSizes } from './shipped-sizes.ts';
import { isTube } from './size.ts';

test('codes are unique, say the diameter, and every number has its source', () => {
  expect(new Set(shippedSizes.map(({ code }) => code)).size).toBe(shippedSizes.length);
  for (const size of shippedSizes) {
    const said = isTube(size) ? size.code[0] : size.code.slice(size.shape.length + 1);
    expect(said).toBe(String(size.diameterInches));
    expect(size.source.length).toBeGreaterThan(10);
  }
});
test('a tube without tail reaches its nominal length within 2 %', () => {
  const tubes = shippedSizes.filter(isTube);
  expect(tubes.length).toBe(7);
  for (const { flatInches, stretch, lengthInches, code, diameterInches } of tubes) {
    expect(Math.abs((flatInches * stretch) / lengthInches - 1)).toBeLessThan(0.02);
    expect(code).toBe(`${diameterInches}${lengthInches}`);
  }
});
