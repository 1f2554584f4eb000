import { type BalloonTest, type Book, checkBook, makersOfSize, sizesOf, workingsOf } from '@twistwright/books';
import { fitChangeAnswer } from '@twistwright/contract';
import { fitChanges } from '@twistwright/planner';
import { isTube, sizeOf, type Tube } from '@twistwright/repertoire';
import { type Done, done, doneAsJson, type Refused, refused } from './outcome.ts';

/** What is believed of a size code's balloons: of one maker, or of all that the book knows. */
export function balloonsKnown({ book, size: code, maker }: { readonly book: Book; readonly size: string; readonly maker?: string }) {
  const size = tubeIn(book, code);
  if (size.kind === 'refused') return size;
  const known = makersOfSize(book, code);
  const makers = maker !== undefined ? [maker] : known.length === 0 ? [undefined] : known;
  const workings = workingsOf(book);
  return doneAsJson({ calibrations: makers.map((one) => workings(size.value, one)) });
}

/** What one more test would change. */
export function balloonTestTried({ book, test }: { readonly book: Book; readonly test: BalloonTest }) {
  const size = tubeIn(book, test.size);
  if (size.kind === 'refused') return size;
  const after: Book = { ...book, balloonTests: [...(book.balloonTests ?? []), test] };
  const place = (after.balloonTests?.length ?? 0) - 1;
  const problems = checkBook(after, { today: test.day }).flatMap((problem) => {
    const [list, index, ...path] = problem.path;
    return list === 'balloonTests' && index === place && problem.weight === 'error' ? [{ ...problem, path: ['body', ...path] }] : [];
  });
  if (problems.length > 0) return refused(422, 'That was not measured right.', problems);
  return doneAsJson({
    before: workingsOf(book)(size.value, test.maker),
    after: workingsOf(after)(size.value, test.maker),
    figures: fitChanges(book, after).map((change) => fitChangeAnswer(change, book.business.ruler)),
  });
}

function tubeIn(book: Book, code: string): Done<Tube> | Refused {
  const size = sizeOf(code, sizesOf(book));
  if (size === undefined) return refused(404, `There is no size code "${code}".`);
  return isTube(size) ? done(size) : refused(409, `"${code}" is no tube: it has no tail and no stretch.`);
}
