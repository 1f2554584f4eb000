/** The page about frames (`docs/frames.md`): every block is read, and the sentence below it is worked out again. Our own notation, no outside source. */
import { readFileSync } from 'node:fs';
import { resolve } from 'node:path';
import { planFrame, readFrame, readyFrame, verifyTrails, writeFrame } from '@twistwright/repertoire';
import { expect, test } from 'vitest';

const page = readFileSync(resolve(import.meta.dirname, '../../docs/frames.md'), 'utf8');
const blocks = [...page.matchAll(/```frame\n([\s\S]*?)```\n(.*)\n/gu)].map(([, text = '', sentence = '']) => ({ text, sentence }));

test('there are blocks to read', () => {
  expect(blocks.length).toBeGreaterThanOrEqual(2);
});

test.each(blocks)('$sentence', ({ text, sentence }) => {
  const frame = readFrame(text);
  if (!frame.ok) throw new Error(frame.error[0]?.sentence);
  expect(readFrame(writeFrame(frame.value))).toMatchObject({ ok: true });
  const claims = [...sentence.matchAll(/(\d+) balloons? of (?:any length|(\d+) inches)/gu)];
  expect(claims.length).toBeGreaterThan(0);
  for (const [, count, inches] of claims) {
    const plan = planFrame(frame.value, inches === undefined ? {} : { balloonInches: Number(inches) });
    expect(plan.ok && [plan.value.trails.length, plan.value.proven]).toEqual([Number(count), true]);
    expect(plan.ok && verifyTrails(frame.value, plan.value.trails, inches === undefined ? undefined : Number(inches))).toEqual([]);
  }
});

test('every ready frame that the page names is there', () => {
  const section = /## Ready ones\n([\s\S]*?)\n## /u.exec(page)?.[1] ?? '';
  const names = [...section.matchAll(/`([^`]+)`/gu)].map(([, name = '']) => name);
  expect(names.length).toBeGreaterThan(10);
  for (const name of names) expect(readyFrame(name, 5).ok).toBe(true);
});
