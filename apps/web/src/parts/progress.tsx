import type { ReactElement } from 'react';

export interface ProgressProps {
  /** What is under way: "Trying afternoons". */
  readonly what: string;
  readonly done: number;
  readonly of: number;
  readonly onStop?: () => void;
}
const bubbles = 10;

/** Bubbles twisted out of a flat balloon, and a way to stop. */
export function Progress({ what, done, of, onStop }: ProgressProps): ReactElement {
  const twisted = Math.min(bubbles, Math.floor((done / Math.max(1, of)) * bubbles));
  const text = `${done.toLocaleString('en')} of ${of.toLocaleString('en')}`;
  return (
    <div className="progress">
      <p className="lead">
        {what}: <b>{text}</b>.
      </p>
      <svg viewBox="0 0 420 30" width="100%" height="30" preserveAspectRatio="none" role="img" aria-label={text}>
        <path d="M4 15H418" stroke="var(--rule-strong)" strokeWidth="5" strokeLinecap="round" />
        {Array.from({ length: twisted }, (_, index) => index * 42).map((x) => (
          <g key={x}>
            <rect x={x} y="4" width="40" height="22" rx="11" fill="var(--ink)" />
            <path d={`M${x + 12} 9h16`} stroke="var(--ground)" strokeWidth="3" strokeLinecap="round" opacity=".45" />
          </g>
        ))}
      </svg>
      {onStop !== undefined && (
        <button type="button" className="btn plain" onClick={onStop}>
          Stop and keep what there is
        </button>
      )}
    </div>
  );
}
