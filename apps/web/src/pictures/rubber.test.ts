import { expect, test } from 'vitest';
import { contrast, rubberOf } from './rubber.ts';

test('contrast of black on white is 21, of a colour on itself 1 (WCAG 2.2)', () => {
  expect(contrast('#000000', '#ffffff')).toBeCloseTo(21, 10);
  expect(contrast('#767676', '#ffffff')).toBeCloseTo(4.54, 2); // the grey that WCAG's own examples use for 4.5 : 1
  expect(contrast('#123456', '#123456')).toBe(1);
});
test('a colour has the shipped shade of its name, or of the last plain word in it', () => {
  expect(rubberOf({ id: 'red', name: 'red' }).body).toBe('var(--b-red)');
  expect(rubberOf({ id: 'c7', name: 'lime green' }).body).toBe('var(--b-green)');
  expect(rubberOf({ id: 'x', name: 'nameless' }).body).toBe('var(--b-grey)');
});
test.each(['#ffff00', '#fefefe', '#101010', '#7fffd4', '#2058cc'])('the edge of an own shade %s stands out in light and dark', (body) => {
  const { rim } = rubberOf({ id: 'own', name: 'own', body });
  const [, light = '', dark = ''] = /^light-dark\((#[0-9a-f]{6}), (#[0-9a-f]{6})\)$/.exec(rim) ?? [];
  expect(Math.max(contrast(light, '#f2f3ef'), contrast(body, '#f2f3ef'))).toBeGreaterThanOrEqual(3);
  expect(Math.max(contrast(dark, '#141619'), contrast(body, '#141619'))).toBeGreaterThanOrEqual(3);
});
