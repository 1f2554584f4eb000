import type { ReactElement } from 'react';
import type { Rubber } from './rubber.ts';

interface BagProps {
  readonly rubber: Rubber;
  readonly open?: boolean;
}
/** A sealed bag has an ink header with a hole; an opened one a torn edge. */
export function Bag({ rubber, open = false }: BagProps): ReactElement {
  const top = open ? 13 : 11;
  return (
    <svg className="bag" viewBox="0 0 34 44" width="34" height="44" aria-hidden="true">
      <path d={`M2 ${top}V40q0 3 3 3H29q3 0 3-3V${top}`} fill="var(--sheet)" stroke="var(--ink)" strokeWidth="1.6" />
      <g fill="none" strokeLinecap="round">
        {[9, 17, 25].map((x) => (
          <g key={x}>
            <path d={`M${x} 17q3.5 6 0 12t0 11`} style={{ stroke: rubber.rim }} strokeWidth="5.4" />
            <path d={`M${x} 17q3.5 6 0 12t0 11`} stroke={rubber.body} strokeWidth="3.4" />
          </g>
        ))}
      </g>
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

interface LooseProps {
  readonly count: number;
  readonly rubber: Rubber;
}
/** Loose pieces: tens are three strokes with a band, the rest one stroke each. */
export function Loose({ count, rubber }: LooseProps): ReactElement {
  const tens = Math.floor(count / 10);
  const ones = count % 10;
  const onesAt = 2 + tens * 18 + (tens > 0 && ones > 0 ? 3 : 0);
  const width = onesAt + ones * 6 + 3;
  return (
    <svg className="loose" viewBox={`0 0 ${width} 32`} width={width} height="32" aria-hidden="true" fill="none" strokeLinecap="round">
      {Array.from({ length: tens }, (_, ten) => 2 + ten * 18).map((x) => (
        <g key={x}>
          {[1.5, 6, 10.5].map((step) => (
            <Stroke key={step} x={x + step} rubber={rubber} />
          ))}
          <path d={`M${x - 1.5} 17H${x + 13.5}`} stroke="var(--ink)" strokeWidth="2.6" strokeLinecap="butt" />
        </g>
      ))}
      {Array.from({ length: ones }, (_, one) => onesAt + 1 + one * 6).map((x) => (
        <Stroke key={x} x={x} rubber={rubber} />
      ))}
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
