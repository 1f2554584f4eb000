import { useQuery } from '@tanstack/react-query';
import { Navigate, Outlet } from '@tanstack/react-router';
import type { ReactElement } from 'react';
import { todayIn } from '../book/today.ts';
import { bookQuery, OpenBookContext } from '../book/use-book.ts';
import { Refusal } from '../parts/refusal.tsx';
import { Page } from './page.tsx';

/** Opens the book before any page that needs one; without a book the start page comes first. */
export function OpenBookGate(): ReactElement {
  const { data: book, error, refetch } = useQuery(bookQuery);
  if (error !== null && book === undefined)
    return (
      <Page title="The book cannot be reached">
        <section>
          <Refusal sentence={error.message}>
            <button type="button" className="btn" onClick={() => void refetch()}>
              Try again
            </button>
          </Refusal>
        </section>
      </Page>
    );
  if (book === undefined)
    return (
      <Page title="Opening the book" isBusy>
        <p className="lead" style={{ padding: '40px 0' }}>
          Opening the book …
        </p>
      </Page>
    );
  if (book === null) return <Navigate to="/start" replace />;
  return (
    <OpenBookContext value={{ book, today: todayIn(book.business.zone) }}>
      <Outlet />
    </OpenBookContext>
  );
}
