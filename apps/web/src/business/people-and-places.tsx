import type { Place } from '@twistwright/books';
import type { ReactElement } from 'react';
import { newId } from '../book/change.ts';
import { useBook } from '../book/use-book.ts';
import { FieldReader, numberText } from '../forms/field-reader.ts';
import { useForm } from '../forms/use-form.ts';
import { ChoiceField, TextField } from '../parts/field.tsx';
import { rubberOf, shippedShades } from '../pictures/rubber.ts';
import { Swatch } from '../pictures/swatch.tsx';
import { counted, sentence } from '../words/counted.ts';
import { ListSection } from './list-section.tsx';

/** Whose hands there are, and how fast. */
export function Artists(): ReactElement {
  const { book } = useBook();
  const form = useForm({ name: '', pace: '1' });
  const { draft } = form;
  return (
    <ListSection
      heading={book.artists.length === 0 ? 'No artist yet.' : `${sentence(counted(book.artists.length, 'artist'))}.`}
      add="Add an artist"
      rows={book.artists.map((artist) => ({
        id: artist.id,
        name: artist.name,
        remove: { list: 'artists', remove: artist.id },
        shown: (
          <>
            <b>{artist.name}</b>, pace {numberText(artist.pace)}
            {artist.figures === undefined ? '' : `, makes ${artist.figures.length} figures`}
          </>
        ),
      }))}
      onAdd={() => {
        const read = new FieldReader();
        const name = read.text('name', draft.name, 'the name');
        const pace = read.number('pace', draft.pace, { example: '1', least: 0.1, most: 10 });
        if (!form.isFine(read)) return undefined;
        form.set({ name: '', pace: '1' });
        return { list: 'artists', put: { id: newId(name, book.artists), name, pace } };
      }}
    >
      <TextField label="Name of the artist" {...form.field('name')} />
      <TextField label="Pace" inputMode="decimal" {...form.field('pace')} note="1 as your figures say, 2 takes twice as long." />
    </ListSection>
  );
}

/** Colours by the names that the business uses. */
export function Colours(): ReactElement {
  const { book } = useBook();
  const form = useForm({ name: '', body: '' });
  const { draft } = form;
  return (
    <ListSection
      heading={book.colours.length === 0 ? 'No colour yet.' : `${sentence(counted(book.colours.length, 'colour'))}.`}
      add="Add a colour"
      begin={{
        text: 'Add the fourteen plain colours',
        changes: shippedShades.map((shade) => ({ list: 'colours', put: { id: shade, name: shade } })),
      }}
      rows={book.colours.map((colour) => ({
        id: colour.id,
        name: colour.name,
        remove: { list: 'colours', remove: colour.id },
        shown: (
          <span className="item">
            <Swatch size="260" rubber={rubberOf(colour)} />
            <span>{colour.name}</span>
          </span>
        ),
      }))}
      onAdd={() => {
        const read = new FieldReader();
        const name = read.text('name', draft.name, 'what the colour is called');
        const body = draft.body.trim().toLowerCase();
        if (body !== '' && !/^#[0-9a-f]{6}$/.test(body)) read.refuse('body', `“${draft.body.trim()}” is not a shade. Write it as #d61f2e.`);
        if (!form.isFine(read)) return undefined;
        form.set({ name: '', body: '' });
        return { list: 'colours', put: { id: newId(name, book.colours), name, ...(body === '' ? {} : { body }) } };
      }}
    >
      <TextField label="Name of the colour" {...form.field('name')} />
      <TextField label="Shade" {...form.field('body')} note="As #d61f2e; empty for a plain name such as red." />
    </ListSection>
  );
}

const placeKinds: readonly Place['kind'][] = ['home', 'car', 'case', 'apron', 'other'];
const usualPlaces: readonly Place[] = [
  { id: 'home', name: 'shelf at home', kind: 'home' },
  { id: 'car', name: 'car', kind: 'car' },
  { id: 'case', name: 'case', kind: 'case' },
  { id: 'apron', name: 'apron', kind: 'apron' },
];

/** Where stock lies. */
export function StockPlaces(): ReactElement {
  const { book } = useBook();
  const form = useForm<{ readonly name: string; readonly kind: Place['kind'] }>({ name: '', kind: 'home' });
  const { draft } = form;
  return (
    <ListSection
      heading={book.places.length === 0 ? 'No place for stock yet.' : `Stock lies in ${counted(book.places.length, 'place')}.`}
      add="Add a place"
      begin={{ text: 'Add home, car, case and apron', changes: usualPlaces.map((put) => ({ list: 'places', put })) }}
      rows={book.places.map((place) => ({
        id: place.id,
        name: place.name,
        remove: { list: 'places', remove: place.id },
        shown: (
          <>
            <b>{place.name}</b>, {place.kind}
            {place.room === undefined ? '' : `, room for ${place.room}`}
          </>
        ),
      }))}
      onAdd={() => {
        const read = new FieldReader();
        const name = read.text('name', draft.name, 'what the place is called');
        if (!form.isFine(read)) return undefined;
        form.set({ name: '', kind: 'home' });
        return { list: 'places', put: { id: newId(name, book.places), name, kind: draft.kind } };
      }}
    >
      <TextField label="Name of the place" {...form.field('name')} />
      <ChoiceField label="Kind of place" {...form.field('kind')} options={placeKinds.map((kind) => ({ value: kind, text: kind }))} />
    </ListSection>
  );
}
