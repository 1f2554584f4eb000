import { execFileSync } from 'node:child_process';
import { readFile } from 'node:fs/promises';
import { join } from 'node:path';
import { api, call } from '@twistwright/contract';
import { bagsOfKit } from '@twistwright/planner';
import { date, money } from '@twistwright/units';
import { afterAll, beforeAll, expect, test } from 'vitest';
import { json, openApp, root } from './testing/open-app.ts';

const { ask, options, close, logged } = await openApp();
const figures = ['dog', 'sword', 'tulip', 'swan', 'mouse', 'giraffe'];
const wishes = { budget: money(6000), hours: 6, kind: 'parties' as const, mostColours: 5, figures };

beforeAll(async () => {
  await call(api.book.put, { query: { name: 'book.yaml' }, body: await readFile(join(root, 'demo/book.yaml'), 'utf8') }, options);
});
afterAll(async () => {
  await close();
  expect(logged).toEqual([]);
});

test('hand-out and learning sheet are PDFs on the paper asked for', async () => {
  for (const route of [api.kitPapers.handout, api.kitPapers.learning]) {
    const file = await call(route, { query: { paper: 'Letter', name: 'For Bea' }, body: wishes }, options);
    const info = execFileSync('pdfinfo', ['-'], { input: Buffer.from(await file.arrayBuffer()), encoding: 'utf8' });
    expect(info).toContain('612 x 792');
  }
  const answer = await ask('/api/kit/handout', { method: 'POST', body: JSON.stringify(wishes), headers: json });
  expect(answer.headers.get('content-type')).toBe('application/pdf');
});
test('page, CSV and growth', async () => {
  const page = await call(api.kitPapers.page, { query: { name: 'For Bea' }, body: wishes }, options);
  expect(page).toContain('<title>For Bea: ');
  expect((await call(api.kitPapers.csv, { body: wishes }, options)).split('\r\n')[0]).toBe('bought,where,what,bags,pieces,price GBP,why');
  const earnings = { hoursPerGig: 2, feePerHour: money(2500), tipPerGuest: money(50), costPerGig: money(500), gigsPerWeek: 1 };
  expect(await call(api.kitPapers.growth, { body: { wishes, earnings } }, options)).toMatchObject({
    paidBack: { chance: 1, gigs: { p50: expect.any(Number) } },
    purchases: expect.arrayContaining([expect.objectContaining({ name: 'apron' })]),
  });
});
test('papers are about the very kit that was seen; what is not to be had like that is planned anew', async () => {
  const plan = await call(api.kit, { body: wishes }, options);
  const bags = [...bagsOfKit(plan.kit)].map(([offer, count]) => ({ offer, bags: count }));
  const listed = async (bought: typeof bags): Promise<readonly string[]> =>
    (await call(api.kitPapers.csv, { body: { ...wishes, bought } }, options)).trim().split('\r\n');
  const whole = await listed(bags);
  expect(whole).toEqual((await call(api.kitPapers.csv, { body: wishes }, options)).trim().split('\r\n'));
  // One line fewer, which leaves the order large enough for its shop: only what was sent is listed.
  const last = plan.kit.lines.at(-1);
  if (last === undefined) throw new Error('no balloons are bought');
  expect(await listed(bags.filter(({ offer }) => offer !== last.offer))).not.toEqual(
    expect.arrayContaining([expect.stringContaining(`,${last.name},`)]),
  );
  expect(await listed([{ offer: 'gone', bags: 1 }])).toEqual(whole);
});
test('too little money is refused with what would do', async () => {
  await expect(call(api.kitPapers.handout, { query: {}, body: { ...wishes, budget: money(1) } }, options)).rejects.toMatchObject({
    status: 409,
    detail: { problems: [expect.objectContaining({ code: 'kit.budget', todo: expect.stringContaining('A kit works from £') })] },
  });
});
test('what is possible instead: the least money, with what was changed for it', async () => {
  const nearest = await call(api.nearestKit, { body: { ...wishes, budget: money(1), figures: ['dog'] } }, options);
  expect(nearest.changes).toEqual([expect.stringMatching(/^With £\d+\.\d\d instead of £0\.01\.$/u)]);
  expect(nearest.plan.kit.figures.map(({ figure, met }) => [figure, met > 0])).toEqual([['dog', true]]);
  await expect(call(api.nearestKit, { body: { ...wishes, figures: [] } }, options)).rejects.toMatchObject({ status: 409 });
});
test('a kept kit is put, listed and deleted; one that names an offer that has gone is kept with a warning', async () => {
  const kit = {
    id: 'bea',
    name: 'For Bea',
    savedOn: date('2026-06-02'),
    wishes,
    lines: [{ offer: 'ropewalk-260-red-25', bags: 1 }],
    tools: ['pump'],
  };
  await call(api.kits.put, { params: { id: 'bea' }, body: kit }, options);
  expect(await call(api.kits.list, {}, options)).toEqual([kit]);
  expect((await call(api.book.get, {}, options)).kits).toEqual([kit]);
  await call(api.kits.put, { params: { id: 'bea' }, body: { ...kit, lines: [{ offer: 'gone', bags: 1 }] } }, options);
  expect((await call(api.check, { body: {} }, options)).problems.map((one) => one.code)).toContain('offer.unknown');
  await call(api.kits.delete, { params: { id: 'bea' } }, options);
  expect((await call(api.book.get, {}, options)).kits).toBeUndefined();
});
