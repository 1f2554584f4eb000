import type { ReactElement } from 'react';
import type { Rubber } from './rubber.ts';

interface PinchProps {
  /** 10th percentile, median and 90th percentile, already in units of the picture. */
  readonly low: number;
  readonly middle: number;
  readonly high: number;
  readonly y?: number;
  readonly height?: number;
  /** Ink if missing. */
  readonly rubber?: Rubber | undefined;
}

/** A spread as a balloon twisted at the middle. One too small to see stays a short stub. */
export function Pinch({ low, middle, high, y = 12, height = 14, rubber }: PinchProps): ReactElement {
  const r = height / 2;
  return (
    <g>
      <Half from={low} to={middle} y={y} r={r} rubber={rubber} />
      <Half from={middle} to={high} y={y} r={r} rubber={rubber} />
      <rect
        x={middle - 2.2}
        y={y - r * 0.55}
        width="4.4"
        height={height * 0.55}
        rx="2.2"
        fill={rubber === undefined ? 'var(--ground)' : rubber.deep}
      />
      {rubber === undefined && <rect x={middle - 1} y={y - r * 0.55} width="2" height={height * 0.55} rx="1" fill="var(--ink)" />}
    </g>
  );
}

interface HalfProps {
  readonly from: number;
  readonly to: number;
  readonly y: number;
  readonly r: number;
  readonly rubber: Rubber | undefined;
}
function Half({ from, to, y, r, rubber }: HalfProps): ReactElement {
  const width = Math.max(to - from, 2);
  const corner = Math.min(r, width / 2);
  return (
    <>
      <rect
        x={from}
        y={y - r}
        width={width}
        height={2 * r}
        rx={corner}
        fill={rubber?.body ?? 'var(--ink)'}
        style={{ stroke: rubber?.rim ?? 'var(--ink)' }}
        strokeWidth="1.4"
      />
      {width > 9 && (
        <path
          d={`M${from + corner * 0.9} ${y - r * 0.42}H${from + width - corner * 0.9}`}
          stroke={rubber === undefined ? 'var(--ground)' : '#fff'}
          strokeWidth={r * 0.3}
          strokeLinecap="round"
          opacity={rubber === undefined ? 0.55 : 0.85}
        />
      )}
    </>
  );
}
