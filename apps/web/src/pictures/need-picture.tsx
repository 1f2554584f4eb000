import type { Spread } from '@twistwright/units';
import type { ReactElement } from 'react';
import { Pinch } from './pinch.tsx';
import type { Rubber } from './rubber.ts';

export interface NeedPictureProps {
  readonly width: number;
  /** Pieces at the right end of the picture. */
  readonly scale: number;
  readonly name: string;
  readonly takes: Pick<Spread, 'p10' | 'p50' | 'p90'>;
  /** Pieces that are enough with the chosen chance. */
  readonly enough: number;
  readonly have: number;
  readonly onOrder?: number;
  readonly rubber?: Rubber | undefined;
}

/** Need against stock: what is taken above as a twisted balloon, what there is below as a rail; hatched where the rail falls short. */
export function NeedPicture({ width, scale, name, takes, enough, have, onOrder = 0, rubber }: NeedPictureProps): ReactElement {
  const x = (pieces: number): number => 8 + (Math.min(pieces, scale) / scale) * (width - 16);
  const there = have + onOrder;
  const goesOn = there > scale;
  return (
    <svg
      viewBox={`0 0 ${width} 40`}
      width="100%"
      role="img"
      aria-label={`${name}: takes about ${round(takes.p50)}, ${round(takes.p10)} to ${round(takes.p90)}; ${round(enough)} is enough; you have ${have}${onOrder > 0 ? ` and ${onOrder} on order` : ''}.`}
    >
      {enough > there && (
        <rect
          x={x(there)}
          y="25"
          width={Math.max(3, x(enough) - x(there))}
          height="13"
          fill="url(#hatch)"
          stroke="var(--ink)"
          strokeWidth="1.4"
        />
      )}
      <path d={`M8 33H${x(have)}`} stroke="var(--ink)" strokeWidth="3" />
      {onOrder > 0 && <path d={`M${x(have)} 33H${x(there)}`} stroke="var(--ink)" strokeWidth="3" strokeDasharray="5 4" />}
      {goesOn ? (
        <path d={`M${x(scale) - 8} 28l8 5-8 5`} fill="none" stroke="var(--ink)" strokeWidth="2" />
      ) : (
        <path d={`M${x(there)} 25V40`} stroke="var(--ink)" strokeWidth="2.5" />
      )}
      <Pinch low={x(takes.p10)} middle={x(takes.p50)} high={x(takes.p90)} y={13} height={18} rubber={rubber} />
    </svg>
  );
}
const round = (value: number): number => Math.round(value);

/** What the parts of a need picture mean. */
export function NeedKey({ occasion }: { readonly occasion: string }): ReactElement {
  return (
    <p className="key">
      <span>
        <svg width="64" height="22" aria-hidden="true">
          <Pinch low={2} middle={30} high={60} y={11} height={14} />
        </svg>
        what the {occasion} takes: 10th, middle, 90th, in pieces
      </span>
      <span>
        <svg width="40" height="22" aria-hidden="true">
          <path d="M2 16H34" stroke="var(--ink)" strokeWidth="3" />
          <path d="M34 3V21" stroke="var(--ink)" strokeWidth="2.5" />
        </svg>
        what you have
      </span>
      <span>
        <svg width="40" height="22" aria-hidden="true">
          <rect x="2" y="5" width="34" height="13" fill="url(#hatch)" stroke="var(--ink)" strokeWidth="1.4" />
        </svg>
        missing
      </span>
    </p>
  );
}
