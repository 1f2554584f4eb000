/**
 * Worked frames in `cases/frames`, each with what it expects; counted by hand from theorem 2 of E. D. Demaine, M. L. Demaine, V. Hart (CCCG 2008)
 * and from total length / balloon length. The frames are invented.
 */
import { readFileSync } from 'node:fs';
import { resolve } from 'node:path';
import { type FrameWishes, planFrame, readFrame, recipeOfFrame, verifyTrails } from '@twistwright/repertoire';
import { expect, test } from 'vitest';

interface Case {
  readonly file: string;
  readonly wishes: FrameWishes;
  readonly expects: {
    readonly balloons: number;
    readonly proven?: boolean;
    readonly balloonsForColours?: number;
    readonly totalInches?: number;
  };
}

const folder = resolve(import.meta.dirname, '../../cases/frames');
const cases: readonly Case[] = JSON.parse(readFileSync(`${folder}/expects.json`, 'utf8'));

test.each(cases)('$file $wishes', ({ file, wishes, expects }) => {
  const frame = readFrame(readFileSync(`${folder}/${file}`, 'utf8'));
  if (!frame.ok) throw new Error(frame.error[0]?.sentence);
  const plan = planFrame(frame.value, wishes);
  if (!plan.ok) throw new Error(plan.error[0]?.sentence);
  expect(verifyTrails(frame.value, plan.value.trails, wishes.balloonInches)).toEqual([]);
  expect({ ...plan.value, balloons: plan.value.trails.length }).toMatchObject(expects);
  expect(recipeOfFrame(frame.value, plan.value).ok).toBe(true);
});
