import { isTube, makerKey, measurementProblems, sizeOf } from '@twistwright/repertoire';
import type { LocalDate, Problem } from '@twistwright/units';
import type { BalloonTest } from './balloon-test.ts';
import type { Book } from './book.ts';
import { type Names, sizesOf, unknownName } from './check-names.ts';
import { errorAt, warningAt } from './problem-codes.ts';

/** Tests whose measurements cannot be, or that name what the book does not have. */
export function checkBalloonTests(book: Book, names: Names, today: LocalDate): readonly Problem[] {
  const sizes = sizesOf(book);
  return (book.balloonTests ?? []).flatMap((test, index): readonly Problem[] => {
    const path = ['balloonTests', index] as const;
    const by = `Test "${test.id}"`;
    const size = sizeOf(test.size, sizes);
    return [
      ...unknownName(names, 'size', test.size, [...path, 'size'], by),
      ...unknownName(names, 'item', test.item, [...path, 'item'], by),
      ...(size === undefined || size.shape === 'tube'
        ? []
        : [
            errorAt(
              'test.no-tube',
              [...path, 'size'],
              `${by} is of a ${size.code}: only tubes have a tail and a stretch.`,
              'Name a size code such as 260.',
            ),
          ]),
      ...(size !== undefined && isTube(size) ? measurementProblems(size, test) : []).map((problem) => ({
        ...problem,
        path: [...path, ...problem.path],
        sentence: `${by}: ${problem.sentence}`,
      })),
      ...checkItem(book, test, by, path),
      ...(test.day > today
        ? [warningAt('test.future', [...path, 'day'], `${by} was made on ${test.day}, which is yet to come.`, 'Write the day of the test.')]
        : []),
    ];
  });
}

function checkItem(book: Book, test: BalloonTest, by: string, path: Problem['path']): readonly Problem[] {
  const item = book.items.find((entry) => entry.id === test.item);
  if (item === undefined) return [];
  if (item.kind !== 'balloon' || item.size !== test.size)
    return [
      errorAt('test.other-item', [...path, 'item'], `${by} is of a ${test.size}, and item "${item.id}" is not.`, 'Name another item.'),
    ];
  if (test.maker === undefined || item.maker === undefined || makerKey(test.maker) === makerKey(item.maker)) return [];
  return [
    warningAt(
      'test.other-item',
      [...path, 'item'],
      `${by} is of balloons of ${test.maker}, and item "${item.id}" is made by ${item.maker}.`,
      'Name the same maker in both, or leave the item out.',
    ),
  ];
}
