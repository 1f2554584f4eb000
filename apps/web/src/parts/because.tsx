import type { ReactElement, ReactNode } from 'react';

/** "Why 62?" opens the facts, the percentile, whose data. */
export function Because({ ask, children }: { readonly ask: string; readonly children: ReactNode }): ReactElement {
  return (
    <details className="because">
      <summary>{ask}</summary>
      <div className="told">{children}</div>
    </details>
  );
}
