import { describe, expect, test } from 'vitest';
import { readRecipe } from '../notation/read-recipe.ts';
import { unfold } from '../notation/unfold.ts';
import { writeRecipe } from '../notation/write-recipe.ts';
import type { Frame } from './frame.ts';
import { type FrameWishes, planFrame } from './plan-frame.ts';
import { readyFrame } from './ready-frames.ts';
import { directionWords, recipeOfFrame } from './recipe-of-frame.ts';

function recipe(frame: Frame, wishes: FrameWishes) {
  const plan = planFrame(frame, wishes);
  if (!plan.ok) throw new Error(plan.error[0]?.sentence);
  const made = recipeOfFrame(frame, plan.value);
  if (!made.ok) throw new Error(made.error[0]?.sentence);
  return { plan: plan.value, recipe: made.value };
}

const wanted: readonly (readonly [string, FrameWishes])[] = [
  ['tetrahedron', {}],
  ['cube', {}],
  ['octahedron', { balloonInches: 24 }],
  ['icosahedron', { balloonInches: 20 }],
  ['dodecahedron', { pops: {} }],
  ['cube', { pops: {}, balloonInches: 40 }],
  ['star 5', {}],
  ['pyramid 6', { balloonInches: 30 }],
  ['triakis octahedron', {}],
];

describe.each(wanted)('%s %j', (name, wishes) => {
  const frame = readyFrame(name, 4);
  if (!frame.ok) throw new Error(name);
  const { plan, recipe: made } = recipe(frame.value, wishes);

  test('unfolds to the graph of the frame', () => {
    const unfolded = unfold(made);
    expect(unfolded.problems).toEqual([]);
    expect(unfolded.joints).toBe(frame.value.joints.length);
    const kept = unfolded.bubbles.filter((bubble) => bubble.popped !== true);
    const pairs = kept.map(({ from, to }) => [Math.min(from, to), Math.max(from, to)].join(' '));
    expect(new Set(pairs).size).toBe(frame.value.edges.length);
    expect(kept).toHaveLength(frame.value.edges.length);
    expect(made.pieces).toHaveLength(plan.trails.length);
  });

  test('is read back from its notation', () => {
    const read = readRecipe(writeRecipe(made));
    expect(read.ok && read.value).toEqual(made);
  });
});

test('colours become roles, loops are loops, and odd names still work', () => {
  const frame: Frame = {
    joints: [{ name: 'left: ear, #1' }, { name: 'on' }, { name: 'knot' }],
    edges: [
      { from: 'left: ear, #1', to: 'on', lengthInches: 5, colour: 'red' },
      { from: 'on', to: 'on', lengthInches: 6, colour: 'red' },
      { from: 'on', to: 'knot', lengthInches: 5, colour: 'blue' },
      { from: 'knot', to: 'left: ear, #1', lengthInches: 5, colour: 'blue' },
    ],
  };
  const { recipe: made } = recipe(frame, {});
  expect(made.pieces.map((piece) => piece.role).toSorted()).toEqual(['blue', 'red']);
  expect(made.pieces.flatMap((piece) => piece.run).filter((move) => move.kind === 'loop')).toHaveLength(1);
  expect(unfold(made).joints).toBe(3);
  const read = readRecipe(writeRecipe(made));
  expect(read.ok && read.value).toEqual(made);
});

test('a frame beyond a recipe is refused with a sentence', () => {
  const frame: Frame = { joints: [{ name: 'A' }], edges: Array.from({ length: 5000 }, () => ({ from: 'A', to: 'A', lengthInches: 5 })) };
  const plan = planFrame(frame);
  const made = plan.ok ? recipeOfFrame(frame, plan.value) : undefined;
  expect(made?.ok === false && made.error[0]?.code).toBe('frame.recipe-too-large');
});

test('directions point within ten degrees of where the edge goes', () => {
  expect(directionWords([0, 0, 3])).toEqual(['up']);
  expect(directionWords([-1, 1, 0])).toEqual(['back', 'left']);
  const frame = readyFrame('snub dodecahedron', 1);
  const sign = { up: [0, 0, 1], down: [0, 0, -1], forward: [1, 0, 0], back: [-1, 0, 0], left: [0, 1, 0], right: [0, -1, 0] } as const;
  for (const { at = [0, 0, 1] as const } of frame.ok ? frame.value.joints : []) {
    const sum = directionWords(at).reduce((total, word) => total.map((value, axis) => value + (sign[word][axis] ?? 0)), [0, 0, 0]);
    const along = sum.reduce((total, value, axis) => total + value * (at[axis] ?? 0), 0) / Math.hypot(...sum) / Math.hypot(...at);
    expect(along).toBeGreaterThan(Math.cos(Math.PI / 18));
  }
});
