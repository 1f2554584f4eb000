import type { ReactElement } from 'react';

/** A tool in ink; what it is stands beside it. */
export function ToolPicture({ name }: { readonly name: string }): ReactElement {
  return (
    <svg viewBox="0 0 34 44" width="34" height="44" aria-hidden="true">
      {/pump/i.test(name) ? (
        <>
          <path d="M17 3v6" stroke="var(--ink)" strokeWidth="4" />
          <rect x="9" y="8" width="16" height="20" rx="4" fill="none" stroke="var(--ink)" strokeWidth="2" />
          <rect x="5" y="28" width="24" height="11" rx="3" fill="var(--ink)" />
        </>
      ) : /marker|pen\b/i.test(name) ? (
        <>
          <rect x="11" y="16" width="12" height="25" rx="2" fill="var(--ink)" />
          <path d="M13 16V9l4-6 4 6v7" fill="none" stroke="var(--ink)" strokeWidth="2" />
        </>
      ) : /scissors/i.test(name) ? (
        <g fill="none" stroke="var(--ink)" strokeWidth="2.5">
          <path d="M10 4L22 29M24 4L12 29" />
          <circle cx="9" cy="34" r="5" />
          <circle cx="25" cy="34" r="5" />
        </g>
      ) : (
        <>
          <path d="M11 12V8q0-3 3-3h6q3 0 3 3v4" fill="none" stroke="var(--ink)" strokeWidth="2" />
          <rect x="5" y="12" width="24" height="27" rx="3" fill="none" stroke="var(--ink)" strokeWidth="2" />
          <path d="M5 22h24" stroke="var(--ink)" strokeWidth="2" />
        </>
      )}
    </svg>
  );
}
