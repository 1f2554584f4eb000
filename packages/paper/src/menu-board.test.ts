import { execFileSync } from 'node:child_process';
import type { Gig } from '@twistwright/books';
import { shippedBook } from '@twistwright/planner';
import { date, time } from '@twistwright/units';
import { expect, test } from 'vitest';
import { menuBoardPdf } from './menu-board.ts';
import { type PaperSize, pageSizes } from './sheet.ts';

const book = shippedBook({ name: 'Łódź Bälloons', currency: 'GBP', zone: 'Europe/London', country: 'GB' });
const gig: Gig = {
  id: 'fair',
  name: 'Fair on the green',
  kind: 'line',
  day: date('2026-06-13'),
  starts: time('13:00'),
  ends: time('16:00'),
  artists: [],
  menu: [
    { figure: 'dog', share: 2, colourways: ['red'] },
    { figure: 'sword', share: 1 },
    { figure: 'swan', share: 1 },
  ],
};
const made = '2026-06-01';
const read = (pdf: Uint8Array, tool = 'pdftotext'): string =>
  execFileSync(tool, tool === 'pdftotext' ? ['-layout', '-', '-'] : ['-'], { input: pdf, encoding: 'utf8' });
async function boardOf(options: Parameters<typeof menuBoardPdf>[1], of = book): Promise<Uint8Array> {
  const board = await menuBoardPdf(of, options);
  if (!board.ok) throw new Error(board.error[0]?.sentence);
  return board.value.pdf;
}

test('the board of a gig shows its menu in its colours, grouped, with the cautions', async () => {
  const text = read(await boardOf({ made, gig }));
  for (const word of [
    'Which one would you like?',
    'Dog',
    'Sword',
    'Swan',
    'Birds',
    'Swords and wands',
    'choke children under eight',
    'EN 71-1',
  ])
    expect(text).toContain(word);
  expect(text).toMatch(/\bRed\b/u);
  expect(text).not.toContain('Blue, pink');
  expect(text).toContain('only where the host allows');
  expect(text).not.toContain('Giraffe');
});

test('every shipped figure stands on the board of the repertoire', async () => {
  const text = read(await boardOf({ made })).replace(/\s+/gu, ' ');
  for (const figure of book.figures) expect(text, figure.name).toContain(figure.name.split(' ')[0]);
});

test('a menu of nine has one page in every paper size, however it is turned', async () => {
  const nine = { ...book, figures: book.figures.filter((_, index) => index % 7 === 0) };
  for (const size of Object.keys(pageSizes) as PaperSize[])
    for (const landscape of [false, true]) {
      const said = read(await boardOf({ made, size, landscape }, nine), 'pdfinfo');
      const page = pageSizes[size];
      const [width, height] = landscape ? [page.height, page.width] : [page.width, page.height];
      const paper = /Page size:\s+([\d.]+) x ([\d.]+)/u.exec(said);
      expect(Math.abs(Number(paper?.[1]) - width)).toBeLessThan(0.5);
      expect(Math.abs(Number(paper?.[2]) - height)).toBeLessThan(0.5);
      expect(said, `${size} ${landscape}`).toMatch(/Pages:\s+1\n/u);
    }
});

test('24 figures stand on one page in every paper size, however it is turned, in pictures of 2 cm and more', async () => {
  const menu = { ...book, figures: book.figures.filter((_, index) => index % 5 < 2) };
  expect(menu.figures).toHaveLength(24);
  for (const size of Object.keys(pageSizes) as PaperSize[])
    for (const landscape of [false, true]) {
      const board = await menuBoardPdf(menu, { made, size, landscape });
      if (!board.ok) throw new Error(board.error[0]?.sentence);
      expect(read(board.value.pdf, 'pdfinfo'), `${size} ${landscape}`).toMatch(/Pages:\s+1\n/u);
      expect(board.value.pictureInches, `${size} ${landscape}`).toBeGreaterThan(2 / 2.54);
      expect(read(board.value.pdf).replace(/\s+/gu, ' '), `${size} ${landscape}`).toContain('choke children under eight');
    }
}, 60_000);

test('the same facts give the same bytes', async () => {
  expect(await boardOf({ made, gig })).toEqual(await boardOf({ made, gig }));
});

test('what cannot be drawn is left out and said; an empty board is refused', async () => {
  const broken = { ...book, figures: [...book.figures.slice(0, 1), { id: 'x', name: 'Broken', recipe: 'ballon', colourways: [] }] };
  const board = await menuBoardPdf(broken, { made });
  expect(board.ok && board.value.leftOut.map(({ sentence }) => sentence)).toEqual([
    '"Broken" is not on the board: its recipe cannot be read.',
  ]);
  const empty = await menuBoardPdf(book, { made, gig: { ...gig, menu: [] } });
  expect(!empty.ok && empty.error[0]?.sentence).toBe('"Fair on the green" has no menu to put on the board.');
});
