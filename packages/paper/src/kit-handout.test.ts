import { execFileSync } from 'node:child_process';
import { type Book, emptyBook } from '@twistwright/books';
import { type BookKitWishes, type KitPlan, lessonsOfKit, piecesOfKit, planKit } from '@twistwright/planner';
import { money } from '@twistwright/units';
import jsqrModule from 'jsqr';
import { expect, test } from 'vitest';
import { qrSvg, vCardOf } from './contact-card.ts';
import { inShort, kitHandoutPdf } from './kit-handout.ts';
import { kitCsv } from './kit-handout-csv.ts';
import { kitSentences, nextRows, shopsOf } from './kit-handout-list.ts';
import { kitPage } from './kit-page.ts';
import { learningSheetPdf, lessonsTitle } from './learning-sheet.ts';
import { pageSizes } from './sheet.ts';

// The types of the decoder are CommonJS-shaped; what is imported is the function.
const decodeQr = jsqrModule as unknown as typeof jsqrModule.default;

const balloon = (size: string, colour: string): Book['items'][number] => ({ id: `${size} ${colour}`, kind: 'balloon', size, colour });
const bag = (item: string, price: number, supplier: string): Book['offers'][number] => ({
  id: `bag ${item}`,
  supplier,
  item,
  count: 100,
  price: money(price),
});
const book: Book = {
  ...emptyBook({
    name: 'Łódź Bälloons; Ruß & Söhne',
    currency: 'GBP',
    zone: 'Europe/London',
    country: 'GB',
    contact: {
      person: 'Ada "Twist" O’Dell, Jr.',
      phone: '+44 1632 960 014',
      email: 'ada@example.test',
      site: 'example.test/coach',
      address: '4 Rope Steps,\nWrenmouth',
    },
  }),
  settings: {
    tools: [
      { item: 'pump', count: 1, when: 'always', place: 'case' },
      { item: 'card', count: 40, when: 'always', place: 'case', firstKit: 'later' },
    ],
  },
  colours: ['red', 'blue', 'green', 'white'].map((id) => ({ id, name: id })),
  items: [
    balloon('260', 'red'),
    balloon('260', 'blue'),
    balloon('260', 'green'),
    { id: 'pump', kind: 'tool', name: 'hand pump <b>' },
    { id: 'card', kind: 'sundry', name: 'card' },
  ],
  figures: [
    {
      id: 'flower',
      name: 'Flower',
      recipe: 'balloon stem: 260 in stem\nbubble 6\nloop 5\nballoon head: 260 in petals\nloop 6\nloop 6',
      colourways: [{ id: 'red', name: 'red', fill: { stem: 'green', petals: 'red' } }],
      difficulty: 3,
    },
    {
      id: 'sword',
      name: 'Sword',
      recipe: 'balloon sword: 260 in blade\nbubble 10\nbubble 2',
      colourways: [
        { id: 'blue', name: 'blue', share: 1, fill: { blade: 'blue' } },
        { id: 'white', name: 'white', share: 5, fill: { blade: 'white' } },
      ],
      tags: ['sword-like'],
    },
  ],
  suppliers: [
    {
      id: 'post',
      name: 'Long Barn Supply',
      leadWorkingDays: 2,
      carriage: money(395),
      leastOrder: money(500),
      site: 'long-barn.example',
    },
    { id: 'counter', name: 'Corner Counter', leadWorkingDays: 0, carriage: money(0) },
  ],
  offers: [
    bag('260 red', 820, 'counter'),
    bag('260 blue', 840, 'counter'),
    bag('260 green', 810, 'post'),
    { ...bag('pump', 895, 'counter'), count: 1 },
    { ...bag('card', 1800, 'counter'), count: 250 },
  ],
};
const wishes: BookKitWishes = { budget: money(5000), hours: 4, kind: 'parties' };
const planned = planKit(book, wishes, { runs: 50 });
if (!planned.ok) throw new Error(planned.error.map((one) => one.sentence).join(' '));
const plan: KitPlan = planned.value;
const paper = { plan, wishes, name: 'For Bea' };
const options = { made: '2026-06-01' };
const textOf = (pdf: Uint8Array): string => execFileSync('pdftotext', ['-layout', '-', '-'], { input: pdf, encoding: 'utf8' });

