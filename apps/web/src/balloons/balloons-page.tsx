import { useSearch } from '@tanstack/react-router';
import { makersOfSize, sizesOf, testsOf, workingsOf } from '@twistwright/books';
import { isTube, makerKey, type Tube } from '@twistwright/repertoire';
import { type FormEvent, type ReactElement, useDeferredValue, useMemo, useState } from 'react';
import { useBook, useChangeBook } from '../book/use-book.ts';
import { NotSaved } from '../forms/saving.tsx';
import { Page } from '../frame/page.tsx';
import { Because } from '../parts/because.tsx';
import { TextField } from '../parts/field.tsx';
import { Slot } from '../parts/slot.tsx';
import { Undo } from '../parts/undo.tsx';
import './balloons.css';
import { balloonSentence, weightSentence, whoseWords } from './balloon-words.ts';
import { KeptTests } from './kept-tests.tsx';
import { knownMakers } from './known-makers.ts';
import { TestChanges } from './test-changes.tsx';
import { emptyTestDraft, readTestDraft, testOfDraft } from './test-draft.ts';
import { TestFields } from './test-fields.tsx';
import { WorkingKey, WorkingPicture } from './working-picture.tsx';
import { WorkingTable } from './working-table.tsx';

/** In the list of makers: one that the book does not have yet. It has a space at its end, so that no maker is called that. */
const another = 'another ';

/** What are my balloons like, and how do I find out? */
export function BalloonsPage(): ReactElement {
  const { book } = useBook();
  const search = useSearch({ from: '/open/repertoire/your-balloons' });
  const tubes = useMemo(() => tubesOf(book), [book]);
  const [code, setCode] = useState(search.size);
  const [choice, setChoice] = useState(search.maker);
  const [newMaker, setNewMaker] = useState('');
  const size = tubes.find((entry) => entry.code === code) ?? tubes[0];
  if (size === undefined) throw new Error('there is no size code of a tube');
  const makers = knownMakers(book);
  const chosen = choice ?? makersOfSize(book, size.code)[0] ?? '';
  const typed = newMaker.trim();
  const maker = chosen === another ? (typed === '' ? undefined : typed) : chosen === '' ? undefined : chosen;
  return (
    <Page title="Your balloons" whose={book.business.name}>
      <Bag
        // What was written is of one kind of balloon.
        key={`${size.code} ${chosen}`}
        size={size}
        maker={makers.find((entry) => makerKey(entry) === makerKey(maker)) ?? maker}
        isUnnamed={chosen === another && typed === ''}
        ask={
          <>
            <form className="ask" aria-label="Which balloons" onSubmit={(event) => event.preventDefault()}>
              <span>Show the</span>
              <Slot
                label="Size code"
                value={size.code}
                onChange={setCode}
                options={tubes.map((entry) => [entry.code, entry.code] as const)}
              />
              <span>of</span>
              <Slot
                label="Maker"
                value={chosen}
                onChange={setChoice}
                options={[...makers.map((entry) => [entry, entry] as const), ['', 'a maker that is not named'], [another, 'another maker']]}
              />
            </form>
            {chosen === another && (
              <div className="form">
                <TextField label="Its name" value={newMaker} note="As it stands on the bag." onChange={setNewMaker} />
              </div>
            )}
          </>
        }
      />
      <KeptTests />
    </Page>
  );
}

/** Tubes that the book has balloons or tests of, then the others. */
function tubesOf(book: ReturnType<typeof useBook>['book']): readonly Tube[] {
  const used = new Set([
    ...(book.balloonTests ?? []).map((test) => test.size),
    ...book.items.flatMap((item) => (item.kind === 'balloon' ? [item.size] : [])),
  ]);
  return sizesOf(book)
    .filter(isTube)
    .sort(
      (a, b) =>
        Number(b.code === '260') - Number(a.code === '260') ||
        Number(used.has(b.code)) - Number(used.has(a.code)) ||
        a.code.localeCompare(b.code),
    );
}

