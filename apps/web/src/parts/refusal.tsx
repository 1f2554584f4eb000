import type { ReactElement, ReactNode } from 'react';

/** What cannot be done, and what would work instead. The one reversed panel of a page. */
export function Refusal({
  sentence,
  instead,
  children,
}: {
  readonly sentence: string;
  readonly instead?: string;
  readonly children?: ReactNode;
}): ReactElement {
  return (
    <div className="inked" role="status">
      <p className="lead">
        <b>{sentence}</b>
        {instead === undefined ? '' : ` ${instead}`}
      </p>
      {children}
    </div>
  );
}
