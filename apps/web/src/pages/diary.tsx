import { Link } from '@tanstack/react-router';
import { addDays, clockOf, type LocalDate, monthNames, shortDate, weekdayNames, weekdayOf } from '@twistwright/units';
import { Fragment, type ReactElement } from 'react';
import { useBook } from '../book/use-book.ts';
import { type DiaryDay, diaryDays, type GigOnDay } from '../diary/diary-days.ts';
import { clashSentence, diarySentence, gapSentence, tiredSentence } from '../diary/diary-words.ts';
import { type GigOutlook, marksOf } from '../diary/gig-marks.ts';
import { Page } from '../frame/page.tsx';
import { Empty } from '../parts/empty.tsx';
import { Marks } from '../parts/marks.tsx';
import { Measured } from '../parts/measured.tsx';
import { DayRuler } from '../pictures/day-ruler.tsx';
import { useOutlooks } from '../planning/use-outlooks.ts';

/** What is coming, and is each gig ready? */
export function Diary(): ReactElement {
  const { book, today } = useBook();
  const days = diaryDays(book, today);
  const outlooks = useOutlooks();
  const gigs = days.flatMap((day) => day.gigs);
  const isReady = (on: GigOnDay, day: DiaryDay): boolean =>
    marksOf(on.gig, today, clashesFor(day, on), outlooks.get(on.gig.id)).every((mark) => mark.state === 'done');
  const ready = days.reduce((sum, day) => sum + day.gigs.filter((on) => isReady(on, day)).length, 0);
  const from = Math.min(8 * 60, ...gigs.map((on) => Math.floor(on.leaves / 60) * 60));
  const to = Math.max(21 * 60, ...gigs.map((on) => Math.ceil(on.home / 60) * 60));
  return (
    <Page title="Diary" whose={book.business.name}>
      <div className="title" style={{ paddingBottom: 8 }}>
        <h1 className="say" style={{ maxWidth: '18em' }}>
          {diarySentence(days, today, ready)}
        </h1>
      </div>
      {days.length === 0 ? (
        <Empty sentence="No gig yet. Add the first one, and its page says whether you can serve it.">
          <Link className="btn full" to="/gigs/new">
            Add a gig
          </Link>
        </Empty>
      ) : (
        <>
          <p className="lead">Today is {shortDate(today)}. Inflated is time at the gig; the flat ends are driving and setting up.</p>
          {months(days).map((month) => (
            <Fragment key={month.name}>
              <h2 className="month">{month.name}</h2>
              <Scale from={from} to={to} />
              <ol className="days">
                {month.days.map(({ day, before }) => (
                  <Fragment key={day.day}>
                    {before !== undefined && (
                      <li className="gap">
                        <p>{before}</p>
                      </li>
                    )}
                    <Day day={day} from={from} to={to} outlooks={outlooks} />
                  </Fragment>
                ))}
              </ol>
            </Fragment>
          ))}
          <div className="row" style={{ marginTop: 40 }}>
            <Link className="btn full" to="/gigs/new">
              Add a gig
            </Link>
          </div>
        </>
      )}
    </Page>
  );
}

interface DayProps {
  readonly day: DiaryDay;
  readonly from: number;
  readonly to: number;
  readonly outlooks: ReadonlyMap<string, GigOutlook>;
}
function Day({ day, from, to, outlooks }: DayProps): ReactElement {
  const { book, today } = useBook();
  return (
    <li className="day">
      <h3 className="date">
        <b>{Number(day.day.slice(8))}</b>
        <span>{weekdayNames[weekdayOf(day.day) - 1]}</span>
      </h3>
      <div className="hours">
        <Measured>
          {(width) => (
            <DayRuler
              width={width}
              from={from}
              to={to}
              clashes={day.clashes}
              gigs={day.gigs.map((on) => ({ name: on.gig.name, leaves: on.leaves, starts: on.starts, ends: on.ends, home: on.home }))}
            />
          )}
        </Measured>
        {day.gigs.map((on) => (
          <div className="gig" key={on.gig.id}>
            <div>
              <Link to="/gigs/$gig" params={{ gig: on.gig.id }}>
                {on.gig.name}
              </Link>
              <span className="note">
                {on.gig.starts} to {on.gig.ends}
                {on.gig.where === undefined ? '' : `, ${on.gig.where.name}`}; leave {clockOf(on.leaves)}, back {clockOf(on.home)}
              </span>
            </div>
            <Marks marks={marksOf(on.gig, today, clashesFor(day, on), outlooks.get(on.gig.id))} />
          </div>
        ))}
        {day.clashes.map((clash) => (
          <p className="clash" key={`${clash.first.id} ${clash.second.id}`}>
            {clashSentence(book, clash)}
          </p>
        ))}
        {day.tired.map((tired) => (
          <p className="clash" key={tired.artist}>
            {tiredSentence(book, tired)}
          </p>
        ))}
      </div>
    </li>
  );
}

const clashesFor = (day: DiaryDay, on: GigOnDay): boolean => day.clashes.some((clash) => clash.first === on.gig || clash.second === on.gig);

function Scale({ from, to }: { readonly from: number; readonly to: number }): ReactElement {
  const first = Math.ceil(from / 240) * 240;
  const hours = Array.from({ length: Math.floor((to - first) / 240) + 1 }, (_, index) => first + index * 240);
  return (
    <div className="scale" aria-hidden="true">
      {hours.map((minute) => {
        const share = (minute - from) / (to - from);
        return (
          <span
            key={minute}
            className={share < 0.03 ? 'first' : share > 0.97 ? 'last' : ''}
            style={{ left: `${(share * 100).toFixed(2)}%` }}
          >
            {clockOf(minute)}
          </span>
        );
      })}
    </div>
  );
}

interface Month {
  readonly name: string;
  readonly days: readonly { readonly day: DiaryDay; readonly before: string | undefined }[];
}
function months(days: readonly DiaryDay[]): readonly Month[] {
  const nameOf = (day: LocalDate): string => `${monthNames[Number(day.slice(5, 7)) - 1]} ${day.slice(0, 4)}`;
  const rows = days.map((day, index) => ({ day, before: gapSentence(days[index - 1]?.day ?? addDays(day.day, -1), day.day) }));
  return [...new Set(days.map((day) => nameOf(day.day)))].map((name) => ({
    name,
    days: rows.filter((row) => nameOf(row.day.day) === name),
  }));
}
