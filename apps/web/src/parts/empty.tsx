import type { ReactElement, ReactNode } from 'react';

/** One flat balloon, one sentence that says what this place will answer, one button. */
export function Empty({ sentence, children }: { readonly sentence: string; readonly children?: ReactNode }): ReactElement {
  return (
    <div className="empty">
      <svg width="220" height="34" viewBox="0 0 220 34" aria-hidden="true">
        <path d="M12 17H208" stroke="var(--rule-strong)" strokeWidth="5" strokeLinecap="round" />
        <path d="M12 17L4 12v10Z" fill="var(--rule-strong)" />
      </svg>
      <p className="lead">{sentence}</p>
      {children}
    </div>
  );
}
