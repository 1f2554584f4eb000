import { describe, expect, test } from 'vitest';
import { piecesOf } from '../recipe.ts';
import { recipeProblems } from './problem-codes.ts';
import { readPlacedRecipe, readRecipe } from './read-recipe.ts';

const read = (text: string) => {
  const result = readRecipe(text);
  if (!result.ok) throw new Error(JSON.stringify(result.error));
  return result.value;
};
const problems = (text: string) => {
  const result = readRecipe(text);
  return result.ok ? [] : result.error;
};

describe('what can be said', () => {
  test('a header alone, with finish, print and number', () => {
    expect(read('balloon eyes: round-5 in eyes, finish pearl, printed eyes, x 2').pieces).toEqual([
      { name: 'eyes', size: 'round-5', role: 'eyes', finish: 'pearl', print: 'eyes', count: 2, run: [] },
    ]);
    expect(piecesOf(read('balloon eyes: round-5 in eyes, printed eyes, x 2'))).toEqual([
      { name: 'eyes', size: 'round-5', role: 'eyes', print: 'eyes', count: 2 },
    ]);
  });
  test('no balloons at all', () => {
    expect(read('')).toEqual({ pieces: [], finishing: [] });
    expect(read('# painted on the cheek\nminutes 2\nfinish with marker: a star')).toEqual({
      pieces: [],
      finishing: [{ with: 'marker', what: 'a star' }],
      minutes: 2,
    });
  });
  test('every move', () => {
    const { pieces } = read(`balloon a: 260 in body
      leave 2
      keep 1
      burp
      apple 2 nose
      mark face
      bubble 2 cheek, soft
      bubble 2 cheek
      lock
      roll 2 chin
      pinch 1 ear, split
      fold 4 wing, left, facing forward
      loop 4 wing, bend 90 up
      repeat x 2 mirrored
        bubble 1
      end
      lock last 2
      lock to face
      pop wing
      tuck nose into cheek
      bubble 1/3 of rest body
      bubble half of rest
      bubble rest
      flat 1 gap
      note Hold it.
      trim`);
    expect(pieces[0]).toMatchObject({ tailInches: 2, keepInches: 1, burped: true });
    expect(pieces[0]?.run.map((move) => move.kind)).toEqual(
      'apple mark bubble bubble lock roll pinch fold loop repeat lock lock pop tuck bubble bubble bubble flat note trim'.split(' '),
    );
    expect(pieces[0]?.run[6]).toEqual({ kind: 'pinch', length: 1, label: 'ear', split: true });
    expect(pieces[0]?.run[15]).toEqual({ kind: 'bubble', length: { part: 1, of: 2 } });
  });
  test('units, capitals, Unicode and line ends of any machine', () => {
    expect(read('BALLOON Löwe: 260 in Mähne\r\n Bubble 10.16 cm Nase\r\n bubble 3 in Ohr\rbubble 2 inches 耳').pieces[0]).toEqual({
      name: 'Löwe',
      size: '260',
      role: 'Mähne',
      count: 1,
      run: [
        { kind: 'bubble', length: 4, label: 'Nase' },
        { kind: 'bubble', length: 3, label: 'Ohr' },
        { kind: 'bubble', length: 2, label: '耳' },
      ],
    });
  });
  test('a name typed in two ways is one name', () => {
    expect(readRecipe('balloon a: 260 in b\nbubble 2\nmark caf\u00e9\nbubble 3\nlock to cafe\u0301').ok).toBe(true);
  });
  test('places of pieces and moves', () => {
    const placed = readPlacedRecipe('# dog\nballoon a: 260 in b\n  bubble 3, x 2');
    if (!placed.ok) throw new Error('unreadable');
    const piece = placed.value.recipe.pieces[0];
    const repeat = piece?.run[0];
    expect(piece && placed.value.places.get(piece)).toEqual({ line: 2, column: 1 });
    expect(repeat?.kind === 'repeat' && repeat.moves[0] && placed.value.places.get(repeat.moves[0])).toEqual({ line: 3, column: 3 });
  });
});

