import { execFileSync } from 'node:child_process';
import { favouriteColourway, figureFacts, shippedBook } from '@twistwright/planner';
import { describe, expect, test } from 'vitest';
import { recipeCardPdf } from './recipe-card.ts';
import { together } from './recipe-card-rulers.ts';
import type { PaperSize } from './sheet.ts';

const book = {
  ...shippedBook({ name: 'Łódź Bälloons', currency: 'GBP', zone: 'Europe/London', country: 'GB' }),
  settings: { pump: { name: 'hand pump', litresPerStroke: 0.28 } },
};
async function cardOf(id: string, size: PaperSize = 'A4', ruler?: 'in' | 'cm'): Promise<Uint8Array> {
  const figure = book.figures.find((entry) => entry.id === id);
  if (figure === undefined) throw new Error(`no figure ${id}`);
  const facts = figureFacts(book, figure);
  const way = favouriteColourway(figure);
  if (!facts.ok || way === undefined) throw new Error(`${id} cannot be read`);
  const business = ruler === undefined ? book.business : { ...book.business, ruler };
  return recipeCardPdf({ ...book, business }, facts.value, way, { made: '2026-06-01', size });
}
const read = (pdf: Uint8Array, ...flags: readonly string[]): string =>
  execFileSync('pdftotext', [...flags, '-', '-'], { input: pdf, encoding: 'utf8' });
const pages = (pdf: Uint8Array): number =>
  Number(/Pages:\s+(\d+)/u.exec(execFileSync('pdfinfo', ['-'], { input: pdf, encoding: 'utf8' }))?.[1]);

test('the card says what to take, air, tail, steps, minutes and cautions', async () => {
  const text = read(await cardOf('dog')).replace(/\s+/gu, ' ');
  for (const word of [
    'Dog',
    'About 0.6 minutes (0.4 to 0.8)',
    '260 blue',
    'Leave flat',
    'fits',
    'This line is 5 in (12.7 cm) long',
    'Take a blue 260',
    'choke children under eight',
    'ask about allergy first',
  ])
    expect(text).toContain(word);
  // The figures grow better with time; that their numbers stand on the card is what counts here.
  expect(text).toMatch(/Twist a bubble of [\d.]+ in for the body/u);
  expect(text).toMatch(/dog 260 [\d.]+ in [\d.]+ in \d+ strokes fits/u);
});

test.each([
  ['in', 72],
  ['cm', 72 / 2.54],
] as const)('the rulers in %s are printed at true size', async (unit, points) => {
  const words = [
    ...read(await cardOf('dog', 'Letter', unit), '-bbox').matchAll(/xMin="([\d.]+)" yMin="([\d.]+)" xMax="([\d.]+)"[^>]*>(\d+)</gu),
  ];
  const ticks = words.map(([, xMin, yMin, xMax, digits]) => ({
    at: (Number(xMin) + Number(xMax)) / 2,
    y: Math.round(Number(yMin)),
    digit: Number(digits),
  }));
  // A row of numbers 1, 2, 3, ... at one height is a ruler; there are two of them, flat above, inflated below.
  const rulers = [...new Set(ticks.map(({ y }) => y))]
    .map((y) => ticks.filter((tick) => tick.y === y).toSorted((a, b) => a.at - b.at))
    .filter((row) => [1, 2, 3, 4].every((digit) => row.some((tick) => tick.digit === digit)));
  expect(rulers.length).toBe(2);
  for (const row of rulers) {
    const at = (digit: number): number => row.find((tick) => tick.digit === digit)?.at ?? Number.NaN;
    for (const digit of [2, 3, 4]) expect(Math.abs(at(digit) - at(1) - (digit - 1) * points)).toBeLessThan(0.05);
  }
});

describe.each(['A4', 'Letter'] as const)('on %s', (size) => {
  test.each(book.figures.map(({ id }) => id))(
    'the card of %s has one or two pages',
    async (id) => {
      const pdf = await cardOf(id, size);
      expect([1, 2]).toContain(pages(pdf));
      expect(read(pdf, '-l', '2').replace(/\s+/gu, ' ')).toContain('choke children under eight');
    },
    60_000,
  );
});

test('the same facts give the same bytes', async () => {
  expect(await cardOf('tulip')).toEqual(await cardOf('tulip'));
});

test('equal lengths are one measure with all names', () => {
  expect(
    together([
      { inches: 3, name: 'nose' },
      { inches: 2, name: 'ear' },
      { inches: 3.02, name: 'neck' },
      { inches: 3, name: 'nose' },
    ]),
  ).toEqual([
    { inches: 2, names: ['ear'] },
    { inches: 3, names: ['nose', 'neck'] },
  ]);
});
