import { type PrintOn, printOn } from '@twistwright/books';
import type { ReactElement } from 'react';
import type { Rubber } from './rubber.ts';
import { type Silhouette, silhouetteOf } from './silhouette.ts';

interface BagProps {
  readonly rubber: Rubber;
  /** Size code of what is in it: long ones are strokes, rounds are rounds, hearts are hearts. */
  readonly size?: string;
  readonly print?: string;
  readonly open?: boolean;
}
/** A sealed bag has an ink header with a hole; an opened one a torn edge. */
export function Bag({ rubber, size = '260', print, open = false }: BagProps): ReactElement {
  const top = open ? 13 : 11;
  const silhouette = silhouetteOf(size);
  return (
    <svg className="bag" viewBox="0 0 34 44" width="34" height="44" aria-hidden="true">
      <path d={`M2 ${top}V40q0 3 3 3H29q3 0 3-3V${top}`} fill="var(--sheet)" stroke="var(--ink)" strokeWidth="1.6" />
      {silhouette.shape === 'tube' ? (
        <Strokes radius={silhouette.radius} isPrinted={print !== undefined} rubber={rubber} />
      ) : (
        <Pieces shape={silhouette.shape} print={print} rubber={rubber} />
      )}
      {open ? (
        <path d="M2 13l5-4 5 4 5-5 5 5 5-4 5 4" fill="none" stroke="var(--ink)" strokeWidth="1.6" strokeLinejoin="round" />
      ) : (
        <>
          <rect x="1" y="2" width="32" height="10" fill="var(--ink)" />
          <circle cx="17" cy="7" r="1.9" fill="var(--ground)" />
        </>
      )}
    </svg>
  );
}

/** Three long balloons, as thick as their size code says. */
function Strokes({
  radius,
  isPrinted,
  rubber,
}: {
  readonly radius: number;
  readonly isPrinted: boolean;
  readonly rubber: Rubber;
}): ReactElement {
  const width = Math.min(6, radius * 0.45);
  const places = width > 4.4 ? [11.5, 22.5] : [9, 17, 25];
  return (
    <g fill="none" strokeLinecap="round">
      {places.map((x) => (
        <g key={x}>
          <path d={`M${x} 17q3.5 6 0 12t0 11`} style={{ stroke: rubber.rim }} strokeWidth={width + 2} />
          <path d={`M${x} 17q3.5 6 0 12t0 11`} stroke={rubber.body} strokeWidth={width} />
          {isPrinted && [19, 26, 33].map((y) => <circle key={y} cx={x + 0.6} cy={y} r="1.1" fill="#111" stroke="#fff" strokeWidth=".4" />)}
        </g>
      ))}
    </g>
  );
}

