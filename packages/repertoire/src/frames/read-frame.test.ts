import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { checkFrame, type Frame } from './frame.ts';
import { readFrame, writeFrame } from './read-frame.ts';
import { readFrameJson } from './read-frame-json.ts';
import { readyFrame } from './ready-frames.ts';

test('lines, comments, quotes, centimetres, unicode', () => {
  const read = readFrame('# a crown\nframe Crown for Ana\nedge "left ear" B 5 dark red # front\n\n  loop B 10.16cm\nEDGE Ä B .5in');
  expect(read).toEqual({
    ok: true,
    value: {
      name: 'Crown for Ana',
      joints: [{ name: 'left ear' }, { name: 'B' }, { name: 'Ä' }],
      edges: [
        { from: 'left ear', to: 'B', lengthInches: 5, colour: 'dark red' },
        { from: 'B', to: 'B', lengthInches: 4 },
        { from: 'Ä', to: 'B', lengthInches: 0.5 },
      ],
    },
  });
});

describe('mistakes have line and column', () => {
  const mistakes: readonly (readonly [string, string, number | undefined, number | undefined])[] = [
    ['', 'frame.no-edges', undefined, undefined],
    ['frame Crown', 'frame.no-edges', undefined, undefined],
    ['edge A B 5\nwire A B 5', 'frame.word', 2, 1],
    ['edge A B', 'frame.edge-form', 1, 1],
    ['edge A B five', 'frame.length', 1, 10],
    ['edge A B 0', 'frame.edge-length', 1, 10],
    ['edge A B -2', 'frame.edge-length', 1, 10],
    ['edge A B NaN', 'frame.length', 1, 10],
    ['edge A B 1e9', 'frame.length', 1, 10],
    ['edge A "B 5', 'frame.quote', 1, 8],
    ['joint A\njoint B\nedge A C 5', 'frame.joint-unknown', 3, 8],
    ['joint A\njoint A\nloop A 5', 'frame.joint-twice', 2, 7],
    ['joint A at 1 2\nloop A 5', 'frame.joint-place', 1, 9],
    ['joint', 'frame.joint-unnamed', 1, 1],
    ['edge "" B 5', 'frame.joint-unnamed', 1, 6],
  ];
  test.each(mistakes)('%j is %s', (text, code, line, column) => {
    const read = readFrame(text);
    expect(read.ok ? undefined : [read.error[0]?.code, read.error[0]?.line, read.error[0]?.column]).toEqual([code, line, column]);
  });
});

const name = fc
  .string({ minLength: 1, maxLength: 12, unit: 'grapheme' })
  .filter((text) => text.trim() !== '' && !/["\n\r\u2028\u2029]/u.test(text) && text === text.normalize('NFC'));
const frames = fc
  .tuple(
    fc.uniqueArray(name, { minLength: 1, maxLength: 6 }),
    fc.array(fc.tuple(fc.nat(), fc.nat(), fc.integer({ min: 1, max: 10_000_000 })), { minLength: 1, maxLength: 20 }),
  )
  .map(
    ([names, list]): Frame => ({
      joints: names.map((joint) => ({ name: joint })),
      edges: list.map(([from, to, thousandths]) => ({
        from: names[from % names.length] as string,
        to: names[to % names.length] as string,
        lengthInches: thousandths / 1000,
      })),
    }),
  );

test('writing and reading again gives the same frame', () => {
  fc.assert(
    fc.property(frames, (frame) => {
      expect(readFrame(writeFrame(frame))).toEqual({ ok: true, value: frame });
      expect(readFrameJson(JSON.parse(JSON.stringify(frame)))).toEqual({ ok: true, value: frame });
    }),
    { seed: 21, numRuns: 400 },
  );
  const solid = readyFrame('cube', 5);
  expect(solid.ok && readFrame(writeFrame(solid.value)).ok).toBe(true);
});

test('no text and no JSON makes it throw; what it accepts is in order', () => {
  const lines = fc.array(
    fc.oneof(
      fc.constantFrom('edge A B 5 red', 'loop A 4', 'joint A', 'frame x', 'edge A', '"', 'joint B at 0 0 1'),
      fc.string({ unit: 'binary' }),
    ),
  );
  fc.assert(
    fc.property(lines, (list) => {
      const read = readFrame(list.join('\n'));
      if (read.ok) expect(checkFrame(read.value)).toEqual([]);
      else expect(read.error.length).toBeGreaterThan(0);
    }),
    { seed: 22, numRuns: 2000 },
  );
  fc.assert(
    fc.property(fc.jsonValue(), (value) => {
      expect(readFrameJson(value).ok).toBe(false);
      expect(readFrameJson({ edges: [value] }).ok).toBe(false);
      expect(readFrameJson({ edges: [{ from: 'A', to: 'B', lengthInches: 5 }], joints: value }).ok).toBe(
        Array.isArray(value) && value.includes('A') && value.includes('B'),
      );
    }),
    { seed: 23, numRuns: 1000 },
  );
});

test('a misspelt key is not lost', () => {
  const read = readFrameJson({ edges: [{ from: 'A', to: 'B', lengthInches: 5, color: 'red' }] });
  expect(read.ok ? undefined : read.error[0]?.sentence).toContain('color');
});

test('a million lines are read', () => {
  const read = readFrame(Array.from({ length: 1_000_000 }, (_, index) => `edge ${index} ${index + 1} 5`).join('\n'));
  expect(read.ok && read.value.edges.length).toBe(1_000_000);
});
