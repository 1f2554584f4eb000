import { readFileSync } from 'node:fs';
import { join } from 'node:path';
import { api, call, readBook } from '@twistwright/contract';
import { afterAll, beforeAll, describe, expect, test } from 'vitest';
import { json, openApp, root } from './testing/open-app.ts';

const { ask, options, close, logged, ports } = await openApp();
beforeAll(async () => {
  const read = readBook(readFileSync(join(root, 'demo/book.yaml'), 'utf8'), { name: 'book.yaml' });
  if (!read.ok) throw new Error(read.error[0]?.sentence);
  await ports.store.replace(read.value);
});
afterAll(async () => {
  await close();
  expect(logged).toEqual([]);
});

const short = {
  size: '260',
  maker: 'Ardle & Wynn',
  flatInches: [9.6, 9.7],
  fullInches: [46],
  twists: [{ bubbles: 10, tailInches: 6, leftInches: 1.5 }],
};
const known = (maker?: string) =>
  call(api.calibration.known, { params: { size: '260' }, query: maker === undefined ? {} : { maker } }, options);

describe('balloons over HTTP', () => {
  test('what is known of each maker of a size code, or of one of them', async () => {
    const { calibrations } = await known();
    expect(calibrations.map(({ maker, tests }) => [maker, tests])).toEqual([
      ['Ardle & Wynn', 3],
      ['Mossop Latex', 1],
      [undefined, 0],
    ]);
    const [one] = (await known('ardle  & wynn')).calibrations;
    expect(one?.working).toEqual(calibrations[0]?.working);
  });
  test('a test is tried without being kept, then kept, and a figure follows it; deleted it is gone', async () => {
    const tried = await call(api.calibration.tried, { body: short }, options);
    expect(tried.after.working.flat.mean).toBeLessThan(tried.before.working.flat.mean);
    expect(tried.after.tests).toBe(tried.before.tests + 1);
    expect(tried.figures.some(({ before, after }) => before === 'fits' && after !== 'fits')).toBe(true);
    expect((await known('Ardle & Wynn')).calibrations[0]).toEqual(tried.before);
    const red = () => call(api.repertoire.facts, { params: { id: 'dog' }, query: { colourway: 'red' } }, options);
    const blue = () => call(api.repertoire.facts, { params: { id: 'dog' }, query: { colourway: 'blue' } }, options);
    const [redBefore, blueBefore] = [await red(), await blue()];
    expect(redBefore.air.pieces[0]?.inflatedInches).not.toBe(blueBefore.air.pieces[0]?.inflatedInches);
    await call(api.balloonTests.put, { params: { id: 'new' }, body: { id: 'new', day: ports.today('Europe/London'), ...short } }, options);
    expect((await known('Ardle & Wynn')).calibrations[0]).toEqual(tried.after);
    expect((await red()).air.pieces[0]?.inflatedInches).toBeLessThan((redBefore.air.pieces[0]?.inflatedInches ?? 0) - 1);
    await call(api.balloonTests.delete, { params: { id: 'new' } }, options);
    expect((await known('Ardle & Wynn')).calibrations[0]).toEqual(tried.before);
  });
  test.each([
    [{ ...short, fullInches: [9] }, 422, 'Test "tried": A full length of 9 in is no longer than a flat balloon of the same test, 9.7 in.'],
    [{ ...short, flatInches: [-1] }, 422, 'flatInches'],
    [{ size: '260' }, 422, 'Nothing was measured.'],
    [{ ...short, item: 'gone' }, 422, 'names the item \\"gone\\"'],
    [{ ...short, size: '999' }, 404, 'There is no size code'],
    [{ ...short, size: 'round-5' }, 409, 'is no tube'],
  ])('%j is refused with a sentence', async (body, status, sentence) => {
    const answer = await ask('/api/calibration', { method: 'POST', body: JSON.stringify(body), headers: json });
    expect(answer.status).toBe(status);
    expect((await answer.text()).replaceAll('\\"tried\\"', '"tried"')).toContain(sentence);
  });
  test('a size code that is none is said so', async () => {
    const answer = await ask('/api/calibration/999');
    expect([answer.status, await answer.text()]).toEqual([404, expect.stringContaining('There is no size code')]);
  });
});
