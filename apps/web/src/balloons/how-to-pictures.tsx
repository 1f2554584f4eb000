import type { ReactElement } from 'react';
import type { Rubber } from '../pictures/rubber.ts';
import { Bubble, Nozzle } from '../pictures/tube.tsx';

/** A ruler: one ink line, ticks outward. */
function RulerLine({ y, from, to }: { readonly y: number; readonly from: number; readonly to: number }): ReactElement {
  const ticks = Array.from({ length: 13 }, (_, index) => from + ((to - from) * index) / 12);
  return (
    <g stroke="var(--ink)">
      <path d={`M${from} ${y}H${to}`} strokeWidth="2" />
      {ticks.map((x, index) => (
        <path key={x} d={`M${x} ${y}v${index % 4 === 0 ? 11 : 6}`} strokeWidth="1.5" />
      ))}
    </g>
  );
}
/** Where a length begins and ends. */
const Stop = ({ x, from, to }: { readonly x: number; readonly from: number; readonly to: number }): ReactElement => (
  <path d={`M${x} ${from}V${to}`} stroke="var(--ink)" strokeWidth="1.6" strokeDasharray="3 4" />
);

/** Flat balloons along a ruler, from the place of the knot to the tip. */
export function FlatPicture({ rubber }: { readonly rubber: Rubber }): ReactElement {
  return (
    <svg
      className="howto"
      viewBox="0 0 400 124"
      role="img"
      aria-label="Five flat balloons along a ruler, measured from the place of the knot to the tip."
    >
      {[352, 359, 346, 355, 350].map((tip, index) => (
        <g key={tip}>
          <Nozzle x={24} y={14 + 16 * index} turn={0} rubber={rubber} size={0.8} />
          <Bubble from={[26, 14 + 16 * index]} to={[tip, 14 + 16 * index]} radius={4.2} rubber={rubber} gloss={[4, 30]} />
        </g>
      ))}
      <Stop x={30} from={6} to={98} />
      <RulerLine y={98} from={30} to={390} />
    </svg>
  );
}

/** One balloon blown up fully along a ruler, from knot to tip. */
export function FullPicture({ rubber }: { readonly rubber: Rubber }): ReactElement {
  return (
    <svg className="howto" viewBox="0 0 400 78" role="img" aria-label="One balloon blown up fully, measured from knot to tip.">
      <Nozzle x={18} y={26} turn={0} rubber={rubber} />
      <Bubble from={[30, 26]} to={[376, 26]} radius={14} rubber={rubber} />
      <Stop x={17} from={8} to={54} />
      <Stop x={390} from={8} to={54} />
      <RulerLine y={54} from={17} to={390} />
    </svg>
  );
}

/** Ten bubbles in a row, and the flat tail that is left. */
export function RowPicture({ rubber }: { readonly rubber: Rubber }): ReactElement {
  const tailFrom = 312;
  return (
    <svg
      className="howto"
      viewBox="0 0 400 78"
      role="img"
      aria-label="Ten bubbles of two inches in a row; the flat tail that is left is measured."
    >
      <Nozzle x={12} y={26} turn={0} rubber={rubber} size={0.8} />
      <Bubble from={[tailFrom - 4, 26]} to={[384, 26]} radius={4.2} rubber={rubber} gloss={[10, 40]} />
      {Array.from({ length: 10 }, (_, index) => 24 + 29.4 * index).map((x) => (
        <Bubble key={x} from={[x, 26]} to={[x + 7, 26]} radius={12.5} rubber={rubber} />
      ))}
      <Stop x={tailFrom - 1} from={8} to={54} />
      <Stop x={388} from={8} to={54} />
      <path d={`M${tailFrom - 1} 54H388`} stroke="var(--ink)" strokeWidth="2" />
      <text x={(tailFrom + 388) / 2} y={73} textAnchor="middle" fontSize="15" fill="var(--ink)">
        left flat
      </text>
    </svg>
  );
}
