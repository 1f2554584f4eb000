import { clockOf, type Spread } from '@twistwright/units';
import type { ReactElement } from 'react';
import { Pinch } from './pinch.tsx';

export interface CrowdProps {
  /** Width in pixels at which it is drawn; the text keeps its size. */
  readonly width: number;
  /** Minute of the day at which the gig starts. */
  readonly startsAt: number;
  readonly minutes: number;
  /** Guests waiting at each step of `stepMinutes`, first step at the start. */
  readonly waiting: readonly Pick<Spread, 'p10' | 'p50' | 'p90'>[];
  readonly stepMinutes: number;
  /** Minutes after the start at which the line closes; missing if it stays open. */
  readonly closes?: Pick<Spread, 'p10' | 'p50' | 'p90'> | undefined;
  /** The middle of the plan that this one is compared with. */
  readonly before?: readonly number[] | undefined;
  /** What one try is called: afternoon. */
  readonly occasion: string;
}

/** Guests for whom one head stands, so that a column never has more than 40 heads. */
export const guestsAHead = (most: number): number => (most <= 40 ? 1 : most <= 80 ? 2 : Math.ceil(most / 200) * 5);

/** The line of guests: one column a step, one head a guest. Solid in 9 tries of 10, grey in 5, a ring only in the longest 1. */
export function Crowd(props: CrowdProps): ReactElement {
  const { width, minutes, waiting, stepMinutes, closes, startsAt } = props;
  const small = width < 560;
  const height = small ? 250 : 310;
  const guides = guideCounts(Math.max(10, ...waiting.map((at) => at.p90), ...(props.before ?? [])));
  // Where the line is long from the start, the counts stand in a margin of their own.
  const left = (waiting[0]?.p90 ?? 0) >= (guides[0] ?? 0) ? 66 : small ? 4 : 6;
  const right = small ? 10 : 14;
  const top = small ? 30 : 36;
  const base = height - (small ? 40 : 46);
  const most = Math.max(10, ...waiting.map((at) => at.p90), ...(props.before ?? []));
  const each = guestsAHead(most);
  const columns = Math.max(2, Math.floor(minutes / stepMinutes) + 1);
  const columnWidth = (width - left - right) / (columns - 1);
  const rise = Math.min((base - top - 6) / (most / each), small ? 10 : 14);
  const radius = Math.max(1.2, Math.min(columnWidth * 0.42, rise * 0.44, small ? 4.1 : 6));
  const x = (column: number): number => left + column * columnWidth;
  const y = (head: number): number => base - 5 - radius - head * rise;
  const atMinute = (minute: number): number => left + (Math.min(minute, minutes) / stepMinutes) * columnWidth;
  const isShut = closes !== undefined && closes.p50 < minutes - 1;
  return (
    <svg className="crowd" viewBox={`0 0 ${width} ${height}`} width="100%" role="img" aria-label={sentenceOf(props)}>
      {isShut && (
        <rect
          x={atMinute(closes.p50)}
          y={top - 4}
          width={Math.max(0, width - right - atMinute(closes.p50))}
          height={base - top + 4}
          fill="url(#shut)"
        />
      )}
      {waiting.slice(0, columns).map((at, column) => (
        <Column key={x(column)} at={at} x={x(column)} y={y} radius={radius} each={each} />
      ))}
      <Ruler x={atMinute} base={base} minutes={minutes} startsAt={startsAt} small={small} />
      {props.before !== undefined && (
        <Before
          before={props.before.slice(0, columns)}
          x={x}
          y={(guests) => Math.min(base, y(guests / each) + rise / 2)}
          width={columnWidth}
        />
      )}
      {guides.map((count, index) => (
        <text key={count} x={left === 66 ? 0 : left} y={y(count / each - 1) + 4} className="ax" textAnchor="start">
          {count}
          {index === 0 ? ' guests' : ''}
        </text>
      ))}
      {isShut && <Closing at={atMinute} closes={closes} startsAt={startsAt} top={top} base={base} width={width} small={small} />}
    </svg>
  );
}

interface ColumnProps {
  readonly at: Pick<Spread, 'p10' | 'p50' | 'p90'>;
  readonly x: number;
  readonly y: (head: number) => number;
  readonly radius: number;
  readonly each: number;
}
/** One path a shade keeps a hundred columns light. */
function Column({ at, x, y, radius, each }: ColumnProps): ReactElement {
  const [solid, grey, ring] = [at.p10, at.p50, at.p90].map((guests) => Math.round(guests / each)) as [number, number, number];
  const dots = (from: number, to: number, r: number): string =>
    Array.from({ length: Math.max(0, to - from) }, (_, index) => y(from + index))
      .map((cy) => `M${(x - r).toFixed(1)} ${cy.toFixed(1)}a${r} ${r} 0 1 0 ${2 * r} 0a${r} ${r} 0 1 0 ${-2 * r} 0`)
      .join('');
  return (
    <>
      <path className="hd1" d={dots(0, solid, radius)} />
      <path className="hd2" d={dots(solid, grey, radius)} />
      <path className="hd3" d={dots(grey, ring, radius - 0.6)} />
    </>
  );
}

