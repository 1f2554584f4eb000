import type { ReactElement } from 'react';

/** Two bubbles and a tail. */
export function WordMark(): ReactElement {
  return (
    <svg width="58" height="20" viewBox="0 0 58 20" aria-hidden="true">
      <path d="M40 10H56" stroke="var(--ink)" strokeWidth="3" strokeLinecap="round" />
      <rect x="4" y="3" width="23" height="14" rx="7" fill="var(--ink)" />
      <rect x="28" y="3" width="14" height="14" rx="7" fill="var(--ink)" />
      <path d="M5 10L1 7v6Z" fill="var(--ink)" stroke="var(--ink)" strokeLinejoin="round" strokeWidth="2" />
      <path d="M10 6.5h10M33.5 6.5h2" stroke="var(--ground)" strokeWidth="2" strokeLinecap="round" opacity=".6" />
    </svg>
  );
}
