/** Usual times of a practised hand, pumping and tying included, no drawing: common practice, no published source. */
import { minutesOf, readRecipe, shippedFigures } from '@twistwright/repertoire';
import { expect, test } from 'vitest';

test.each([
  ['dog', 20, 40],
  ['sword', 12, 20],
  ['bear', 60, 90],
  ['elephant', 40, 60],
  ['butterfly', 45, 70],
  ['flower-six', 45, 70],
  ['tulip', 10, 15],
  ['pair-of-dogs', 180, 240],
])('%s: %i to %i seconds; the estimate is within half of that range', (id, least, most) => {
  const figure = shippedFigures.find((shipped) => shipped.id === id);
  const read = readRecipe(figure?.recipe ?? '');
  if (!read.ok) throw new Error(id);
  const { minutes: _written, ...recipe } = read.value;
  const { minutes, from } = minutesOf({ ...recipe, finishing: [] });
  expect(from).toBe('estimate');
  expect(60 * minutes).toBeGreaterThan(0.5 * least);
  expect(60 * minutes).toBeLessThan(1.5 * most);
});
