import { api, call, readBook } from '@twistwright/contract';
import { afterAll, beforeAll, describe, expect, test } from 'vitest';
import { json, openApp } from './testing/open-app.ts';

const text = `book: 1
business: { name: Pell & Otter, currency: GBP, zone: Europe/London, country: GB }
colours: [ { id: red, name: red }, { id: blue, name: blue } ]
items:
  - { id: 260-red, kind: balloon, size: 260, colour: red }
  - { id: 260-blue, kind: balloon, size: 260, colour: blue }
figures:
  - id: dog
    name: Dog
    recipe: "balloon dog: 260 in body\\n  leave 3.5\\n  bubble 3 nose, forward\\n  bubble 2 ear, up left, x 2 mirrored\\n  lock\\n  bubble 3 neck, down back"
    colourways: [ { id: red, name: Red, fill: { body: red } }, { id: blue, name: Blue, share: 3, fill: { body: blue } } ]
artists: [ { id: a, name: A, pace: 1 } ]
places: []
suppliers: []
offers: []
clients: []
gigs:
  - { id: fair, name: Fair, kind: line, day: 2026-06-13, starts: "13:00", ends: "16:00", artists: [ a ], menu: [] }
needs: []
orders: []
moves: []
`;
const { ask, options, close, logged, ports } = await openApp();

beforeAll(async () => {
  const read = readBook(text, { name: 'book.yaml' });
  if (!read.ok) throw new Error(read.error[0]?.sentence);
  await ports.store.replace(read.value);
});
afterAll(async () => {
  await close();
  expect(logged).toEqual([]);
});

const firstBytes = async (file: File): Promise<string> => (await file.text()).slice(0, 5);

describe('the repertoire over HTTP', () => {
  test('a picture in a colourway, as SVG; the favourite one if none is named', async () => {
    const red = await call(api.repertoire.picture, { params: { id: 'dog' }, query: { colourway: 'red' } }, options);
    expect(red).toMatch(/^<svg.*#d61f2e/su);
    const blue = await ask('/api/figures/dog/picture.svg');
    expect(blue.headers.get('content-type')).toBe('image/svg+xml');
    expect(await blue.text()).toContain('#2058cc');
    const step = await call(api.repertoire.picture, { params: { id: 'dog' }, query: { step: 2 } }, options);
    expect(step).not.toBe(await call(api.repertoire.picture, { params: { id: 'dog' }, query: {} }, options));
  });
  test('card and board are PDF files', async () => {
    const card = await call(api.repertoire.card, { params: { id: 'dog' }, query: { paper: 'Letter' } }, options);
    const board = await call(api.repertoire.board, { query: { landscape: 'yes' } }, options);
    expect([await firstBytes(card), await firstBytes(board)]).toEqual(['%PDF-', '%PDF-']);
    const answer = await ask('/api/menu-board.pdf');
    expect(answer.headers.get('content-type')).toBe('application/pdf');
  });
  test('a recipe is checked without being kept', async () => {
    const { problems } = await call(api.repertoire.check, { body: { recipe: 'balloon dog: 260 in body\n  bubbel 3' } }, options);
    expect(problems.map(({ line, column, code }) => [line, column, code])).toEqual([[2, 3, expect.any(String)]]);
  });
  test('a frame is planned from text, JSON or a name', async () => {
    const cube = await call(api.repertoire.frame, { body: { solid: 'cube' } }, options);
    expect(cube).toMatchObject({ leastBalloons: 4, proven: true, recipe: expect.stringContaining('balloon ') });
    const square = 'edge A B 10\nedge B C 10\nedge C A 10';
    expect(await call(api.repertoire.frame, { body: { text: square, balloonInches: 20 } }, options)).toMatchObject({ leastBalloons: 2 });
  });
  test('what is not there or makes no sense is refused', async () => {
    const status = async (path: string, init?: RequestInit): Promise<number> => (await ask(path, init)).status;
    const post = (body: unknown): RequestInit => ({ method: 'POST', body: JSON.stringify(body), headers: json });
    expect(await status('/api/figures/cat/picture.svg')).toBe(404);
    expect(await status('/api/figures/dog/picture.svg?colourway=green')).toBe(404);
    expect(await status('/api/figures/dog/picture.svg?step=999')).toBe(422);
    expect(await status('/api/figures/dog/picture.svg?view=behind')).toBe(422);
    expect(await status('/api/figures/dog/card.pdf?paper=A5')).toBe(422);
    expect(await status('/api/menu-board.pdf?gig=fair')).toBe(409);
    expect(await status('/api/menu-board.pdf?gig=none')).toBe(404);
    expect(await status('/api/frame', post({}))).toBe(422);
    expect(await status('/api/frame', post({ text: 'edge A B five' }))).toBe(422);
    expect(await status('/api/frame', post({ solid: 'prism 200', edgeInches: 5, balloonInches: 2 }))).toBe(422);
  });
});
