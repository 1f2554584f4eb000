import { Link, useParams } from '@tanstack/react-router';
import { type Book, type Gig, planningSettingsOf } from '@twistwright/books';
import { gigAfter, type WhatIf } from '@twistwright/planner';
import { longDate } from '@twistwright/units';
import { type ReactElement, useDeferredValue, useEffect, useMemo, useState } from 'react';
import { useBook, useChangeBook } from '../book/use-book.ts';
import { diaryDays } from '../diary/diary-days.ts';
import { marksOf } from '../diary/gig-marks.ts';
import { NotSaved } from '../forms/saving.tsx';
import { Page } from '../frame/page.tsx';
import { AdviceSection } from '../gig/advice-section.tsx';
import { ChargeSection } from '../gig/charge-section.tsx';
import { CompareSection } from '../gig/compare-section.tsx';
import { NeedsSection } from '../gig/needs-section.tsx';
import { PackingSection } from '../gig/packing-section.tsx';
import { ServedSection } from '../gig/served-section.tsx';
import { WhatIfPanel } from '../gig/what-if-panel.tsx';
import { Marks } from '../parts/marks.tsx';
import { Refusal } from '../parts/refusal.tsx';
import { Undo } from '../parts/undo.tsx';
import { changeBetween, type Dials, dialsOf } from '../planning/change-of-mind.ts';
import type { GigView } from '../planning/gig-view.ts';
import { useGigView } from '../planning/use-gig-view.ts';
import { counted, listed } from '../words/counted.ts';
import { Lost } from './lost.tsx';

/** Can I serve them, what will it take, what do I charge? */
export function GigPage(): ReactElement {
  const { book } = useBook();
  const { gig: id } = useParams({ from: '/open/gigs/$gig' });
  const gig = book.gigs.find((entry) => entry.id === id);
  return gig === undefined ? <Lost /> : <GigPlan gig={gig} key={gig.id} />;
}

/** A finger that has not moved for so long is at rest. */
const restMilliseconds = 250;

function GigPlan({ gig }: { readonly gig: Gig }): ReactElement {
  const { book, today } = useBook();
  const { change, undo, error } = useChangeBook();
  const booked = dialsOf(book, gig, planningSettingsOf(book).chanceOfRunningOut);
  const [moved, setMoved] = useState<Partial<Dials>>({});
  const dials: Dials = { ...booked, ...moved };
  const isResting = useIsResting(JSON.stringify(moved));
  const whatIf = changeBetween(booked, dials);
  const isChanged = Object.keys(whatIf).length > 0;
  const { view, problems, isBusy } = useGigView(gig.id, whatIf, dials.chance, isResting);
  const before = useBookedView(view, isChanged);
  const compared = isChanged ? before : undefined;
  const whatIfText = JSON.stringify(whatIf);
  const shownGig = useMemo(
    () => (isChanged ? gigAfter(book, gig, JSON.parse(whatIfText) as WhatIf) : gig),
    [book, gig, isChanged, whatIfText],
  );
  const shown = useMemo(
    () => (view === undefined ? undefined : { view, gig: shownGig, chance: dials.chance }),
    [view, shownGig, dials.chance],
  );
  // The sentence and its picture follow the finger; what stands below them comes a moment later and never holds them up.
  const below = useDeferredValue(shown, undefined);
  return (
    <Page title={gig.name} whose={book.business.name} isBusy={isBusy || below !== shown}>
      <div className="title">
        <div>
          <h1>{gig.name}</h1>
          <p>{whenAndWhere(book, gig)}</p>
        </div>
        <Marks marks={marksOf(gig, today, hasClash(book, gig), outlookFrom(before ?? view))} />
      </div>
      <NotSaved error={error} />
      {undo !== undefined && !isChanged && <Undo sentence="Written down." action="Put it back" onUndo={undo} />}
      <div className="plan">
        <div className="upper">
          <div className="first">
            {problems.length > 0 && (
              <Refusal sentence={problems[0]?.sentence ?? ''} instead={problems[0]?.todo ?? ''}>
                <Link className="btn" to="/gigs/$gig/edit" params={{ gig: gig.id }}>
                  Change the gig
                </Link>
              </Refusal>
            )}
            {view === undefined ? (
              problems.length === 0 && <p className="lead more">Trying it out …</p>
            ) : (
              <ServedSection gig={shownGig} view={view} before={compared} />
            )}
          </div>
          <WhatIfPanel gig={gig} booked={booked} dials={dials} onMove={(part) => setMoved({ ...moved, ...part })} />
        </div>
        {below !== undefined && (
          <div className="rest">
            {compared !== undefined && (
              <CompareSection
                before={compared}
                after={below.view}
                onBack={() => setMoved({})}
                onKeep={() => {
                  change({ list: 'gigs', put: shownGig });
                  setMoved({});
                }}
              />
            )}
            {gig.kind !== 'class' && gig.kind !== 'made to order' && (
              <AdviceSection gig={shownGig} onMenu={(figures) => setMoved({ ...moved, figures })} />
            )}
            <NeedsSection {...below} />
            <ChargeSection charge={below.view.charge} />
            <PackingSection gig={gig} packing={below.view.packing} />
            <div className="row noprint" style={{ marginTop: 40 }}>
              <Link className="btn full" to="/gigs/$gig/edit" params={{ gig: gig.id }}>
                Change the gig
              </Link>
            </div>
          </div>
        )}
      </div>
    </Page>
  );
}

/** True once the text has not changed for a while; at first at once. */
function useIsResting(text: string): boolean {
  const [rested, setRested] = useState(text);
  useEffect(() => {
    const timer = setTimeout(() => setRested(text), restMilliseconds);
    return () => clearTimeout(timer);
  }, [text]);
  return rested === text;
}

/** The last view of the gig as it is booked, to compare with. */
function useBookedView(view: GigView | undefined, isChanged: boolean): GigView | undefined {
  const [kept, setKept] = useState<GigView>();
  useEffect(() => {
    if (!isChanged && view !== undefined) setKept(view);
  }, [view, isChanged]);
  return kept;
}

function whenAndWhere(book: Book, gig: Gig): string {
  const where = gig.where === undefined ? '' : `, ${gig.where.name}`;
  const names = gig.artists.map((id) => book.artists.find((artist) => artist.id === id)?.name ?? id);
  const who = names.length === 0 ? 'no artist yet' : `${counted(names.length, 'artist')}: ${listed(names)}`;
  return `${longDate(gig.day)}, ${gig.starts} to ${gig.ends}${where}. ${kindText(gig)}, ${who}.`;
}
const kindText = (gig: Gig): string =>
  ({ line: 'One line', party: 'A party', tables: 'Tables', strolling: 'Strolling', 'made to order': 'Made to order', class: 'A class' })[
    gig.kind
  ];

const hasClash = (book: Book, gig: Gig): boolean =>
  diaryDays(book, gig.day).some(
    (day) => day.day === gig.day && day.clashes.some((clash) => clash.first.id === gig.id || clash.second.id === gig.id),
  );

const outlookFrom = (view: GigView | undefined): Parameters<typeof marksOf>[3] =>
  view === undefined
    ? undefined
    : {
        short: view.needs.filter((need) => need.short > 0).length,
        awaited: view.needs.filter((need) => need.short === 0 && need.onOrder > 0 && need.before + need.enough > need.have).length,
        packingLines: view.packing.total,
        packedLines: view.packing.ticked,
        artistsNeeded: view.artistsNeeded,
      };
