import type { Calibration, MakersTest } from '@twistwright/repertoire';
import { makerKey } from '@twistwright/repertoire';
import type { ReactElement } from 'react';
import { Measured } from '../parts/measured.tsx';
import { Pinch } from '../pictures/pinch.tsx';
import { bandOf, bandWords, type NumberOf, numbersOf, type Ruler, valueWords } from './balloon-words.ts';

interface WorkingPictureProps {
  /** What is believed now, a test that is being written counted in. */
  readonly now: Calibration;
  /** Without the test that is being written. */
  readonly before: Calibration;
  /** Tests of this size code; the one that is being written is the last of them. */
  readonly tests: readonly MakersTest[];
  readonly ruler: Ruler;
}

/** The three numbers of a balloon: usual band as flat rubber, what is believed now as a twisted balloon, every measurement as a stroke. */
export function WorkingPicture({ now, before, tests, ruler }: WorkingPictureProps): ReactElement {
  return (
    <div className="workings">
      {numbersOf(ruler).map((number) => (
        <div className="working" key={number.key}>
          <h3>
            {number.name}: <b>{valueWords(number, now.working[number.key].mean)}</b>{' '}
            <span className="sp">({bandWords(number, now.working[number.key])})</span>
          </h3>
          <Measured>
            {(width) => <NumberPicture width={width} number={number} now={now} before={before} marks={marksOf(number.key, tests, now)} />}
          </Measured>
        </div>
      ))}
    </div>
  );
}

interface MeasuredMark {
  readonly value: number;
  readonly isOwn: boolean;
}
/** Single measurements of one number. */
function marksOf(key: NumberOf['key'], tests: readonly MakersTest[], { maker, working }: Calibration): readonly MeasuredMark[] {
  return tests.flatMap((test) => {
    const { flatInches = [], fullInches = [], twists = [] } = test;
    const isOwn = makerKey(test.maker) === makerKey(maker);
    const flat = flatInches.length === 0 ? working.flat.mean : flatInches.reduce((sum, value) => sum + value, 0) / flatInches.length;
    const values: Readonly<Record<NumberOf['key'], readonly number[]>> = {
      flat: flatInches,
      stretch: fullInches.map((full) => full / flat),
      tailPerBubble: twists.map(({ bubbles, tailInches, leftInches }) => (tailInches - leftInches) / bubbles),
    };
    return values[key].map((value) => ({ value, isOwn }));
  });
}

interface NumberPictureProps {
  readonly width: number;
  readonly number: NumberOf;
  readonly now: Calibration;
  readonly before: Calibration;
  readonly marks: readonly MeasuredMark[];
}
function NumberPicture({ width, number, now, before, marks }: NumberPictureProps): ReactElement {
  const posterior = now.working[number.key];
  const old = before.working[number.key];
  const [usual, band] = [bandOf(posterior.prior), bandOf(posterior)];
  const all = [usual.low, usual.high, band.low, band.high, ...marks.map(({ value }) => value)].map((value) => number.per * value);
  const [least, most] = [Math.min(...all), Math.max(...all)];
  const room = 0.06 * (most - least);
  const x = (value: number): number => 12 + ((number.per * value - (least - room)) / (most - least + 2 * room)) * (width - 24);
  const isMoved = Math.abs(old.mean - posterior.mean) > 1e-9;
  const own = marks.filter(({ isOwn }) => isOwn).length;
  const says = `${number.name}: ${valueWords(number, posterior.mean)}, ${bandWords(number, posterior)} eight times in ten; usually ${valueWords(number, posterior.prior.mean)}, ${bandWords(number, posterior.prior)}. ${own} of these balloons and ${marks.length - own} of others measured.`;
  return (
    <svg width={width} height={100} viewBox={`0 0 ${width} 100`} role="img" aria-label={says}>
      <path d={`M${x(usual.low)} 12H${x(usual.high)}`} stroke="var(--rule-strong)" strokeWidth="5" strokeLinecap="round" />
      <path d={`M${x(usual.mid)} 5V19`} stroke="var(--rule-strong)" strokeWidth="3" />
      <Pinch low={x(band.low)} middle={x(band.mid)} high={x(band.high)} y={36} height={18} />
      {isMoved && (
        <g strokeWidth="2" strokeDasharray="4 3">
          <path d={`M${x(old.mean)} 20V52`} stroke="var(--ink)" />
          {x(old.mean) > x(band.low) && x(old.mean) < x(band.high) && <path d={`M${x(old.mean)} 27V45`} stroke="var(--ground)" />}
        </g>
      )}
      {marks.map(({ value, isOwn }, index) => (
        <path
          // biome-ignore lint/suspicious/noArrayIndexKey: measurements have no name of their own, only their place in the row
          key={index}
          d={`M${x(value)} 54V70`}
          stroke={isOwn ? 'var(--ink)' : 'var(--ink-3)'}
          strokeWidth={isOwn ? 2.5 : 2}
          {...(isOwn ? {} : { strokeDasharray: '2.5 3' })}
        />
      ))}
      <Axis from={least - room} to={most + room} number={number} x={(value) => x(value / number.per)} />
    </svg>
  );
}