/** Five pieces of a shape, lying as they fell. */
const fallen = [
  [10.5, 20],
  [23.5, 21.5],
  [17, 28],
  [10, 36],
  [24, 36],
] as const;
const shapes: Readonly<Record<Exclude<Silhouette['shape'], 'tube'>, string>> = {
  round: 'M0 5.400L-1.6 7.200H1.600ZM0-5.400A5.4 5.4 0 1 1 0 5.400A5.4 5.4 0 1 1 0-5.400Z',
  link: 'M0 5.400L-1.6 7.200H1.600ZM0-5.400L-1.6-7.200H1.600ZM0-5.400A5.4 5.4 0 1 1 0 5.400A5.4 5.4 0 1 1 0-5.400Z',
  heart: 'M0 6C-9.5.5-6.5-5.5-3.2-5.500C-1.5-5.5-.5-4.3 0-3.200C.5-4.3 1.5-5.5 3.2-5.500C6.5-5.5 9.5.5 0 6Z',
  flower:
    'M0-5.800A2.9 2.9 0 0 1 2.8-2.400A2.9 2.9 0 0 1 5.3 2A2.9 2.9 0 0 1 1.5 4.800A2.9 2.9 0 0 1-3.4 4.600A2.9 2.9 0 0 1-4.6-.200A2.9 2.9 0 0 1 0-5.800Z',
  ring: 'M0-5.500A5.5 5.5 0 1 1 0 5.500A5.5 5.5 0 1 1 0-5.500ZM0-2.200A2.2 2.2 0 1 0 0 2.200A2.2 2.2 0 1 0 0-2.200Z',
};
interface ShapeProps {
  readonly shape: keyof typeof shapes;
  readonly print: string | undefined;
  readonly rubber: Rubber;
}
const Pieces = (props: ShapeProps): ReactElement => (
  <>
    {fallen.map(([x, y]) => (
      <g key={`${x} ${y}`} transform={`translate(${x} ${y}) scale(.88)`}>
        <Shape {...props} />
      </g>
    ))}
  </>
);
/** What is printed on a piece, as strokes; a stroke of hardly any length is a dot. */
const prints: Readonly<Record<PrintOn, string>> = {
  eyes: 'M-1.7-1.5v2M1.7-1.5v2',
  face: 'M-1.7-2v.800M1.7-2v.800M-2 1.200q2 2 4 0',
  dots: 'M0-2.800v.01M-2.5-.5v.01M2.5-.5v.01M-1.2 2.200v.01M1.6 2.200v.01',
};
/** One piece about its middle, with its print or a streak of gloss. */
function Shape({ shape, print, rubber }: ShapeProps): ReactElement {
  return (
    <>
      <path d={shapes[shape]} fill={rubber.body} style={{ stroke: rubber.rim }} strokeWidth="1.2" strokeLinejoin="round" />
      {print !== undefined ? (
        <path d={prints[printOn(print)]} fill="none" stroke="#111" strokeWidth="1.5" strokeLinecap="round" />
      ) : (
        <path d="M-3-1.5q.3-1.8 2-2.4" fill="none" stroke="#fff" strokeWidth="1.1" strokeLinecap="round" opacity=".9" />
      )}
    </>
  );
}

interface LooseProps {
  readonly count: number;
  readonly rubber: Rubber;
  /** Size code, as for a bag. */
  readonly size?: string;
  readonly print?: string;
}
/** Loose pieces: tens are three of them with a band, the rest one each. */
export function Loose({ count, rubber, size = '260', print }: LooseProps): ReactElement {
  const { shape } = silhouetteOf(size);
  const piece = (x: number): ReactElement =>
    shape === 'tube' ? (
      <Stroke key={x} x={x} rubber={rubber} />
    ) : (
      <g key={x} transform={`translate(${x} 15) scale(.56)`}>
        <Shape shape={shape} print={print} rubber={rubber} />
      </g>
    );
  const tens = Math.floor(count / 10);
  const ones = count % 10;
  const onesAt = 2 + tens * 18 + (tens > 0 && ones > 0 ? 3 : 0);
  const width = onesAt + ones * 6 + 3;
  return (
    <svg className="loose" viewBox={`0 0 ${width} 32`} width={width} height="32" aria-hidden="true" fill="none" strokeLinecap="round">
      {Array.from({ length: tens }, (_, ten) => 2 + ten * 18).map((x) => (
        <g key={x}>
          {[1.5, 6, 10.5].map((step) => piece(x + step))}
          <path d={`M${x - 1.5} 17H${x + 13.5}`} stroke="var(--ink)" strokeWidth="2.6" strokeLinecap="butt" />
        </g>
      ))}
      {Array.from({ length: ones }, (_, one) => onesAt + 1 + one * 6).map(piece)}
    </svg>
  );
}
function Stroke({ x, rubber }: { readonly x: number; readonly rubber: Rubber }): ReactElement {
  return (
    <>
      <path d={`M${x} 7V27`} style={{ stroke: rubber.rim }} strokeWidth="4.8" />
      <path d={`M${x} 7V27`} stroke={rubber.body} strokeWidth="3" />
      <circle cx={x} cy="5" r="2.1" fill="none" style={{ stroke: rubber.rim }} strokeWidth="1.3" />
    </>
  );
}
