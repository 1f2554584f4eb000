import { createElement as h } from 'react';
import { renderToStaticMarkup as markup } from 'react-dom/server';
import { expect, test } from 'vitest';
import { Bag, Loose } from './bag.tsx';
import { Crowd, guestsAHead } from './crowd.tsx';
import { DayRuler } from './day-ruler.tsx';
import { Mark } from './mark.tsx';
import { NeedPicture } from './need-picture.tsx';
import { rubberOf } from './rubber.ts';
import { silhouetteOf } from './silhouette.ts';
import { niceStep, StepCurve } from './step-curve.tsx';
import { Swatch } from './swatch.tsx';

const red = rubberOf({ id: 'red', name: 'red' });
const count = (text: string, part: string | RegExp): number => text.match(new RegExp(part, 'g'))?.length ?? 0;
const even = (guests: number) => ({ p10: guests, p50: guests, p90: guests });

test('thickness is the size code', () => {
  const radius = (code: string): number => {
    const silhouette = silhouetteOf(code);
    return silhouette.shape === 'tube' ? silhouette.radius : Number.NaN;
  };
  expect(radius('160')).toBeLessThan(radius('260'));
  expect(radius('260')).toBeLessThan(radius('350'));
  expect(radius('350')).toBeLessThan(radius('646'));
  expect(silhouetteOf('round-5').shape).toBe('round');
  expect(silhouetteOf('321')).toMatchObject({ length: 24 });
});
test('the finish is drawn in the gloss, so no two look the same', () => {
  const finishes = ['standard', 'clear', 'pearl', 'mirror', 'marbled'] as const;
  const drawn = finishes.map((finish) => markup(h(Swatch, { size: '260', rubber: red, finish })));
  expect(new Set(drawn).size).toBe(finishes.length);
  expect(markup(h(Swatch, { size: '260', rubber: red, print: 'dots' }))).toContain('<circle');
});
test('a swatch is hidden from screen readers, since its name stands beside it', () => {
  expect(markup(h(Swatch, { size: '260', rubber: red }))).toContain('aria-hidden="true"');
});
test('loose pieces: a band for each ten, a stroke for each piece', () => {
  const text = markup(h(Loose, { count: 38, rubber: red }));
  expect(count(text, 'stroke="var\\(--ink\\)"')).toBe(3);
  expect(count(text, '<circle')).toBe(3 * 3 + 8);
});
test('a sealed bag has a header with a hole, an opened one a torn edge', () => {
  expect(markup(h(Bag, { rubber: red }))).toContain('<circle');
  expect(markup(h(Bag, { rubber: red, open: true }))).not.toContain('<circle');
});
test('what is in a bag has its shape: long ones as thick as their size code, rounds round, hearts hearts, prints printed', () => {
  const inside = (size: string, print?: string): string => markup(h(Bag, { rubber: red, size, ...(print === undefined ? {} : { print }) }));
  const sizes = ['160', '260', '646', 'round-5', 'heart-6', 'ring-12', 'flower-6'];
  expect(new Set(sizes.map((size) => inside(size))).size).toBe(sizes.length);
  expect(inside('round-5', 'eyes')).not.toBe(inside('round-5'));
  expect(count(inside('heart-6'), '<g')).toBe(5);
  expect(markup(h(Loose, { count: 3, rubber: red, size: 'heart-6' }))).not.toBe(markup(h(Loose, { count: 3, rubber: red })));
});
test('a print is shown as what it is: eyes, a face, dots', () => {
  const printed = (print?: string): readonly string[] => {
    const one = { rubber: red, size: 'round-5', ...(print === undefined ? {} : { print }) };
    return [markup(h(Bag, one)), markup(h(Swatch, one))];
  };
  const all = [undefined, 'eyes', 'smile', 'spots'].map(printed);
  for (const picture of [0, 1]) expect(new Set(all.map((pictures) => pictures[picture])).size).toBe(4);
  expect(printed('football')).toEqual(printed('dots'));
});
test('marks differ by shape of fill, not by colour', () => {
  const fills = (['done', 'part', 'open', 'stop'] as const).map((state) => markup(h(Mark, { kind: 'staffed', state })));
  expect(new Set(fills).size).toBe(4);
  for (const fill of fills) expect(fill).not.toMatch(/#[0-9a-f]{6}/);
});
test('the line of guests: a head for a guest, solid, grey or ring by how sure it is', () => {
  const text = markup(
    h(Crowd, {
      width: 820,
      startsAt: 780,
      minutes: 10,
      stepMinutes: 5,
      occasion: 'afternoon',
      waiting: [even(0), { p10: 2, p50: 5, p90: 9 }, even(3)],
    }),
  );
  const heads = (shade: string): number =>
    [...text.matchAll(new RegExp(`class="${shade}" d="([^"]*)"`, 'g'))].reduce((sum, match) => sum + count(match[1] ?? '', 'M'), 0);
  expect([heads('hd1'), heads('hd2'), heads('hd3')]).toEqual([2 + 3, 3, 4]);
  expect(text).toContain('aria-label="Guests waiting, 13:00 to 13:10. Most at once: about 5, in the busiest tenth of such afternoons 9."');
});
test('a crowd of more than forty is drawn with more guests a head', () => {
  expect([12, 40, 41, 80, 81, 500].map(guestsAHead)).toEqual([1, 1, 2, 2, 5, 15]);
});
test('the closing is said in the sentence of the picture', () => {
  const text = markup(
    h(Crowd, {
      width: 820,
      startsAt: 780,
      minutes: 180,
      stepMinutes: 5,
      occasion: 'afternoon',
      waiting: [even(1)],
      closes: { p10: 147, p50: 158, p90: 169 },
    }),
  );
  expect(text).toContain('The line closes at about 15:38.');
  expect(text).toContain('(15:27 to 15:49)');
});
test('a need that the stock does not cover is hatched; one that it covers is not', () => {
  const need = { width: 420, scale: 44, name: '260 green', takes: { p10: 13, p50: 18, p90: 23 }, enough: 26 };
  expect(markup(h(NeedPicture, { ...need, have: 14 }))).toContain('url(#hatch)');
  expect(markup(h(NeedPicture, { ...need, have: 26 }))).not.toContain('url(#hatch)');
  expect(markup(h(NeedPicture, { ...need, have: 14 }))).toContain('260 green: takes about 18, 13 to 23; 26 is enough; you have 14.');
});
test('money against risk is drawn in steps, the rule of thumb as a square', () => {
  const points = [0, 940, 1780].map((at, index) => ({ at, risk: 0.6 - index * 0.2, low: 0.5 - index * 0.2, high: 0.7 - index * 0.2 }));
  const text = markup(
    h(StepCurve, {
      width: 820,
      points,
      rule: { at: 2000, risk: 0.1, label: 'rounding up' },
      showAt: (at) => `£${(at / 100).toFixed(2)}`,
      label: 'Money against risk.',
    }),
  );
  expect(text).toMatch(/M6 \d+(\.\d+)?H\d+(\.\d+)?V/);
  expect(text).toContain('rounding up');
  expect(text).toContain('aria-label="Money against risk."');
});
test('ruler steps are round', () => {
  expect([120, 7, 3300, 0.9].map((most) => niceStep(most, 6))).toEqual([20, 2, 1000, 0.2]);
});
test('a day says in one sentence when to leave and when one is home', () => {
  const text = markup(
    h(DayRuler, {
      width: 600,
      from: 480,
      to: 1260,
      clashes: [{ from: 700, to: 740 }],
      gigs: [{ name: 'Picnic', leaves: 540, starts: 600, ends: 690, home: 740 }],
    }),
  );
  expect(text).toContain('Picnic: leave 09:00, at the gig 10:00 to 11:30, home 12:20.');
  expect(text).toContain('url(#hatch)');
});