test('the hand-out read back: boxes by shop, prices, counts, why, cautions; the same bytes twice; A4 and Letter', async () => {
  const pdf = await kitHandoutPdf(book, paper, options);
  const text = textOf(pdf);
  for (const part of [
    'For Bea: 4 things for £37.60.',
    'Corner Counter.',
    'Long Barn Supply.',
    'long-barn.example',
    '£25.55 in all, no carriage to pay',
    '£12.05 in all, £3.95 of it carriage; least order £5.00',
    'prices as on Monday 1 June 2026',
    '1 bag of 100',
    '260 green',
    'Stem of Flower, which needs it.',
    'Needed from the first gig.',
    'Warning! Children under eight years',
    'Sword-like figures only where the host allows them.',
    'Ada "Twist" O’Dell, Jr.',
    'Łódź Bälloons; Ruß & Söhne, first kit',
  ])
    expect(text.replace(/\s+/gu, ' ')).toContain(part);
  expect(text).not.toMatch(/\bcard\b/iu);
  expect(Buffer.from(await kitHandoutPdf(book, paper, options)).equals(Buffer.from(pdf))).toBe(true);
  for (const size of ['A4', 'Letter'] as const) {
    const info = execFileSync('pdfinfo', ['-'], { input: await kitHandoutPdf(book, paper, { ...options, size }), encoding: 'utf8' });
    expect(info).toContain(`Page size:       ${pageSizes[size].width} x ${pageSizes[size].height}`);
  }
});

test('a reason stands on one line: how many figures there are is said on top', () => {
  expect(inShort('Petals on 2, band on 1 of the 37 figures; Swan needs it.')).toBe('Petals on 2, band on 1; Swan needs it.');
  expect(inShort('Body on 9 of the 37 figures; 4 of them need it.')).toBe('Body on 9; 4 figures need it.');
  expect(inShort('Body on 5 of the 9 figures; more choice of colour or more pieces.')).toBe('Body on 5; more choice, more pieces.');
  expect(inShort('Needed from the first gig.')).toBe('Needed from the first gig.');
});
test('nearly thirty lines in two shops are one page, on A4 and on Letter, with cautions and contact', async () => {
  const line = plan.kit.lines.find(({ supplier }) => supplier === 'counter');
  if (line === undefined) throw new Error('nothing is bought at the counter');
  const long = { ...plan, kit: { ...plan.kit, lines: [...plan.kit.lines, ...Array.from({ length: 23 }, () => line)] } };
  for (const size of ['A4', 'Letter'] as const) {
    const pdf = await kitHandoutPdf(book, { ...paper, plan: long }, { ...options, size });
    expect(execFileSync('pdfinfo', ['-'], { input: pdf, encoding: 'utf8' })).toMatch(/Pages:\s+1\n/u);
    expect(textOf(pdf)).toContain('page 1 of 1');
    expect(textOf(pdf)).toContain('Warning!');
  }
});

