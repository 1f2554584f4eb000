import { readFileSync } from 'node:fs';
import { join } from 'node:path';
import { layDates } from '@twistwright/books';
import { readBook } from '@twistwright/contract';
import { date, money } from '@twistwright/units';
import { afterAll, expect, test } from 'vitest';
import { root } from '../testing/open-app.ts';
import { figureCard, figurePicture } from './figure-jobs.ts';
import { frame } from './frame-jobs.ts';
import { kit } from './kit-jobs.ts';
import { openJobs } from './open-jobs.ts';
import { plan } from './plan-jobs.ts';

const today = date('2026-06-02');
const read = readBook(readFileSync(join(root, 'demo/book.yaml'), 'utf8'), { name: 'book.yaml' });
if (!read.ok) throw new Error(read.error[0]?.sentence);
const book = layDates(read.value, today);
const jobs = openJobs({ threads: 1, queue: 8, seconds: 60 });
afterAll(() => jobs.close());

test('a plan out of a thread is the plan worked out here, solver and all, to the last digit', async () => {
  const order = { book, isSent: false, options: { today, gig: 'gull-lane', runs: 150, seed: 7 } };
  const here = await plan(order);
  expect(here.kind === 'json' && here.json).toBe((await jobs.run('plan', order)).text);
});
test('so is a kit', async () => {
  const figures = ['dog', 'sword', 'tulip', 'swan'];
  const order = { book, wishes: { budget: money(6000), hours: 6, kind: 'parties' as const, figures } };
  const here = kit(order);
  expect(here.kind === 'json' && here.json).toBe((await jobs.run('kit', order)).text);
});
test('so are a picture, a card and a frame', async () => {
  const picture = { book, figure: 'swan', view: 'quarter' as const };
  expect(figurePicture(picture)).toEqual({ kind: 'value', value: await jobs.run('figurePicture', picture) });
  const card = await figureCard({ book, figure: 'dog', made: today });
  const printed = await jobs.run('figureCard', { book, figure: 'dog', made: today });
  expect(card.kind === 'value' && Buffer.compare(card.value, printed)).toBe(0);
  const order = { frame: { solid: 'icosahedron', edgeInches: 5 }, wishes: { balloonInches: 40 } };
  const planned = frame(order);
  expect(planned.kind === 'json' && planned.json).toBe((await jobs.run('frame', order)).text);
});
