import { execFileSync } from 'node:child_process';
import { emptyBook, type Gig } from '@twistwright/books';
import type { PackingPlan } from '@twistwright/planner';
import { date, time } from '@twistwright/units';
import { expect, test } from 'vitest';
import { packingListPdf } from './packing-list.ts';

const book = {
  ...emptyBook({ name: 'Łódź Bälloons', currency: 'GBP', zone: 'Europe/London', country: 'GB' }),
  places: [{ id: 'home', name: 'Home', kind: 'home' as const }],
};
const gig: Gig = {
  id: 'g',
  name: 'Fair on the green',
  kind: 'line',
  day: date('2026-06-13'),
  starts: time('13:00'),
  ends: time('16:00'),
  artists: [],
  menu: [],
};
const line = {
  item: 'red',
  name: '260 red',
  from: [{ place: 'home', count: 20, already: false }],
  onOrder: 0,
  why: 'usual use',
  ticked: false,
};
const plan: PackingPlan = {
  places: [
    {
      place: 'apron',
      name: 'Apron',
      kind: 'apron',
      lines: [
        { ...line, id: 'a', count: 25, missing: 5 },
        ...Array.from({ length: 60 }, (_, i) => ({ ...line, id: `b${i}`, count: i, missing: 0 })),
      ],
    },
  ],
  missing: [{ ...line, id: 'a', count: 25, missing: 5 }],
  leaveAtHome: [{ item: 'x', name: '160 sky', place: 'case', count: 7 }],
  ticked: 0,
  total: 61,
};

test('read back: numbers, places, what is missing, cautions, on more than one page, same bytes twice', async () => {
  const pdf = await packingListPdf(book, gig, plan, '2026-06-01');
  const text = execFileSync('pdftotext', ['-layout', '-', '-'], { input: pdf, encoding: 'utf8' });
  for (const part of [
    'Pack for Fair on the green.',
    'Missing: 5 260 red.',
    '20 from home; 5 missing',
    'Leave at home: 7 160 sky.',
    'page 2 of',
    'Łódź Bälloons',
    'Warning! Children under eight years',
    'EN 71-1',
  ])
    expect(text).toContain(part);
  expect(Buffer.from(await packingListPdf(book, gig, plan, '2026-06-01')).equals(Buffer.from(pdf))).toBe(true);
});
