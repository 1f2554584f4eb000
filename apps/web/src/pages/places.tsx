import { Link } from '@tanstack/react-router';
import type { ReactElement } from 'react';
import { Page } from '../frame/page.tsx';
import { places } from '../frame/places.ts';

/** On a phone: every place, a full page of words. */
export function Places(): ReactElement {
  return (
    <Page title="Places">
      <h1 className="skip">Places</h1>
      <ul className="places-page">
        {places.map((place) => (
          <li key={place.to}>
            <Link to={place.to}>{place.name}</Link>
          </li>
        ))}
      </ul>
    </Page>
  );
}