test('what comes next is priced as an order of its own: without the carriage that this one would save or bring', () => {
  const next = [{ offers: ['bag 260 blue'], cost: money(445), gain: 0.1, gainPerThousand: 0.2, unlocks: ['sword'], metAfter: 0.5 }];
  expect(nextRows(book, { ...plan, next })).toEqual([
    { what: '260 blue, bag of 100', price: '£8.40', gain: 'then 50 of 100; brings Sword' },
  ]);
});
test('two bags of one offer are said as two; what is no balloon comes in packs', () => {
  const step = {
    offers: ['bag 260 blue', 'bag 260 blue', 'bag 260 red'],
    cost: money(1),
    gain: 0,
    gainPerThousand: 0,
    unlocks: [],
    metAfter: 0.5,
  };
  expect(nextRows(book, { ...plan, next: [step] })[0]).toMatchObject({ what: '2 x 260 blue and 260 red, bags of 100', price: '£25.00' });
  const [line] = plan.kit.lines;
  if (line === undefined) throw new Error('no line');
  const cards = { ...line, supplier: 'counter', offer: 'bag card', name: 'card', pieces: 500, bags: 2 };
  const rows = shopsOf(book, { ...plan, kit: { ...plan.kit, lines: [...plan.kit.lines, cards] } }).flatMap((shop) => shop.rows);
  expect(rows.find(({ what }) => what === 'Card')?.count).toBe('2 packs of 250');
});
test('what lies in a mixed bag is a matter of chance, and the list says so', () => {
  const [line] = plan.kit.lines;
  if (line === undefined) throw new Error('no line');
  const mix = [{ item: '260 red', expected: 40, atLeast: 34, chanceOfNone: 0 }];
  const mixed = { ...plan, kit: { ...plan.kit, lines: [{ ...line, mix }] } };
  const said = 'Colours by chance: at least 34 red, each in 9 of 10 purchases.';
  expect(shopsOf(book, mixed).flatMap((shop) => shop.rows.map(({ why }) => why))).toContainEqual(expect.stringContaining(said));
  expect(kitCsv(book, mixed)).toContain(said);
});
test('one of anything is said as one; what has not run out while it was followed is said as at least', () => {
  const spread = (value: number) => ({ p10: value, p50: value, p90: value, mean: value, error: 0 });
  const kit = { ...plan.kit, requests: 1, met: 1, figures: plan.kit.figures.slice(0, 1).map((figure) => ({ ...figure, met: 1 })) };
  const lasting = { ...plan.lasting, met: spread(1), guestsUntilShort: { ...spread(2), p90: 4 } };
  const one = { plan: { ...plan, kit, lasting }, wishes: { ...wishes, hours: 1 } };
  expect(kitSentences(one)).toBe(
    'It makes 1 figure and meets about 100 of 100 requests in 1 hour of parties: about 1 guest. ' +
      'Something first runs out after about 2 guests (2 to 4 or more).',
  );
  expect(kitSentences({ ...one, plan: { ...one.plan, lasting: { ...lasting, guestsUntilShort: spread(4) } } })).toMatch(
    /Nothing runs out before 4 guests have come\.$/u,
  );
  expect(['', 'a', 'ab'].map((length) => lessonsTitle([...length].flatMap(() => lessonsOfKit(book, plan.kit).slice(0, 1))))).toEqual([
    'No figure to learn yet.',
    '1 figure to learn.',
    '2 figures to learn, in this order.',
  ]);
});
/** Picture elements of the last page of a PDF, as RGBA. */
function lastPage(pdf: Uint8Array): { readonly data: Uint8ClampedArray; readonly width: number; readonly height: number } {
  const pages = Number(/Pages:\s+(\d+)/.exec(execFileSync('pdfinfo', ['-'], { input: pdf, encoding: 'utf8' }))?.[1]);
  const ppm = execFileSync('pdftoppm', ['-r', '150', '-f', String(pages), '-l', String(pages), '-'], { input: pdf, maxBuffer: 1e9 });
  const head = /^P6\s+(\d+)\s+(\d+)\s+255\s/.exec(ppm.subarray(0, 40).toString('latin1'));
  const [width, height] = [Number(head?.[1]), Number(head?.[2])];
  const data = new Uint8ClampedArray(width * height * 4).fill(255);
  const from = head?.[0].length ?? 0;
  for (let i = 0; i < width * height; i++) for (const c of [0, 1, 2]) data[4 * i + c] = ppm[from + 3 * i + c] ?? 0;
  return { data, width, height };
}
test('a phone that reads the printed square gets the coach’s contact, letters beyond ASCII included', async () => {
  const { data, width, height } = lastPage(await kitHandoutPdf(book, paper, options));
  const read = decodeQr(data, width, height);
  expect(new TextDecoder().decode(Uint8Array.from(read?.binaryData ?? []))).toBe(vCardOf(book.business));
});
test('the square of the page says the same', () => {
  const svg = qrSvg(vCardOf(book.business), 'Contact');
  const size = Number(/viewBox="0 0 (\d+)/.exec(svg)?.[1]);
  const scale = 4;
  const width = size * scale;
  const data = new Uint8ClampedArray(width * width * 4).fill(255);
  for (const [, x, y, run] of svg.matchAll(/M(\d+) (\d+)h(\d+)v1h-\3z/gu))
    for (let dx = 0; dx < scale * Number(run); dx++)
      for (let dy = 0; dy < scale; dy++)
        data.fill(
          0,
          4 * ((Number(y) * scale + dy) * width + Number(x) * scale + dx),
          4 * ((Number(y) * scale + dy) * width + Number(x) * scale + dx) + 3,
        );
  expect(new TextDecoder().decode(Uint8Array.from(decodeQr(data, width, width)?.binaryData ?? []))).toBe(vCardOf(book.business));
});

test('figures to learn: each makeable from the kit in colours that are in it, easiest first, new techniques named', async () => {
  const lessons = lessonsOfKit(book, plan.kit);
  const pieces = piecesOfKit(book, plan.kit);
  expect(lessons.map(({ facts }) => facts.figure.id)).toEqual(['sword', 'flower']);
  // White is asked for most, but nobody sells it.
  expect(lessons[0]?.way.fill).toEqual({ blade: 'blue' });
  for (const { way } of lessons) for (const colour of Object.values(way.fill)) expect(pieces.get(`260 ${colour}`)).toBeGreaterThan(0);
  const text = textOf(await learningSheetPdf(book, paper, options)).replace(/\s+/gu, ' ');
  for (const part of [
    'For Bea: 2 figures to learn, in this order.',
    '1. Sword',
    '2. Flower',
    '1 x 260 blue',
    'New: basic twist.',
    'Warning!',
  ])
    expect(text).toContain(part);
});
test('figures that no colourway of the book allows as a whole are shown in colours that will do', () => {
  const mixed: Book = {
    ...book,
    figures: book.figures.map((figure) =>
      figure.id === 'flower'
        ? {
            ...figure,
            colourways: [
              { id: 'a', name: 'a', fill: { stem: 'green', petals: 'white' } },
              { id: 'b', name: 'b', fill: { stem: 'white', petals: 'red' } },
            ],
          }
        : figure,
    ),
  };
  expect(lessonsOfKit(mixed, plan.kit).find(({ facts }) => facts.figure.id === 'flower')?.way.fill).toEqual({
    stem: 'green',
    petals: 'red',
  });
});

test('the page is one file: no script, nothing from elsewhere, every name safe, boxes to tick, contact and cautions', () => {
  const page = kitPage(book, paper, '2026-06-01');
  expect(page).not.toMatch(/<script|<link|<iframe|<img|\bsrc=|url\(|@import|javascript:/iu);
  const addresses = [...page.matchAll(/href="([^"]*)"/gu)].map((match) => match[1]);
  expect(addresses).toEqual(['tel:+441632960014', 'mailto:ada@example.test', 'https://example.test/coach']);
  expect(page.match(/<input type="checkbox"/gu)?.length).toBe(4 + plan.next.slice(0, 5).length + 2);
  expect(page).toContain('Hand pump &lt;b&gt;');
  expect(page).not.toContain('pump <b>');
  expect(page).toContain('Łódź Bälloons; Ruß &amp; Söhne');
  expect(page).toContain('Warning! Children under eight years');
  expect(page.match(/<svg/gu)?.length).toBe(4 + 2 + 1);
});
test('the list as CSV', () => {
  const rows = kitCsv(book, plan).trimEnd().split('\r\n');
  expect(rows[0]).toBe('bought,where,what,bags,pieces,price GBP,why');
  expect(rows).toHaveLength(1 + 4 + 1);
  expect(rows.find((row) => row.includes('carriage'))).toBe(',Long Barn Supply,carriage,,,3.95,');
  const sum = rows.slice(1).reduce((all, row) => all + Math.round(100 * Number(/,(\d+\.\d\d),/.exec(row)?.[1])), 0);
  expect(sum).toBe(plan.kit.spent);
});
