import { basename } from 'node:path';
import { type BalloonTest, type Book, checkBook, layDates, makersOfSize, sizesOf, workingsOf } from '@twistwright/books';
import { fitChangeAnswer, readBook, writeBook } from '@twistwright/contract';
import { counted, type FitChange, fitChanges, isNewVerdict, sayFitChange } from '@twistwright/planner';
import { isTube, makerKey, measurementProblems, sizeOf, type Tube } from '@twistwright/repertoire';
import { addDays, daysBetween, type Problem } from '@twistwright/units';
import { writeCalibration } from './calibration-page.ts';
import type { Asked } from './figure-command.ts';
import { readText, refuse } from './open-book.ts';
import type { ExitCode } from './outside.ts';
import { type Page, pageFor } from './page.ts';

/** What is known of the balloons of a size code: by the tests of the book, and by one more that stands on the command line. */
export async function calibrateSize(asked: Asked): Promise<ExitCode> {
  const { args, outside, book, name } = asked;
  const size = sizeOf(name, sizesOf(book));
  if (size === undefined || !isTube(size)) {
    outside.err(`"${name}" is no size code of a tube.\n`);
    return 1;
  }
  const test = testIn(asked, size);
  if (typeof test === 'string') {
    outside.err(`${test}\n`);
    return 2;
  }
  const after = test === undefined ? book : { ...book, balloonTests: [...(book.balloonTests ?? []), test] };
  const problems = test === undefined ? [] : problemsOf(size, test, after, asked);
  if (problems.length > 0) return refuse(problems, name, args, outside);
  if (test !== undefined && args.has('save')) {
    const unsaved = await save(test, asked);
    if (unsaved !== undefined) return refuse(unsaved, args.text('book') ?? '', args, outside);
  }
  const workings = workingsOf(after);
  const makers = makersAsked(asked, after, size, test);
  const changes = test === undefined ? [] : fitChanges(book, after);
  if (args.has('json')) {
    const known = makers.map((maker) => workings(size, maker));
    const figures = changes.map((change) => fitChangeAnswer(change, book.business.ruler));
    const answer = { calibrations: known, ...(test === undefined ? {} : { test, figures, saved: args.has('save') }) };
    outside.out(`${JSON.stringify(answer, undefined, 2)}\n`);
    return 0;
  }
  const page = pageFor(outside.isTerminal);
  for (const maker of makers) writeCalibration(page, workings(size, maker), book.business.ruler ?? 'in');
  if (test !== undefined) writeChanges(page, changes, asked);
  outside.out(page.text());
  return 0;
}

/** `10.6,10.8` as numbers; undefined for anything else. */
function numbersIn(text: string | undefined): readonly number[] | undefined {
  if (text === undefined) return [];
  const numbers = text.split(',').map((part) => (part.trim() === '' ? Number.NaN : Number(part)));
  return numbers.every(Number.isFinite) ? numbers : undefined;
}

/** The test on the command line; undefined if nothing was measured, a sentence if it cannot be understood. */
function testIn({ args, book, today }: Asked, size: Tube): BalloonTest | undefined | string {
  const [flat, full, twists] = [numbersIn(args.text('flat')), numbersIn(args.text('full')), numbersIn(args.text('twists'))];
  const [bubbles, tailInches, leftInches] = twists ?? [];
  const isGiven = bubbles !== undefined && tailInches !== undefined && leftInches !== undefined;
  if (flat === undefined || full === undefined || twists === undefined || (twists.length > 0 && (!isGiven || twists.length > 3)))
    return '--flat and --full take inches with commas between, --twists takes bubbles, tail before, tail after.';
  if (flat.length + full.length + twists.length === 0)
    return args.has('save') ? 'There is nothing to save: give --flat, --full or --twists.' : undefined;
  if (args.has('save') && args.text('book') === undefined) return 'Say which book to save it in: --book FILE.';
  const [maker, item] = [args.text('maker'), args.text('item')];
  return {
    id: newTestId(book, size.code, today),
    day: today,
    size: size.code,
    ...(maker === undefined ? {} : { maker }),
    ...(item === undefined ? {} : { item }),
    ...(flat.length === 0 ? {} : { flatInches: flat }),
    ...(full.length === 0 ? {} : { fullInches: full }),
    ...(isGiven ? { twists: [{ bubbles, tailInches, leftInches }] } : {}),
  };
}

function newTestId(book: Book, size: string, day: string): string {
  const taken = new Set((book.balloonTests ?? []).map(({ id }) => id));
  const base = `${size}-${day}`;
  let id = base;
  for (let number = 2; taken.has(id); number++) id = `${base}-${number}`;
  return id;
}

function problemsOf(size: Tube, test: BalloonTest, after: Book, { today }: Asked): readonly Problem[] {
  const measured = measurementProblems(size, test);
  if (measured.length > 0) return measured;
  const place = (after.balloonTests?.length ?? 0) - 1;
  return checkBook(after, { today }).filter(
    ({ path: [list, index], weight }) => list === 'balloonTests' && index === place && weight === 'error',
  );
}

/** Puts the test into the file; problems if that is not possible. In an example book its day is laid back to the days of the file. */
async function save(test: BalloonTest, { args, outside, today }: Asked): Promise<readonly Problem[] | undefined> {
  const path = args.text('book') ?? '';
  const text = await readText(path, outside);
  if (typeof text !== 'string') return [text];
  const read = readBook(text, { name: basename(path) });
  if (!read.ok) return read.error;
  const { laidOn } = read.value;
  const laid = layDates(read.value, today).laidOn;
  const day = laidOn === undefined || laid === undefined ? test.day : addDays(test.day, daysBetween(laid, laidOn));
  const balloonTests = [...(read.value.balloonTests ?? []), { ...test, day }];
  await outside.writeFile(path, writeBook({ ...read.value, balloonTests }, path.toLowerCase().endsWith('.json') ? 'json' : 'yaml'));
  return undefined;
}

/** The maker that was named, or whose balloons were measured; else all that the book knows of this size. */
function makersAsked({ args }: Asked, after: Book, size: Tube, test: BalloonTest | undefined): readonly (string | undefined)[] {
  const maker = args.text('maker');
  const known = makersOfSize(after, size.code);
  if (maker !== undefined) return [known.find((entry) => makerKey(entry) === makerKey(maker)) ?? maker];
  return test !== undefined || known.length === 0 ? [undefined] : known;
}

/** Of figures whose verdict stays. */
const mostShown = 3;
function writeChanges(page: Page, changes: readonly FitChange[], { args, book }: Asked): void {
  const verdicts = changes.filter(isNewVerdict);
  const others = changes.slice(verdicts.length);
  if (book.figures.length > 0)
    page.tell(
      changes.length === 0
        ? 'No figure changes by more than a hand would notice.'
        : `${counted(changes.length, 'figure')} ${changes.length === 1 ? 'changes' : 'change'}; the verdict of ${verdicts.length === 0 ? 'none' : verdicts.length} does.`,
    );
  for (const change of [...verdicts, ...others.slice(0, mostShown)]) page.tell(sayFitChange(change, book.business.ruler));
  if (others.length > mostShown)
    page.tell(`And ${others.length - mostShown} more are blown up a little differently; --json lists all of them.`);
  page.tell(
    args.has('save')
      ? `The test is in ${args.text('book')} now.`
      : 'Nothing is written: with --book FILE and --save the test goes into the book.',
  );
}
