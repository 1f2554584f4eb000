import { Link, Outlet, useRouterState } from '@tanstack/react-router';
import { type ReactElement, useEffect, useRef } from 'react';
import { Patterns } from '../pictures/mark.tsx';
import { places } from './places.ts';
import { WordMark } from './word-mark.tsx';

/** Running head, the page, and what moves when the page changes. */
export function Frame(): ReactElement {
  const path = useRouterState({ select: (state) => state.location.pathname });
  useFocusOnNewPage(path);
  return (
    <>
      <Patterns />
      <a className="skip" href="#main">
        Go to the page
      </a>
      <header className="wrap noprint">
        <div className="head">
          <Link className="word" to="/">
            <WordMark />
            <span>Twistwright</span>
          </Link>
          {path !== '/start' && (
            <>
              <nav className="places" aria-label="Places">
                {places.map((place) => (
                  <Link
                    key={place.to}
                    to={place.to}
                    {...(isAt(path, place.to) ? { 'aria-current': 'page' as const } : { 'aria-current': undefined })}
                  >
                    {place.name}
                  </Link>
                ))}
              </nav>
              <Link className="btn plain places-btn" to="/places">
                Places
              </Link>
            </>
          )}
        </div>
      </header>
      <Outlet />
    </>
  );
}

export const isAt = (path: string, place: string): boolean => path === place || path.startsWith(`${place}/`);

/** After a move within the app the reader starts at the new page, as after a load. */
function useFocusOnNewPage(path: string): void {
  const last = useRef(path);
  useEffect(() => {
    if (last.current === path) return;
    last.current = path;
    document.getElementById('main')?.focus({ preventScroll: true });
  }, [path]);
}
