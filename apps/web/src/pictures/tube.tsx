import type { ReactElement } from 'react';
import type { Rubber } from './rubber.ts';

const round1 = (value: number): number => Math.round(value * 10) / 10;

interface TubeProps {
  /** SVG path of the middle line. */
  readonly path: string;
  readonly radius: number;
  readonly rubber: Rubber;
  /** Start and length of the gloss streak, in hundredths of the path. */
  readonly gloss?: readonly [number, number];
}

/** A run of inflated balloon along any path: edge, body, shade to the lower right, light to the upper left, one streak. */
export function Tube({ path, radius: r, rubber, gloss = [16, 46] }: TubeProps): ReactElement {
  const shift = (x: number, y: number): string => `translate(${round1(x * r)} ${round1(y * r)})`;
  return (
    <g fill="none" strokeLinecap="round" strokeLinejoin="round">
      <path d={path} stroke={rubber.rim} strokeWidth={2 * r} style={{ stroke: rubber.rim }} />
      <path d={path} stroke={rubber.body} strokeWidth={round1(2 * r - 2.2)} />
      <path d={path} transform={shift(0.28, 0.32)} stroke={rubber.deep} strokeWidth={round1(r * 0.95)} opacity=".3" />
      <path d={path} transform={shift(-0.2, -0.24)} stroke={rubber.lite} strokeWidth={round1(r)} opacity=".42" />
      <path
        d={path}
        transform={shift(-0.32, -0.4)}
        pathLength={100}
        stroke="#fff"
        strokeWidth={round1(r * 0.3)}
        strokeDasharray={`${gloss[1]} 300`}
        strokeDashoffset={-gloss[0]}
        opacity=".9"
      />
    </g>
  );
}

interface BubbleProps {
  readonly from: readonly [number, number];
  readonly to: readonly [number, number];
  readonly radius: number;
  readonly rubber: Rubber;
  readonly gloss?: readonly [number, number];
}
export function Bubble({ from, to, radius, rubber, gloss }: BubbleProps): ReactElement {
  const far = Math.hypot(to[0] - from[0], to[1] - from[1]) < 1 ? to[0] + 1 : to[0];
  return (
    <Tube path={`M${from[0]} ${from[1]}L${far} ${to[1]}`} radius={radius} rubber={rubber} {...(gloss === undefined ? {} : { gloss })} />
  );
}

interface NozzleProps {
  readonly x: number;
  readonly y: number;
  /** Degrees. */
  readonly turn: number;
  readonly rubber: Rubber;
  readonly size?: number;
}
/** The rolled end below the knot. */
export function Nozzle({ x, y, turn, rubber, size = 1 }: NozzleProps): ReactElement {
  return (
    <g transform={`translate(${x} ${y}) rotate(${turn}) scale(${size})`}>
      <path
        d="M0 0L-7 -5Q-9 0 -7 5Z"
        fill={rubber.body}
        stroke={rubber.rim}
        style={{ stroke: rubber.rim }}
        strokeWidth="1.4"
        strokeLinejoin="round"
      />
    </g>
  );
}
