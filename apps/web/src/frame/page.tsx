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
          {whose === undefined ? '' : `${whose}. `}Uninflated or broken balloons can choke children under eight; nothing loose for under
          threes; pick up pieces at once; an adult watches. Made of natural rubber latex: ask about allergy first. Use a pump, not the
          mouth. Nothing near hot lamps, fryers or power lines. No releases.
        </div>
      </footer>
    </>
  );
}
