import { clockOf } from '@twistwright/units';
import type { ReactElement } from 'react';

/** Minutes of the day of one gig: leaving, being on, being home. */
export interface GigOnRuler {
  readonly name: string;
  readonly leaves: number;
  readonly starts: number;
  readonly ends: number;
  readonly home: number;
}
export interface DayRulerProps {
  readonly width: number;
  readonly gigs: readonly GigOnRuler[];
  /** Stretches in minutes of the day where two gigs want the same hands. */
  readonly clashes: readonly { readonly from: number; readonly to: number }[];
  /** Minutes of the day at both ends. */
  readonly from: number;
  readonly to: number;
}

/** A day: inflated is time at the gig, the flat ends are driving and setting up, hatched is a clash. */
export function DayRuler({ width, gigs, clashes, from, to }: DayRulerProps): ReactElement {
  const x = (minute: number): number => 6 + ((Math.min(Math.max(minute, from), to) - from) / (to - from)) * (width - 12);
  const hours = Array.from({ length: Math.floor((to - from) / 60) + 1 }, (_, index) => from + index * 60);
  const label = gigs
    .map((g) => `${g.name}: leave ${clockOf(g.leaves)}, at the gig ${clockOf(g.starts)} to ${clockOf(g.ends)}, home ${clockOf(g.home)}`)
    .join('; ');
  return (
    <svg className="dayline" viewBox={`0 0 ${width} 58`} width="100%" role="img" aria-label={`${label}.`}>
      {hours.map((minute) => (
        <path key={minute} d={`M${x(minute)} 50v${minute % 240 === 0 ? 8 : 4}`} stroke="var(--ink)" strokeWidth="1.2" />
      ))}
      <path d={`M${x(from)} 50H${x(to)}`} stroke="var(--ink)" strokeWidth="1.2" />
      {gigs.map((g) => {
        const long = Math.max(8, x(g.ends) - x(g.starts));
        const corner = Math.min(15, long / 2);
        return (
          <g key={`${g.name} ${g.starts}`}>
            <path d={`M${x(g.leaves)} 24H${x(g.home)}`} stroke="var(--ink)" strokeWidth="4" strokeLinecap="round" />
            <rect x={x(g.starts)} y="9" width={long} height="30" rx={corner} fill="var(--ink)" />
            {long > 34 && (
              <path
                d={`M${x(g.starts) + 14} 16H${x(g.starts) + long - 14}`}
                stroke="var(--ground)"
                strokeWidth="3.5"
                strokeLinecap="round"
                opacity=".45"
              />
            )}
          </g>
        );
      })}
      {clashes.map((clash) => (
        <g key={clash.from}>
          <rect x={x(clash.from)} y="4" width={Math.max(6, x(clash.to) - x(clash.from))} height="40" fill="var(--ground)" />
          <rect
            x={x(clash.from)}
            y="4"
            width={Math.max(6, x(clash.to) - x(clash.from))}
            height="40"
            fill="url(#hatch)"
            stroke="var(--ink)"
            strokeWidth="2"
          />
        </g>
      ))}
    </svg>
  );
}
