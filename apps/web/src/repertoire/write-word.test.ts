import { readRecipe, recipeWords } from '@twistwright/repertoire';
import { describe, expect, test } from 'vitest';
import { writeWord } from './write-word.ts';

const words = recipeWords.flatMap((kind) => kind.words);
const word = (writes: string) => {
  const found = words.find((entry) => entry.writes === writes);
  if (found === undefined) throw new Error(`no word writes ${writes}`);
  return found;
};
/** `|` is the cursor; what is selected afterwards stands between brackets. */
const write = (text: string, writes: string): string => {
  const written = writeWord(text.replace('|', ''), text.indexOf('|'), word(writes));
  return `${written.text.slice(0, written.from)}[${written.text.slice(written.from, written.to)}]${written.text.slice(written.to)}`;
};

describe('a word goes where it belongs', () => {
  test.each([
    ['|', 'balloon dog: 260 in body', 'balloon [dog: 260 in body]'],
    ['balloon dog: 260 in body|', 'bubble 3 nose', 'balloon dog: 260 in body\n  bubble [3 nose]'],
    ['balloon dog: 260 in body\n  bub|ble 2\n  lock', 'bubble 3 nose', 'balloon dog: 260 in body\n  bubble 2\n  bubble [3 nose]\n  lock'],
    ['balloon dog: 260 in body\n|', 'lock', 'balloon dog: 260 in body\n  lock[]'],
    ['balloon dog: 260 in body\n  repeat x 2|', 'bubble 3 nose', 'balloon dog: 260 in body\n  repeat x 2\n    bubble [3 nose]'],
    ['balloon d: 260 in b\n  repeat x 2\n    bubble 1|', 'end', 'balloon d: 260 in b\n  repeat x 2\n    bubble 1\n  end[]'],
    ['balloon d: 260 in b\n  bubble 1|', 'minutes 2.5', 'balloon d: 260 in b\n  bubble 1\nminutes [2.5]'],
    ['  bubble 3 nose|', 'forward', '  bubble 3 nose, [forward]'],
    ['  bubble 3 nose| # big', 'forward', '  bubble 3 nose, [forward] # big'],
    ['  bubble 3 nose, up|, x 2', 'left', '  bubble 3 nose, up [left], x 2'],
    ['  bu|bble 3 nose, up, x 2', 'left', '  bubble 3 nose, up [left], x 2'],
    ['  loop 6, up, facing left|', 'back', '  loop 6, up, facing left [back]'],
    ['  bubble 3, x 2|', 'x 2 mirrored', '  bubble 3, [x 2 mirrored]'],
    ['  bubble 3 nose,|', 'split', '  bubble 3 nose, [split]'],
    ['  bubble 3 nose|', 'rest', '  bubble [rest] nose'],
    ['  bubble 8 cm nose|', 'half of rest', '  bubble [half of rest] nose'],
    ['  bubble 1/2 of rest|, up', '8 cm', '  bubble [8 cm], up'],
    ['  bubble |', 'rest', '  bubble [rest]'],
    ['balloon eyes: round-5 in eyes|', 'printed eyes', 'balloon eyes: round-5 in eyes, [printed eyes]'],
    ['balloon dog: 260 in body|', 'up', 'balloon dog: 260 in body\n  bubble [3 neck, up]'],
  ])('%s', (text, writes, expected) => expect(write(text, writes)).toBe(expected));

  test('a figure can be tapped together without a keyboard', () => {
    let text = '';
    let cursor = 0;
    const tapped = [
      'balloon dog: 260 in body',
      'leave 3.5',
      'bubble 3 nose',
      'forward',
      'bubble 3 nose',
      'up',
      'left',
      'x 2 mirrored',
      'lock',
    ];
    for (const writes of [
      ...tapped,
      'repeat x 3',
      'bubble 3 nose',
      'x 2',
      'end',
      'bubble 3 nose',
      'rest',
      'finish with marker: eyes on nose',
    ]) {
      const written = writeWord(text, cursor, word(writes));
      text = written.text;
      cursor = written.to;
    }
    expect(readRecipe(text)).toMatchObject({ ok: true });
    expect(text).toBe(`balloon dog: 260 in body
  leave 3.5
  bubble 3 nose, forward
  bubble 3 nose, up left, x 2 mirrored
  lock
  repeat x 3
    bubble 3 nose, x 2
  end
  bubble rest nose
finish with marker: eyes on nose`);
  });
  test('whatever word is written anywhere, the rest of the text stays and the cursor is in it', () => {
    const text = '# a\nballoon d: 260 in b # c\n\n  bubble 3 nose, up\n  repeat x 2\n    fold 2\n  end\n';
    for (const entry of words)
      for (let cursor = 0; cursor <= text.length; cursor++) {
        const written = writeWord(text, cursor, entry);
        expect(written.from).toBeLessThanOrEqual(written.to);
        expect(written.to).toBeLessThanOrEqual(written.text.length);
        expect(written.text).toContain(entry.stands === 'line' ? entry.example : entry.writes);
        expect(written.text.match(/#/gu)).toHaveLength(2);
      }
  });
});
