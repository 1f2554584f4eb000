import { Link } from '@tanstack/react-router';
import type { ReactElement } from 'react';
import { Page } from '../frame/page.tsx';

export function Lost(): ReactElement {
  return (
    <Page title="Not here">
      <div className="title">
        <h1 className="say">There is no such page.</h1>
      </div>
      <Link className="btn" to="/diary">
        Go to the diary
      </Link>
    </Page>
  );
}