interface RulerProps {
  readonly x: (minute: number) => number;
  readonly base: number;
  readonly minutes: number;
  readonly startsAt: number;
  readonly small: boolean;
}
function Ruler({ x, base, minutes, startsAt, small }: RulerProps): ReactElement {
  const first = Math.ceil(startsAt / 15) * 15 - startsAt;
  const ticks = Array.from({ length: Math.max(0, Math.floor((minutes - first) / 15) + 1) }, (_, index) => first + index * 15);
  const labelEvery = small || minutes > 300 ? 60 : 30;
  const isLabelled = (minute: number): boolean => (startsAt + minute) % labelEvery === 0;
  return (
    <>
      <path d={`M${x(0)} ${base}H${x(minutes)}`} stroke="var(--ink)" strokeWidth="2" />
      {ticks.map((minute) => {
        const isHour = (startsAt + minute) % 60 === 0;
        return (
          <g key={minute}>
            <path
              d={`M${x(minute)} ${base}v${isHour ? 11 : (startsAt + minute) % 30 === 0 ? 8 : 4}`}
              stroke="var(--ink)"
              strokeWidth={isHour ? 2 : 1.2}
            />
            {isLabelled(minute) && (
              <text
                x={x(minute)}
                y={base + 28}
                textAnchor={x(minute) < 24 ? 'start' : minute > minutes - 12 ? 'end' : 'middle'}
                className={isHour ? 'ax b' : 'ax'}
              >
                {clockOf(startsAt + minute)}
              </text>
            )}
          </g>
        );
      })}
    </>
  );
}

interface BeforeProps {
  readonly before: readonly number[];
  readonly x: (column: number) => number;
  readonly y: (guests: number) => number;
  readonly width: number;
}
function Before({ before, x, y, width }: BeforeProps): ReactElement {
  const line = before
    .map(
      (guests, column) =>
        `${(x(column) - width / 2).toFixed(1)} ${y(guests - 1).toFixed(1)}L${(x(column) + width / 2).toFixed(1)} ${y(guests - 1).toFixed(1)}`,
    )
    .join('L');
  return (
    <>
      <path d={`M${line}`} fill="none" stroke="var(--ground)" strokeWidth="6" />
      <path d={`M${line}`} fill="none" stroke="var(--ink)" strokeWidth="2.5" strokeDasharray="7 4" />
    </>
  );
}

interface ClosingProps {
  readonly at: (minute: number) => number;
  readonly closes: Pick<Spread, 'p10' | 'p50' | 'p90'>;
  readonly startsAt: number;
  readonly top: number;
  readonly base: number;
  readonly width: number;
  readonly small: boolean;
}
function Closing({ at, closes, startsAt, top, base, width, small }: ClosingProps): ReactElement {
  const x = at(closes.p50);
  const clock = (minute: number): string => clockOf(startsAt + minute);
  const isRight = at(closes.p10) > width * 0.55;
  return (
    <>
      <path d={`M${x} ${top - 8}V${base}`} stroke="var(--ink)" strokeWidth="2.5" />
      <Pinch low={at(closes.p10)} middle={x} high={Math.min(at(closes.p90), width - 2)} y={top - 16} height={12} />
      <text x={isRight ? at(closes.p10) - 10 : at(closes.p90) + 10} y={top - 11} textAnchor={isRight ? 'end' : 'start'} className="say">
        {small ? `line closes ${clock(closes.p50)}` : `The line closes at ${clock(closes.p50)} `}
        {!small && (
          <tspan className="sp">
            ({clock(closes.p10)} to {clock(closes.p90)})
          </tspan>
        )}
      </text>
    </>
  );
}

const guideCounts = (most: number): readonly number[] => {
  const step = most <= 8 ? 2 : most <= 22 ? 5 : most <= 45 ? 10 : most <= 110 ? 25 : 100;
  return Array.from({ length: Math.floor(most / step) }, (_, index) => (index + 1) * step);
};

function sentenceOf({ waiting, startsAt, minutes, occasion, closes }: CrowdProps): string {
  const middle = Math.round(Math.max(0, ...waiting.map((at) => at.p50)));
  const high = Math.round(Math.max(0, ...waiting.map((at) => at.p90)));
  const shut = closes === undefined || closes.p50 >= minutes - 1 ? '' : ` The line closes at about ${clockOf(startsAt + closes.p50)}.`;
  return `Guests waiting, ${clockOf(startsAt)} to ${clockOf(startsAt + minutes)}. Most at once: about ${middle}, in the busiest tenth of such ${occasion}s ${high}.${shut}`;
}

/** What the heads mean. */
export function CrowdKey({ most, occasion }: { readonly most: number; readonly occasion: string }): ReactElement {
  const each = guestsAHead(Math.max(10, most));
  return (
    <p className="key">
      <span>
        <svg width="12" height="12" aria-hidden="true">
          <circle className="hd1" cx="6" cy="6" r="5" />
        </svg>
        waiting in 9 {occasion}s of 10
      </span>
      <span>
        <svg width="12" height="12" aria-hidden="true">
          <circle className="hd2" cx="6" cy="6" r="5" />
        </svg>
        in 5 of 10
      </span>
      <span>
        <svg width="12" height="12" aria-hidden="true">
          <circle className="hd3" cx="6" cy="6" r="4.4" />
        </svg>
        only in the longest 1 of 10
      </span>
      {each > 1 && <span>one head is {each} guests</span>}
    </p>
  );
}
