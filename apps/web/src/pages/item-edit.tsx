import { useNavigate, useParams } from '@tanstack/react-router';
import { type Book, type Finish, finishes, type Item, nameOfItem } from '@twistwright/books';
import { sizeInWords } from '@twistwright/repertoire';
import type { FormEvent, ReactElement } from 'react';
import { knownMakers } from '../balloons/known-makers.ts';
import { newId } from '../book/change.ts';
import { useBook, useChangeBook } from '../book/use-book.ts';
import { FieldReader, numberText } from '../forms/field-reader.ts';
import { NotSaved } from '../forms/saving.tsx';
import { type Form, useForm } from '../forms/use-form.ts';
import { Page } from '../frame/page.tsx';
import { ChoiceField, TextField } from '../parts/field.tsx';
import { rubberOf } from '../pictures/rubber.ts';
import { Swatch } from '../pictures/swatch.tsx';
import { ItemLedger } from '../store/item-ledger.tsx';
import { Lost } from './lost.tsx';

interface Draft {
  readonly kind: Item['kind'];
  readonly name: string;
  readonly size: string;
  readonly colour: string;
  readonly finish: Finish;
  readonly print: string;
  readonly maker: string;
  readonly chanceOfPop: string;
  readonly shelfMonths: string;
}
const draftOf = (item: Item | undefined, book: Book): Draft => ({
  kind: item?.kind ?? 'balloon',
  name: item !== undefined && item.kind !== 'balloon' ? item.name : '',
  size: item?.kind === 'balloon' ? item.size : '260',
  colour: item?.kind === 'balloon' ? item.colour : (book.colours[0]?.id ?? ''),
  finish: item?.kind === 'balloon' ? (item.finish ?? 'standard') : 'standard',
  print: item?.kind === 'balloon' ? (item.print ?? '') : '',
  maker: item?.kind === 'balloon' ? (item.maker ?? '') : '',
  chanceOfPop: item?.kind === 'balloon' && item.chanceOfPop !== undefined ? numberText(item.chanceOfPop * 100) : '',
  shelfMonths: item?.kind === 'balloon' ? numberText(item.shelfMonths) : '',
});

function readItem(draft: Draft, id: string | undefined, book: Book): { readonly item: Item; readonly read: FieldReader } {
  const read = new FieldReader();
  if (draft.kind !== 'balloon') {
    const name = read.text('name', draft.name, 'what it is called');
    return { item: { id: id ?? newId(name, book.items), kind: draft.kind, name }, read };
  }
  const size = read.text('size', draft.size, 'the size code, such as 260 or round-5');
  if (book.colours.length === 0 || draft.colour === '') read.refuse('colour', 'Write the colour.');
  const pop = read.optionalNumber('chanceOfPop', draft.chanceOfPop, { example: '5', most: 100 });
  const months = read.optionalNumber('shelfMonths', draft.shelfMonths, { example: '18', most: 240 });
  const print = read.optionalText(draft.print);
  const maker = read.optionalText(draft.maker);
  const item: Item = {
    id:
      id ??
      newId(
        [size, draft.colour, draft.finish === 'standard' ? '' : draft.finish, print ?? ''].filter((part) => part !== '').join(' '),
        book.items,
      ),
    kind: 'balloon',
    size,
    colour: draft.colour,
    ...(draft.finish === 'standard' ? {} : { finish: draft.finish }),
    ...(print === undefined ? {} : { print }),
    ...(maker === undefined ? {} : { maker }),
    ...(pop === undefined ? {} : { chanceOfPop: pop / 100 }),
    ...(months === undefined ? {} : { shelfMonths: months }),
  };
  return { item, read };
}

/** One thing that is bought and counted. */
export function ItemEdit(): ReactElement {
  const { book } = useBook();
  const { item: id } = useParams({ from: '/open/store/$item' });
  const known = book.items.find((item) => item.id === id);
  if (id !== 'new' && known === undefined) return <Lost />;
  return <ItemForm known={known} key={id} />;
}

function ItemForm({ known }: { readonly known: Item | undefined }): ReactElement {
  const { book } = useBook();
  const { change, error } = useChangeBook({ fromDraft: true });
  const navigate = useNavigate();
  const form = useForm(() => draftOf(known, book));
  const { draft } = form;
  const back = (): void => void navigate({ to: '/store' });
  const save = (event: FormEvent): void => {
    event.preventDefault();
    const { item, read } = readItem(draft, known?.id, book);
    if (form.isFine(read)) change({ list: 'items', put: item }, back);
  };
  const title = known === undefined ? 'Add an item' : nameOfItem(known, book.colours);
  return (
    <Page title={title} whose={book.business.name}>
      <div className="title">
        <h1 className="say">{title}</h1>
      </div>
      <form className="form" onSubmit={save} noValidate>
        <ChoiceField
          label="Kind"
          {...form.field('kind')}
          options={[
            { value: 'balloon', text: 'balloon' },
            { value: 'tool', text: 'tool' },
            { value: 'sundry', text: 'sundry' },
          ]}
        />
        {draft.kind === 'balloon' ? <BalloonFields form={form} /> : <TextField label="Name" {...form.field('name')} />}
        <div className="wide row">
          <button type="submit" className="btn full">
            Save the item
          </button>
          {known !== undefined && (
            <button type="button" className="btn" onClick={() => change({ list: 'items', remove: known.id }, back)}>
              Take it off the list
            </button>
          )}
        </div>
      </form>
      <NotSaved error={error} />
      {known !== undefined && <ItemLedger item={known.id} />}
    </Page>
  );
}

function BalloonFields({ form }: { readonly form: Form<Draft> }): ReactElement {
  const { draft } = form;
  const { book } = useBook();
  const colour = book.colours.find((entry) => entry.id === draft.colour);
  const sizes = [
    ...new Set([
      ...(book.sizes ?? []).map((size) => size.code),
      ...book.items.flatMap((item) => (item.kind === 'balloon' ? [item.size] : [])),
    ]),
  ].sort();
  return (
    <>
      <TextField
        label="Size code"
        {...form.field('size')}
        note="First digit inches across, the rest inches long; or round-5, heart-6."
        list={sizes}
      />
      <ChoiceField
        label="Colour"
        {...form.field('colour')}
        options={book.colours.map((entry) => ({ value: entry.id, text: entry.name }))}
      />
      <ChoiceField label="Finish" {...form.field('finish')} options={finishes.map((finish) => ({ value: finish, text: finish }))} />
      <TextField label="Print" {...form.field('print')} note="What is printed on it, such as eyes; empty if plain." />
      <TextField
        label="Maker"
        {...form.field('maker')}
        note="Whose balloons they are: air and tail then follow your tests of them. Empty if nobody knows."
        list={knownMakers(book)}
      />
      <TextField label="How many of 100 pop" inputMode="decimal" {...form.field('chanceOfPop')} note="Empty: as in the settings." />
      <TextField label="Months a sealed bag stays good" inputMode="decimal" {...form.field('shelfMonths')} />
      <p className="wide item">
        <Swatch size={draft.size} rubber={rubberOf(colour)} finish={draft.finish} {...(draft.print === '' ? {} : { print: draft.print })} />
        <span>{sizeInWords(draft.size, colour?.name ?? draft.colour)}</span>
      </p>
    </>
  );
}