describe('what cannot be read or made, with line and column', () => {
  const head = 'balloon a: 260 in body\n';
  test.each([
    ['bubbel 3', 'recipe.word', 1, 1, 'Perhaps “bubble” is meant.'],
    ['  ear 3', 'recipe.word', 1, 3, 'Perhaps “pinch” is meant.'],
    ['bubble 3', 'recipe.no-balloon', 1, 1, 'Write first, for example: balloon dog: 260 in body'],
    ['balloon a 260', 'recipe.expected', 1, 8, 'For example: balloon dog: 260 in body'],
    ['balloon : 260 in b', 'recipe.name', 1, 9, 'Write one or more words.'],
    ['balloon a: in b', 'recipe.size', 1, 12, 'For example 260, 160 or round-5.'],
    ['balloon a: 260 of b', 'recipe.expected', 1, 16, 'For example: 260 in body'],
    ['balloon a: 266 in b', 'recipe.size', 1, 1, 'Perhaps “260” is meant.'],
    ['balloon a: 260 in b, shiny', 'recipe.expected', 1, 22, 'For example: balloon eyes: round-5 in eyes, printed eyes, x 2'],
    ['balloon a: 260 in b, x 1000', 'recipe.number', 1, 24, 'It has to be from 1 to 100.'],
    ['balloon a: 260 in b\nballoon a: 160 in c', 'recipe.same-name', 2, 1, 'Give one of them another name.'],
    [`${head}bubble 0`, 'recipe.number', 2, 8, 'It has to be from 0.05 to 100.'],
    [`${head}bubble -3`, 'recipe.number', 2, 8, 'It has to be from 0.05 to 100.'],
    [`${head}bubble 1e9`, 'recipe.number', 2, 8, 'Write digits with a point: 3 or 2.5.'],
    [`${head}bubble 1/2 ear`, 'recipe.number', 2, 8, 'Write 0.5, not 1/2; for a part of what is left write “1/2 of rest”.'],
    [`${head}bubble 2,5 ear`, 'recipe.expected', 2, 10, 'Write a length with a point, not a comma: 2.5.'],
    [`${head}bubble 2,5`, 'recipe.expected', 2, 10, 'Write a length with a point, not a comma: 2.5.'],
    [`${head}bubble`, 'recipe.number', 2, 7, 'Write a number, such as 3 or 2.5.'],
    [`${head}bubble 3 ear, upp`, 'recipe.expected', 2, 15, 'Perhaps “up” is meant.'],
    [`${head}bubble 3, up down`, 'recipe.direction', 2, 11, 'Leave one of them out.'],
    [`${head}bubble 3, up, left`, 'recipe.twice', 2, 15, undefined],
    [`${head}leave 3\nleave 4`, 'recipe.twice', 3, 1, 'Leave one of the lines out.'],
    [`${head}leave 3\ninflate 4`, 'recipe.twice', 3, 1, 'Leave one of the lines out.'],
    [`${head}repeat x 2\nbubble 3`, 'recipe.group', 2, 1, 'Write “end” on a line of its own after its last move.'],
    [`${head}end`, 'recipe.group', 2, 1, 'Leave this line out, or start the group with “repeat x 2”.'],
    [`${head}repeat x 2\nend`, 'recipe.group', 2, 1, 'Put the moves between “repeat” and “end”.'],
    [`${head}repeat x 99999999\nbubble 1\nend`, 'recipe.number', 2, 10, 'It has to be from 1 to 100.'],
    [`${head}${'repeat x 2\n'.repeat(5)}bubble 1\n${'end\n'.repeat(5)}`, 'recipe.group', 6, 1, 'At most 4 deep.'],
    [`${head}repeat x 100\nrepeat x 100\nbubble 0.1\nend\nend`, 'recipe.too-many', 1, 1, 'At most 2000 in one recipe.'],
    [`${head}${'bubble 1\n'.repeat(10_000)}`, 'recipe.too-many', 1, 1, 'At most 2000 in one recipe.'],
    [`${head}lock`, 'recipe.lock', 2, 1, 'Make more bubbles first, or lock fewer.'],
    [`${head}bubble 3\nlock to nose`, 'recipe.joint', 3, 1, 'Write “mark” and a name after the twist that is meant.'],
    [`${head}bubble 3\nmark nose\nbubble 2\nlock to nise`, 'recipe.joint', 5, 1, 'Perhaps “nose” is meant.'],
    [`${head}bubble 3\nmark knot`, 'recipe.name', 3, 6, 'Choose another name, or write “lock to knot”.'],
    [`${head}bubble 3\nmark n\nbubble 2\njoin to n`, 'recipe.joint', 5, 1, 'Write: lock to n'],
    [`${head}bubble 3\nmark n\nbubble 2\nmark n`, 'recipe.same-name', 5, 1, 'Give one of them another name.'],
    [`${head}repeat x 2\nbubble 3\nmark n\nend`, 'recipe.mark', 4, 1, 'Mark before or after the repeated part.'],
    [`${head}bubble 3\nroll 3`, 'recipe.roll', 3, 1, 'Write two bubbles and “lock” on the lines before.'],
    [`${head}bubble 3\ntulip 3`, 'recipe.first', 3, 1, 'Move this line to the start of the balloon.'],
    [`${head}pop`, 'recipe.pop', 2, 1, 'Pop after the bubble has been made.'],
    [`${head}bubble 3 nose\npop nase`, 'recipe.label', 3, 1, 'Perhaps “nose” is meant.'],
    [`${head}bubble 3 nose\nfinish with marker: eyes on head`, 'recipe.label', 3, 1, 'Labels so far: nose.'],
    [`${head}trim\nbubble 3`, 'recipe.after-trim', 3, 1, 'Make “trim” the last line of the balloon.'],
    ['balloon a: round-5 in b\nfold 3', 'recipe.round', 2, 1, 'Write “bubble” and how wide it is blown up.'],
    ['balloon a: round-5 in b\nbubble 3\nbubble 3', 'recipe.round', 3, 1, 'Write “split” after it to divide it into two balls.'],
    ['minutes 0', 'recipe.number', 1, 9, 'It has to be from 0.05 to 600.'],
    ['finish with glue: eyes', 'recipe.expected', 1, 7, 'For example: finish with marker: eyes on head, 0.2 minutes'],
    ['x'.repeat(200_001), 'recipe.too-long-text', 1, 1, undefined],
  ])('case %#', (text, code, line, column, todo) => {
    const first = problems(text)[0];
    expect(first).toMatchObject({ code, line, column, weight: 'error' });
    expect(first?.todo).toBe(todo);
    expect(Object.keys(recipeProblems)).toContain(first?.code);
  });
  test('all at once, and a lost header does not blame its lines', () => {
    expect(
      problems('ballon a: 260 in b\nballoon 260\n bubble 3\n fold x\nballoon c: 260 in d\n loop 0').map(({ line, code }) => [line, code]),
    ).toEqual([
      [1, 'recipe.word'],
      [2, 'recipe.expected'],
      [4, 'recipe.number'],
      [6, 'recipe.number'],
    ]);
    expect(problems('balloon a: 260 in b\nrepeat x\n bubble 3\nend').map(({ line, code }) => [line, code])).toEqual([[2, 'recipe.number']]);
    expect(problems('balloon a: 260 in b\nrepeat x 2\n bubbble\nend').map(({ line, code }) => [line, code])).toEqual([[3, 'recipe.word']]);
  });
  test('what is quoted is short and cannot be seen otherwise than it is', () => {
    const texts = [
      `${head}bubble ${'q'.repeat(190_000)}`,
      `${head}bubble ${'9'.repeat(190_000)}`,
      `${'🎈'.repeat(90_000)}`,
      `balloon a: ${'q'.repeat(9000)} in b`,
    ];
    for (const text of texts) {
      const [problem] = problems(text);
      expect(problem?.sentence.length).toBeLessThan(150);
      expect(problem?.sentence.isWellFormed()).toBe(true);
    }
    expect(problems('\u001b[2J\u202e 3')[0]?.sentence).toBe('“\ufffd[2J\ufffd” does not start a line.');
    for (const hidden of ['\u0000', '\u001b', '\u200b', '\u202e', '\u2066'])
      expect(problems(`${head}bubble 3 no${hidden}se`)).toMatchObject([
        { code: 'recipe.name', line: 2, column: 10, sentence: 'There is a character that cannot be seen in “no\ufffdse”.' },
      ]);
    for (const name of ['собака', '首', 'أذن', 'אוזן', '🐕', '👨‍👩‍👧', 'می‌خواهم']) expect(problems(`${head}bubble 3 ${name}`)).toEqual([]);
  });
  test('one mistake is told once, though it is repeated', () => {
    expect(problems(`${head}repeat x 5\nbubble 3\nmark n\nend`)).toHaveLength(1);
    expect(problems(Array.from({ length: 400 }, (_, at) => `balloon b${at}: 260 in b\n`).join(''))).toMatchObject([
      { code: 'recipe.too-many', line: 301, sentence: 'With “b300” there are 301 balloons.' },
    ]);
  });
  test('a thousand wrong lines are a hundred problems', () => {
    expect(problems('what\n'.repeat(1000))).toHaveLength(100);
  });
});