interface AxisProps {
  /** In the unit that is shown. */
  readonly from: number;
  readonly to: number;
  readonly number: NumberOf;
  readonly x: (value: number) => number;
}
/** One ink line, ticks outward, few labels; the first carries the unit. */
function Axis({ from, to, number, x }: AxisProps): ReactElement {
  const pixels = x(to) - x(from);
  const step = [0.01, 0.02, 0.05, 0.1, 0.2, 0.5, 1, 2, 5].find((candidate) => (candidate / (to - from)) * pixels >= 64) ?? 10;
  const first = Math.ceil(from / step);
  const ticks = Array.from({ length: Math.max(0, Math.floor(to / step) - first + 1) }, (_, index) => (first + index) * step);
  const decimals = step < 0.1 ? 2 : step < 1 ? 1 : 0;
  return (
    <g>
      <path d={`M${x(from)} 70H${x(to)}`} stroke="var(--ink)" strokeWidth="2" />
      {ticks.map((tick, index) => (
        <g key={tick}>
          <path d={`M${x(tick)} 70v7`} stroke="var(--ink)" strokeWidth="1.5" />
          <text x={x(tick)} y={94} fontSize="15" fill="var(--ink-2)" textAnchor={index === 0 && x(tick) < 40 ? 'start' : 'middle'}>
            {tick.toFixed(decimals)}
            {index === 0 && number.unit === 'times' ? '' : ` ${number.unit}`}
          </text>
        </g>
      ))}
    </g>
  );
}

/** What the parts of the picture mean. */
export function WorkingKey(): ReactElement {
  return (
    <p className="key">
      <span>
        <svg width="64" height="22" aria-hidden="true">
          <path d="M4 11H60" stroke="var(--rule-strong)" strokeWidth="5" strokeLinecap="round" />
          <path d="M32 4V18" stroke="var(--rule-strong)" strokeWidth="3" />
        </svg>
        usual, before anything is measured
      </span>
      <span>
        <svg width="64" height="22" aria-hidden="true">
          <Pinch low={2} middle={30} high={60} y={11} height={14} />
        </svg>
        the next balloon: 10th, middle, 90th
      </span>
      <span>
        <svg width="20" height="22" aria-hidden="true">
          <path d="M8 3V19" stroke="var(--ink)" strokeWidth="2.5" />
        </svg>
        measured
      </span>
      <span>
        <svg width="20" height="22" aria-hidden="true">
          <path d="M8 3V19" stroke="var(--ink-3)" strokeWidth="2" strokeDasharray="2.5 3" />
        </svg>
        measured, of other makers
      </span>
    </p>
  );
}
