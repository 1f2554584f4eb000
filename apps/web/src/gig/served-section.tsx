import { type Gig, lineSettingsOf, planningSettingsOf } from '@twistwright/books';
import { sayForecast } from '@twistwright/planner';
import { minuteOf } from '@twistwright/units';
import type { ReactElement } from 'react';
import { useBook } from '../book/use-book.ts';
import { Because } from '../parts/because.tsx';
import { Measured } from '../parts/measured.tsx';
import { Crowd, CrowdKey } from '../pictures/crowd.tsx';
import type { GigView } from '../planning/gig-view.ts';
import { between, occasionOfGig, promiseSentence } from '../planning/gig-words.ts';

export interface ServedSectionProps {
  readonly gig: Gig;
  readonly view: GigView;
  /** The plan as booked, while something differs from it. */
  readonly before: GigView | undefined;
}

/** Can I serve them? The sentence, the line over the afternoon, and why. */
export function ServedSection({ gig, view, before }: ServedSectionProps): ReactElement {
  const { book } = useBook();
  const { forecast } = view;
  const said = sayForecast(gig, forecast);
  const occasion = occasionOfGig(gig);
  const hasLine = (gig.kind === 'line' || gig.kind === 'party') && forecast.line.length > 1;
  return (
    <section className="served">
      <p className="say" aria-live="polite">
        {said.answer}
      </p>
      {before !== undefined && <p className="lead before">Before: {sayForecast(gig, before.forecast).answer}</p>}
      <p className="lead more">{said.more.join(' ')}</p>
      {gig.kind !== 'class' && gig.kind !== 'made to order' && (
        <p className="more">{promiseSentence(forecast, planningSettingsOf(book).promise, view.artistsNeeded)}</p>
      )}
      {hasLine && (
        <>
          <Measured className="pic">
            {(width) => (
              <Crowd
                width={width}
                startsAt={minuteOf(gig.starts)}
                minutes={minuteOf(gig.ends) - minuteOf(gig.starts)}
                waiting={forecast.line}
                stepMinutes={5}
                closes={forecast.chanceOfClosing >= 0.5 ? forecast.closedAt : undefined}
                before={before?.forecast.line.map((at) => at.p50)}
                occasion={occasion}
              />
            )}
          </Measured>
          <div style={{ marginTop: 10 }}>
            <CrowdKey most={Math.max(...forecast.line.map((at) => at.p90))} occasion={occasion} />
          </div>
        </>
      )}
      <Because ask={`Why ${Math.round(forecast.served.p50)}?`}>
        <Facts gig={gig} view={view} />
      </Because>
      <Because ask="All numbers">
        <Numbers gig={gig} view={view} />
      </Because>
    </section>
  );
}

/** Where the number comes from: pace, crowd, settings, tries. */
function Facts({ gig, view: { forecast, minutesEach } }: { readonly gig: Gig; readonly view: GigView }): ReactElement {
  const { book } = useBook();
  const settings = lineSettingsOf(book, gig);
  const factor = settings.weatherFactor;
  const per100 = (share: number): string => String(Number((share * 100).toFixed(1)));
  return (
    <>
      <p>
        One guest takes about <b>{minutesEach.toFixed(1)} minutes</b> with choosing, making and thanks, so one artist at the figures' own
        pace serves about <b>{Math.round(60 / Math.max(0.1, minutesEach))} an hour</b>, slower by {per100(settings.fatiguePerHour)} in 100
        with every hour
        {factor === 1 ? '' : `; the weather multiplies making by ${factor}`}.
      </p>
      {gig.guests !== undefined && (
        <p>
          You expect {gig.guests}; siblings and grown-ups nobody mentioned add {per100(settings.hiddenShare)} in 100, and{' '}
          {per100(settings.repeatShare)} in 100 come back. That makes about <b>{Math.round(forecast.arrived.p50)}</b> (
          {between(forecast.arrived)}).
        </p>
      )}
      <p>
        The minutes are those of your figures; what the book does not set is a shipped default, common practice without a published source.{' '}
        {forecast.runs.toLocaleString('en')} tries with seed {planningSettingsOf(book).seed}: the mean is {forecast.served.mean.toFixed(1)},
        and would differ by about {Math.max(0.1, forecast.served.error).toFixed(1)} with other luck.
      </p>
    </>
  );
}

function Numbers({ gig, view: { forecast } }: { readonly gig: Gig; readonly view: GigView }): ReactElement {
  const { book } = useBook();
  const rows = [
    ['Come', forecast.arrived, 0],
    ['Served', forecast.served, 0],
    ['Come after the line has closed', forecast.turnedAway, 0],
    ['See the line and go on', forecast.notJoined, 0],
    ['Give up waiting', forecast.gaveUp, 0],
    ['Still wait at the end', forecast.unserved, 0],
    ['Want what cannot be made', forecast.disappointed, 0],
    ['Longest line, guests', forecast.longestLine, 0],
    ['Mean wait, minutes', forecast.meanWait, 1],
    ['Longest wait, minutes', forecast.longestWait, 1],
    ['Last one done, minutes after the start', forecast.finish, 0],
    ['Balloons that pop', forecast.pops, 0],
  ] as const;
  return (
    <div className="scroll">
      <table>
        <caption className="skip">Forecast of {gig.name}</caption>
        <thead>
          <tr>
            <th scope="col">What</th>
            <th scope="col" className="num">
              10th
            </th>
            <th scope="col" className="num">
              middle
            </th>
            <th scope="col" className="num">
              90th
            </th>
            <th scope="col" className="num">
              mean
            </th>
          </tr>
        </thead>
        <tbody>
          {rows.map(([what, spread, digits]) => (
            <tr key={what}>
              <th scope="row">{what}</th>
              <td className="num">{spread.p10.toFixed(digits)}</td>
              <td className="num">{spread.p50.toFixed(digits)}</td>
              <td className="num">{spread.p90.toFixed(digits)}</td>
              <td className="num">
                {spread.mean.toFixed(1)} <span className="sp">(error {spread.error.toFixed(2)})</span>
              </td>
            </tr>
          ))}
          {forecast.busy.map(({ artist, share }, index) => (
            // biome-ignore lint/suspicious/noArrayIndexKey: the same artist may be booked twice
            <tr key={`${artist} ${index}`}>
              <th scope="row">{book.artists.find((entry) => entry.id === artist)?.name ?? artist} makes, in 100 minutes</th>
              {[share.p10, share.p50, share.p90].map((value, at) => (
                // biome-ignore lint/suspicious/noArrayIndexKey: three fixed columns
                <td className="num" key={at}>
                  {Math.round(value * 100)}
                </td>
              ))}
              <td className="num">{(share.mean * 100).toFixed(1)}</td>
            </tr>
          ))}
        </tbody>
      </table>
    </div>
  );
}
