import { money } from '@twistwright/units';
import { expect, test } from 'vitest';
import { findKit } from '../kit/index.ts';
import { inventedKit } from '../kit/invented-kit.ts';
import { boughtOffers } from './plan-kit.ts';

test('what was bought starts another search, which finds no less for the same money', () => {
  const problem = inventedKit(15, 40, 4, { budget: money(8000), hours: 6 });
  const first = findKit(problem, { effort: 'soon' });
  if (!first.ok) throw new Error('no kit');
  const start = boughtOffers(first.value);
  expect([...start.values()].reduce((sum, bags) => sum + bags, 0)).toBe(first.value.bought.reduce((sum, bags) => sum + bags, 0));
  const second = findKit(problem, { effort: 'soon', start });
  expect(second.ok && second.value.answer.value).toBeGreaterThanOrEqual(first.value.answer.value - 1e-9);
});