interface BagProps {
  readonly size: Tube;
  readonly maker: string | undefined;
  /** Another maker was chosen and has no name yet. */
  readonly isUnnamed: boolean;
  readonly ask: ReactElement;
}

/** What is known of one kind of balloon, and a test of one more bag of it. */
function Bag({ size, maker, isUnnamed, ask }: BagProps): ReactElement {
  const { book, today } = useBook();
  const { change, undo, isSaving, error } = useChangeBook();
  const [draft, setDraft] = useState(() => emptyTestDraft(book.business.ruler ?? 'in'));
  const [isAsked, setAsked] = useState(false);
  const [isKept, setKept] = useState(false);
  const written = useDeferredValue(draft);
  const { test, problems } = useMemo(() => readTestDraft(written, size), [written, size]);
  const after = useMemo(() => {
    if (test === undefined) return book;
    const more = testOfDraft(test, { size: size.code, maker, item: '', today, book });
    return { ...book, balloonTests: [...(book.balloonTests ?? []), more] };
  }, [test, size, maker, today, book]);
  const before = useMemo(() => workingsOf(book)(size, maker), [book, size, maker]);
  const now = useMemo(() => workingsOf(after)(size, maker), [after, size, maker]);
  const { ruler } = draft;
  const keep = (event: FormEvent): void => {
    event.preventDefault();
    const read = readTestDraft(draft, size);
    setAsked(true);
    if (read.test === undefined || Object.keys(read.problems).length > 0 || isUnnamed) return;
    change({ list: 'balloonTests', put: testOfDraft(read.test, { size: size.code, maker, item: draft.item, today, book }) }, () => {
      setDraft(emptyTestDraft(ruler));
      setAsked(false);
      setKept(true);
    });
  };
  return (
    <>
      <div className="title" style={{ paddingBottom: 8 }}>
        <h1 className="say" style={{ maxWidth: '17em' }}>
          {balloonSentence(before, ruler)}
        </h1>
      </div>
      <p className="lead">{weightSentence(before)}</p>
      {ask}
      <section aria-label="What is known">
        <WorkingPicture now={now} before={before} tests={testsOf(after, size)} ruler={ruler} />
        <WorkingKey />
        <Because ask="Why these numbers?">
          <WorkingTable working={now.working} ruler={ruler} />
          <p>
            A usual balloon comes first. Every bag that you measure pulls the numbers towards itself; tests of other makers pull too, and
            less. Nobody knows how much makers, bags and balloons differ: that three parts in ten of the usual band are makers, one and a
            half bags and two and a half single balloons is an estimate. So even after many tests the next balloon keeps a band.
          </p>
        </Because>
      </section>
      <section>
        <h2>
          Measure a bag of {size.code} {whoseWords(maker)} in two minutes.
        </h2>
        <form className="measuring" aria-label="Two-minute test" onSubmit={keep} noValidate>
          <TestFields
            draft={draft}
            size={size}
            maker={maker}
            problems={isAsked ? readTestDraft(draft, size).problems : shownWhileWriting(problems)}
            onChange={(next) => {
              setKept(false);
              setDraft(next);
            }}
          />
          <TestChanges book={book} after={after} before={before} now={now} ruler={ruler} isWritten={test !== undefined} />
          <div className="keeping">
            {isAsked && isUnnamed && <p className="err">Write the name of the maker above, or choose that it is not named.</p>}
            <button type="submit" className="btn full" disabled={isSaving}>
              Keep the test
            </button>
            {isKept && undo !== undefined && (
              <Undo
                sentence="The test is in the book; air and tail of your figures follow it."
                action="Take it back"
                onUndo={() => {
                  undo();
                  setKept(false);
                }}
              />
            )}
            <NotSaved error={error} />
          </div>
        </form>
      </section>
    </>
  );
}

/** An empty form is no mistake before somebody wants to keep it. */
const shownWhileWriting = ({ nothing: _nothing, ...problems }: Readonly<Record<string, string>>): Readonly<Record<string, string>> =>
  problems;
