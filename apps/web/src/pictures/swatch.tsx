import type { BalloonItem } from '@twistwright/books';
import { type PrintOn, printOn } from '@twistwright/books';
import type { ReactElement } from 'react';
import type { Rubber } from './rubber.ts';
import { type Silhouette, silhouetteOf } from './silhouette.ts';
import { Bubble, Nozzle } from './tube.tsx';

interface SwatchProps {
  readonly size: string;
  readonly rubber: Rubber;
  readonly finish?: BalloonItem['finish'];
  readonly print?: string;
}

/** What a balloon looks like: the size code is its thickness, the finish its gloss. Never alone: its name stands beside it. */
export function Swatch({ size, rubber, finish, print }: SwatchProps): ReactElement {
  const silhouette = silhouetteOf(size);
  return (
    <svg className="sw" viewBox="0 0 60 32" width="60" height="32" aria-hidden="true">
      {silhouette.shape === 'tube' ? (
        <TubeSwatch silhouette={silhouette} rubber={rubber} finish={finish} print={print} />
      ) : (
        <ShapeSwatch shape={silhouette.shape} rubber={rubber} print={print} />
      )}
    </svg>
  );
}

interface TubeSwatchProps {
  readonly silhouette: Extract<Silhouette, { shape: 'tube' }>;
  readonly rubber: Rubber;
  readonly finish: BalloonItem['finish'];
  readonly print: string | undefined;
}
function TubeSwatch({ silhouette: { radius: r, length }, rubber, finish, print }: TubeSwatchProps): ReactElement {
  const from = 9 + r * 0.6;
  const to = 9 + length - r;
  return (
    <>
      <Nozzle x={8} y={16} turn={0} rubber={rubber} size={Math.max(0.55, r / 12)} />
      <Bubble from={[from, 16]} to={[to, 16]} radius={r} rubber={rubber} gloss={[8, 64]} />
      <Gloss r={r} from={from} to={to} rubber={rubber} finish={finish} />
      {print !== undefined &&
        [0, 1, 2, 3].map((dot) => (
          <circle
            key={dot}
            cx={from + 3 + (dot * (to - from - 4)) / 3}
            cy={16 + (dot % 2 === 0 ? -2 : 2)}
            r="1.7"
            fill="var(--ink-always)"
            stroke="#fff"
            strokeWidth=".6"
          />
        ))}
    </>
  );
}

interface GlossProps {
  readonly r: number;
  readonly from: number;
  readonly to: number;
  readonly rubber: Rubber;
  readonly finish: BalloonItem['finish'];
}
/** Clear: see-through middle. Pearl and metallic: broad milk. Mirror: two bands. Others have the one streak of the tube. */
function Gloss({ r, from, to, rubber, finish }: GlossProps): ReactElement | null {
  if (finish === 'clear')
    return (
      <>
        <path d={`M${from + 2} 16H${to}`} stroke="var(--ground)" strokeWidth={r * 1.25} strokeLinecap="round" opacity=".68" />
        <path d={`M${from} ${16 - r * 0.45}H${to - 6}`} stroke="#fff" strokeWidth={r * 0.25} strokeLinecap="round" />
      </>
    );
  if (finish === 'mirror')
    return (
      <>
        <path d={`M${from} ${16 + r * 0.25}H${to}`} stroke="#fff" strokeWidth={r * 0.22} opacity=".85" strokeLinecap="round" />
        <path d={`M${from} ${16 + r * 0.62}H${to}`} stroke={rubber.deep} strokeWidth={r * 0.4} opacity=".7" strokeLinecap="round" />
      </>
    );
  if (finish === 'pearl' || finish === 'metallic')
    return <path d={`M${from + 3} ${16 - r * 0.1}H${to - 3}`} stroke="#fff" strokeWidth={r * 0.8} opacity=".38" strokeLinecap="round" />;
  if (finish === 'marbled')
    return (
      <path
        d={`M${from} ${16 + r * 0.3}q5 ${-r * 0.9} 10 0t10 0t${Math.max(4, to - from - 20)} 0`}
        fill="none"
        stroke="#fff"
        strokeWidth={r * 0.22}
        opacity=".7"
      />
    );
  return null;
}

interface ShapeSwatchProps {
  readonly shape: Exclude<Silhouette['shape'], 'tube'>;
  readonly rubber: Rubber;
  readonly print: string | undefined;
}
function ShapeSwatch({ shape, rubber, print }: ShapeSwatchProps): ReactElement {
  const edge = { stroke: rubber.rim };
  if (shape === 'heart')
    return (
      <>
        <path d="M30 29C12 17 16 4 23 4c4 0 6 3 7 5c1-2 3-5 7-5c7 0 11 13-7 25Z" fill={rubber.body} style={edge} strokeWidth="1.4" />
        <path d="M21 8q-2 3 0 7" stroke="#fff" strokeWidth="2.2" fill="none" strokeLinecap="round" opacity=".9" />
      </>
    );
  if (shape === 'ring')
    return (
      <>
        <circle cx="30" cy="16" r="10" fill="none" style={edge} strokeWidth="8" />
        <circle cx="30" cy="16" r="10" fill="none" stroke={rubber.body} strokeWidth="5.6" />
        <path d="M21 12q3-6 9-6" stroke="#fff" strokeWidth="1.8" fill="none" strokeLinecap="round" opacity=".9" />
      </>
    );
  if (shape === 'flower')
    return (
      <>
        {[0, 72, 144, 216, 288].map((turn) => (
          <circle key={turn} cx="30" cy="7.5" r="6" transform={`rotate(${turn} 30 16)`} fill={rubber.body} style={edge} strokeWidth="1.4" />
        ))}
        <circle cx="30" cy="16" r="6" fill={rubber.body} />
      </>
    );
  return (
    <>
      <Nozzle x={30} y={27} turn={-90} rubber={rubber} size={0.7} />
      {shape === 'link' && <Nozzle x={30} y={2} turn={90} rubber={rubber} size={0.5} />}
      <Bubble from={[30, 14]} to={[30.6, 14]} radius={11} rubber={rubber} />
      {print !== undefined && <Printed on={printOn(print)} />}
    </>
  );
}

/** The print about the middle of a round one. */
function Printed({ on }: { readonly on: PrintOn }): ReactElement {
  if (on === 'dots')
    return (
      <g fill="#111" stroke="#fff" strokeWidth=".5">
        {dots.map(([x, y]) => (
          <circle key={`${x} ${y}`} cx={x} cy={y} r="1.9" />
        ))}
      </g>
    );
  const [y, height] = on === 'face' ? [11.5, 2.4] : [14, 3.4];
  return (
    <g fill="#111" stroke="#fff" strokeWidth=".5">
      <ellipse cx="26.5" cy={y} rx="1.8" ry={height} />
      <ellipse cx="33.5" cy={y} rx="1.8" ry={height} />
      {on === 'face' && <path d="M25 16.500q5 6 10 0" fill="none" stroke="#111" strokeWidth="1.8" strokeLinecap="round" />}
    </g>
  );
}
const dots = [
  [30, 8],
  [24.5, 12],
  [35.5, 12],
  [30, 15],
  [25.5, 19],
  [34.5, 19],
] as const;
