import { cautions, deference } from '@twistwright/books';
import { type ReactElement, type ReactNode, useEffect } from 'react';

export interface PageProps {
  /** Stands in the window's title. */
  readonly title: string;
  /** Whose book it is, for the foot. */
  readonly whose?: string;
  /** The numbers of the page are still being worked out. */
  readonly isBusy?: boolean;
  readonly children: ReactNode;
}

/** One page: its content, and the cautions at the foot. */
export function Page({ title, whose, isBusy = false, children }: PageProps): ReactElement {
  useEffect(() => {
    document.title = `${title} · Twistwright`;
  }, [title]);
  return (
    <>
      <main id="main" className="wrap" tabIndex={-1} aria-busy={isBusy}>
        {children}
      </main>
      <footer className="wrap">
        <div className="foot">
          {whose === undefined ? '' : `${whose}. `}
          {cautions.map((caution) => caution.text).join(' ')} {deference}
        </div>
      </footer>
    </>
  );
}
