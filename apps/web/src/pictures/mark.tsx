import type { ReactElement } from 'react';

export type MarkKind = 'agreed' | 'staffed' | 'stocked' | 'packed';
/** Solid, half, outline, hatched; the word beside a mark changes too. */
export type MarkState = 'done' | 'part' | 'open' | 'stop';

const fills: Readonly<Record<MarkState, string>> = { done: 'var(--ink)', part: 'url(#half)', open: 'none', stop: 'url(#hatch)' };

/** Agreed is a bow, staffed a head, stocked a bag, packed a case. */
export function Mark({ kind, state }: { readonly kind: MarkKind; readonly state: MarkState }): ReactElement {
  return (
    <svg className="mk" viewBox="0 0 32 32" width="32" height="32" aria-hidden="true">
      <g fill={fills[state]} stroke="var(--ink)" strokeWidth="2.2">
        {shapes[kind]}
      </g>
    </svg>
  );
}

const shapes: Readonly<Record<MarkKind, ReactElement>> = {
  agreed: (
    <>
      <path d="M16 14C10 4 2 6 3 13s8 9 13 1C21 22 28 20 29 13S22 4 16 14Z" />
      <path d="M14.5 17L9 29M17.5 17L23 29" strokeWidth="3" strokeLinecap="round" fill="none" />
      <circle cx="16" cy="14.5" r="3.4" fill="var(--ground)" />
    </>
  ),
  staffed: <circle cx="16" cy="16" r="11" />,
  stocked: (
    <>
      <path d="M6 12V25q0 3 3 3H23q3 0 3-3V12" />
      <path d="M4 4H28V11H4Z" fill="var(--ink)" stroke="none" />
    </>
  ),
  packed: (
    <>
      <path d="M11 10V7q0-3 3-3h4q3 0 3 3v3" fill="none" />
      <rect x="3" y="10" width="26" height="17" rx="3" />
    </>
  ),
};

/** Patterns that pictures refer to; once a page. */
export function Patterns(): ReactElement {
  return (
    <svg width="0" height="0" style={{ position: 'absolute' }} aria-hidden="true">
      <defs>
        <pattern id="hatch" width="5" height="5" patternUnits="userSpaceOnUse" patternTransform="rotate(45)">
          <rect width="2.2" height="5" fill="var(--ink)" />
        </pattern>
        <pattern id="shut" width="7" height="7" patternUnits="userSpaceOnUse" patternTransform="rotate(45)">
          <rect width="1" height="7" fill="var(--rule-strong)" opacity=".55" />
        </pattern>
        <linearGradient id="half" x1="0" x2="0" y1="0" y2="1">
          <stop offset=".5" stopColor="var(--ground)" />
          <stop offset=".5" stopColor="var(--ink)" />
        </linearGradient>
      </defs>
    </svg>
  );
}
