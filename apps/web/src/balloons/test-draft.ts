import type { BalloonTest, Book } from '@twistwright/books';
import { measurementProblems, type Tube, type TwoMinuteTest } from '@twistwright/repertoire';
import { cmPerInch, type LocalDate } from '@twistwright/units';
import { newId } from '../book/change.ts';
import { FieldReader } from '../forms/field-reader.ts';
import type { Ruler } from './balloon-words.ts';

/** The texts of the form of a two-minute test. */
export interface TestDraft {
  readonly ruler: Ruler;
  readonly flats: readonly string[];
  readonly full: string;
  readonly bubbles: string;
  readonly tail: string;
  readonly left: string;
  readonly item: string;
}
/** Balloons that are laid along the ruler. */
const flatCount = 5;
/** The tail that is left for the row of bubbles: a length that is easy to see on either ruler. */
export const usualTail: Readonly<Record<Ruler, string>> = { in: '6', cm: '15' };
export const emptyTestDraft = (ruler: Ruler): TestDraft => ({
  ruler,
  flats: Array.from({ length: flatCount }, () => ''),
  full: '',
  bubbles: '10',
  tail: usualTail[ruler],
  left: '',
  item: '',
});

/** Finer than any ruler; keeps 27.5 cm from becoming 10.826771653543306 in. */
const toInches = (value: number, ruler: Ruler): number => Number((ruler === 'cm' ? value / cmPerInch : value).toFixed(3));

interface ReadTest {
  /** What was measured and can be right; undefined if nothing. */
  readonly test: TwoMinuteTest | undefined;
  /** A sentence for every field that cannot be; under `nothing` if all are empty. */
  readonly problems: Readonly<Record<string, string>>;
}

/** Reads the form; measurements that cannot be are left out of the test and said at their field. */
export function readTestDraft(draft: TestDraft, size: Tube): ReadTest {
  const { ruler } = draft;
  const read = new FieldReader();
  const length = (field: string, text: string, example: string): number | undefined => {
    const value = read.optionalNumber(field, text, { example, most: 2000 });
    return value === undefined || read.problems[field] !== undefined ? undefined : toInches(value, ruler);
  };
  const isRight = (field: string, test: TwoMinuteTest): boolean => {
    const [problem] = measurementProblems(size, test, ruler);
    if (problem !== undefined) read.refuse(field, problem.sentence);
    return problem === undefined;
  };
  const flatInches = draft.flats.flatMap((text, index) => {
    const field = `flat${index}`;
    const value = length(field, text, ruler === 'cm' ? '27.5' : '10.8');
    return value !== undefined && isRight(field, { flatInches: [value] }) ? [value] : [];
  });
  const full = length('full', draft.full, ruler === 'cm' ? '150' : '59');
  const fullInches = full !== undefined && isRight('full', { flatInches, fullInches: [full] }) ? [full] : [];
  const twists = readTwists(draft, read, length, isRight);
  const test: TwoMinuteTest = {
    ...(flatInches.length === 0 ? {} : { flatInches }),
    ...(fullInches.length === 0 ? {} : { fullInches }),
    ...(twists.length === 0 ? {} : { twists }),
  };
  const isNothing = Object.keys(test).length === 0;
  if (isNothing && read.isFine) read.refuse('nothing', 'Write at least one measurement.');
  return { test: isNothing ? undefined : test, problems: read.problems };
}

function readTwists(
  draft: TestDraft,
  read: FieldReader,
  length: (field: string, text: string, example: string) => number | undefined,
  isRight: (field: string, test: TwoMinuteTest) => boolean,
): NonNullable<TwoMinuteTest['twists']> {
  if (draft.left.trim() === '') return [];
  const bubbles = read.number('bubbles', draft.bubbles, { example: '10', least: 1, most: 100, whole: true });
  const tailInches = length('tail', draft.tail, usualTail[draft.ruler]);
  const leftInches = length('left', draft.left, draft.ruler === 'cm' ? '7' : '3');
  if (tailInches === undefined) read.refuse('tail', 'A length is missing: how much was flat before the first bubble?');
  if (tailInches === undefined || leftInches === undefined || read.problems.bubbles !== undefined) return [];
  const twists = [{ bubbles, tailInches, leftInches }];
  return isRight('left', { twists }) ? twists : [];
}

/** The test as it goes into the book. */
export function testOfDraft(measured: TwoMinuteTest, { size, maker, item, today, book }: TestWords): BalloonTest {
  return {
    id: newId(`${size} ${maker ?? ''} ${today}`, book.balloonTests ?? []),
    day: today,
    size,
    ...(maker === undefined ? {} : { maker }),
    ...(item === '' ? {} : { item }),
    ...measured,
  };
}
interface TestWords {
  readonly size: string;
  readonly maker: string | undefined;
  /** Empty: not said. */
  readonly item: string;
  readonly today: LocalDate;
  readonly book: Pick<Book, 'balloonTests'>;
}
