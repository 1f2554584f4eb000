import { expect, test } from 'vitest';
import { begun, changed, redone, undone } from './use-undoable.ts';

test('what was undone can be done again, until something new is done', () => {
  const two = changed(changed(begun('a'), 'ab', undefined), 'abc', undefined);
  expect(undone(two).value).toBe('ab');
  expect(redone(undone(two)).value).toBe('abc');
  const other = changed(undone(two), 'x', undefined);
  expect([redone(other).value, undone(other).value]).toEqual(['x', 'ab']);
});
test('letters of one word are undone together', () => {
  const word = ['h', 'he', 'hey'].reduce((history, value) => changed(history, value, 'typing 3'), begun(''));
  expect(undone(word).value).toBe('');
  expect(undone(changed(word, 'hey you', 'typing 4')).value).toBe('hey');
});
test('nothing to undo or to do again leaves things as they are', () => {
  expect(undone(begun('a')).value).toBe('a');
  expect(redone(begun('a')).value).toBe('a');
});
