import type { ShoppingLine } from '@twistwright/planner';
import { date, money } from '@twistwright/units';
import { expect, test } from 'vitest';
import { orderBySentence, whySentence } from './shopping-words.ts';

const line = (causes: ShoppingLine['because']['causes']): ShoppingLine => ({
  offer: 'o',
  item: '260-green',
  name: '260 green',
  bags: 1,
  count: 100,
  price: money(820),
  total: money(820),
  because: { have: 14, onOrder: 0, mean: 20, short: 12, chanceShort: 0.7, causes },
});
const cause = (gig: string, day: string) => ({ gig, day: date(day), mean: 10, share: 0.5 });
const nameOf = (gig: string): string => gig.toUpperCase();

test('why a bag is there: gigs with their days, and what would be missing', () => {
  expect(whySentence(line([cause('fair', '2026-06-13')]), nameOf)).toBe('FAIR on the 13th; up to 12 short');
  expect(whySentence(line(['a', 'b', 'c'].map((gig) => cause(gig, '2026-06-01'))), nameOf)).toBe(
    'A on the 1st, B on the 1st, C on the 1st; up to 12 short',
  );
  expect(whySentence(line(['a', 'b', 'c', 'd'].map((gig) => cause(gig, '2026-06-02'))), nameOf)).toBe(
    'A on the 2nd, B on the 2nd and two more; up to 12 short',
  );
  expect(whySentence(line([{ reason: 'practice', day: date('2026-06-03'), mean: 5, share: 1 }]), nameOf)).toBe(
    'practice on the 3rd; up to 12 short',
  );
});
test('the last safe day, with the hour where there is one', () => {
  expect(orderBySentence(date('2026-06-04'), '12:00')).toBe('Thursday 4 June, 12:00');
  expect(orderBySentence(date('2026-06-08'), undefined)).toBe('Monday 8 June');
});
