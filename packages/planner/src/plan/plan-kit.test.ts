import { money } from '@twistwright/units';
import { expect, test } from 'vitest';
import { bagsOfKit, describeKit, findKit, foundBefore } from '../kit/index.ts';
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

test('a kit that was described is had again without a search: the same lines, the same bill, the same worth', () => {
  const problem = inventedKit(15, 40, 4, { budget: money(8000), hours: 6 });
  const first = findKit(problem, { effort: 'soon' });
  if (!first.ok) throw new Error('no kit');
  const kit = describeKit(first.value);
  const bags = bagsOfKit(kit);
  const again = foundBefore(problem, bags);
  if (again === undefined) throw new Error('the kit is not to be had again');
  const { metAtMost: _bound, standing: _standing, ...same } = kit;
  expect(describeKit(again)).toMatchObject(same);
  expect(again.answer).toMatchObject({ value: expect.closeTo(first.value.answer.value, 9), proven: false });
});
test('a kit that the money does not reach, or of which an offer has gone, is not had again', () => {
  const problem = inventedKit(15, 40, 4, { budget: money(8000), hours: 6 });
  const first = findKit(problem, { effort: 'soon' });
  if (!first.ok) throw new Error('no kit');
  const kit = describeKit(first.value);
  const bags = bagsOfKit(kit);
  expect(
    foundBefore(
      { ...problem, wishes: { ...problem.wishes, budget: money(kit.spent - 1) } },
      new Map([...bags, [kit.lines[0]?.offer ?? '', 99]]),
    ),
  ).toBeUndefined();
  expect(foundBefore({ ...problem, wishes: { ...problem.wishes, budget: money(1) } }, bags)).toBeUndefined();
  expect(foundBefore(problem, new Map([...bags, ['gone', 1]]))).toBeUndefined();
});
