import { Link, useNavigate, useParams } from '@tanstack/react-router';
import { type Gig, gigKinds } from '@twistwright/books';
import type { FormEvent, ReactElement } from 'react';
import { useBook, useChangeBook } from '../book/use-book.ts';
import { type GigDraft, gigDraftOf, readGigDraft, takesArrivals } from '../forms/gig-draft.ts';
import { NotSaved } from '../forms/saving.tsx';
import { type Form, useForm } from '../forms/use-form.ts';
import { Page } from '../frame/page.tsx';
import { ChoiceField, Group, TextField } from '../parts/field.tsx';
import { Tick } from '../parts/tick.tsx';
import { Lost } from './lost.tsx';

export const NewGig = (): ReactElement => <GigForm known={undefined} />;

export function EditGig(): ReactElement {
  const { book } = useBook();
  const { gig: id } = useParams({ from: '/open/gigs/$gig/edit' });
  const known = book.gigs.find((gig) => gig.id === id);
  return known === undefined ? <Lost /> : <GigForm known={known} key={id} />;
}

function GigForm({ known }: { readonly known: Gig | undefined }): ReactElement {
  const { book, today } = useBook();
  const { change, error, isSaving } = useChangeBook({ fromDraft: true });
  const navigate = useNavigate();
  const form = useForm(() => gigDraftOf(book, known, today));
  const { draft } = form;
  const title = known === undefined ? 'Add a gig' : `Change ${known.name}`;
  const save = (event: FormEvent): void => {
    event.preventDefault();
    const { gig, read } = readGigDraft(book, draft, known, today);
    if (!form.isFine(read) || gig === undefined) return;
    const put = draft.kind === 'made to order' ? withColourways(gig, book.figures) : gig;
    change({ list: 'gigs', put }, () => void navigate({ to: '/gigs/$gig', params: { gig: put.id } }));
  };
  return (
    <Page title={title} whose={book.business.name}>
      <div className="title">
        <h1 className="say">{title}</h1>
      </div>
      <form className="form" onSubmit={save} noValidate>
        <TextField label="Name" {...form.field('name')} />
        <ChoiceField label="Kind" {...form.field('kind')} options={gigKinds.map((kind) => ({ value: kind, text: kind }))} />
        <When form={form} />
        <Guests form={form} known={known} />
        <People form={form} />
        {draft.kind === 'made to order' ? <Ordered form={form} /> : <Menu form={form} />}
        <Agreed form={form} />
        <div className="wide">
          <TextField label="Notes" long {...form.field('notes')} />
        </div>
        <div className="wide row">
          <button type="submit" className="btn full" disabled={isSaving}>
            Save the gig
          </button>
          {known !== undefined && (
            <button
              type="button"
              className="btn"
              onClick={() => change({ list: 'gigs', remove: known.id }, () => void navigate({ to: '/gigs' }))}
            >
              Take it out of the diary
            </button>
          )}
        </div>
      </form>
      <NotSaved error={error} />
    </Page>
  );
}

/** Ordered pieces need a colourway; the first one where none was chosen before. */
const withColourways = (
  gig: Gig,
  figures: readonly { readonly id: string; readonly colourways: readonly { readonly id: string }[] }[],
): Gig => ({
  ...gig,
  order: (gig.order ?? []).map((line) => ({
    ...line,
    colourway: line.colourway === '' ? (figures.find((figure) => figure.id === line.figure)?.colourways[0]?.id ?? '') : line.colourway,
  })),
});

interface PartProps {
  readonly form: Form<GigDraft>;
}
function When({ form }: PartProps): ReactElement {
  return (
    <>
      <TextField label="Day" type="date" {...form.field('day')} />
      <TextField label="Starts" type="time" {...form.field('starts')} />
      <TextField label="Ends" type="time" {...form.field('ends')} />
      <TextField label="Where" {...form.field('where')} />
      <TextField label="Miles, one way" inputMode="decimal" {...form.field('miles')} />
      <TextField label="Minutes of driving, one way" inputMode="decimal" {...form.field('driveMinutes')} />
    </>
  );
}

function Guests({ form, known }: PartProps & { readonly known: Gig | undefined }): ReactElement {
  const { draft, set } = form;
  const choices = ['evenly', 'busiest in the middle', 'all at the start'];
  const options = known?.arrivals === undefined || known.arrivals.kind === 'all at the start' ? choices : ['as it is', ...choices];
  return (
    <>
      {draft.kind !== 'made to order' && (
        <TextField
          label={draft.kind === 'class' ? 'Learners' : 'Guests'}
          inputMode="numeric"
          {...form.field('guests')}
          note={draft.kind === 'class' ? undefined : 'As the client says; siblings and grown-ups come on top.'}
        />
      )}
      {takesArrivals(draft.kind) && (
        <ChoiceField label="They come" {...form.field('arrivals')} options={options.map((value) => ({ value, text: value }))} />
      )}
      {draft.kind === 'tables' && <TextField label="Tables" inputMode="numeric" {...form.field('tables')} />}
      {draft.kind === 'class' && (
        <TextField label="Balloons for each that succeeds" inputMode="decimal" {...form.field('practiceFactor')} />
      )}
      <ChoiceField
        label="Weather"
        {...form.field('weather')}
        options={[
          { value: '', text: 'not known' },
          { value: 'mild', text: 'mild' },
          { value: 'hot', text: 'hot' },
          { value: 'cold', text: 'cold' },
          { value: 'wet', text: 'wet' },
        ]}
      />
      <Tick checked={draft.outdoors} onChange={(outdoors) => set({ outdoors })}>
        It is outdoors
      </Tick>
    </>
  );
}

function People({ form: { draft, set } }: PartProps): ReactElement {
  const { book } = useBook();
  return (
    <Group legend="Artists">
      {book.artists.length === 0 && <p className="note">No artist is in the book yet; the plan counts one pair of hands.</p>}
      {book.artists.map((artist) => (
        <Tick
          key={artist.id}
          checked={draft.artists.includes(artist.id)}
          onChange={(checked) => set({ artists: checked ? [...draft.artists, artist.id] : draft.artists.filter((id) => id !== artist.id) })}
        >
          {artist.name}
        </Tick>
      ))}
    </Group>
  );
}

function Menu({ form: { draft, set, problems } }: PartProps): ReactElement {
  const { book } = useBook();
  const put = (figure: string, checked: boolean): void => {
    const { [figure]: _gone, ...rest } = draft.menu;
    set({ menu: checked ? { ...draft.menu, [figure]: '1' } : rest });
  };
  return (
    <Group legend="Figures on the menu">
      {problems.menu !== undefined && <p className="err">{problems.menu}</p>}
      <div className="menu-grid">
        {book.figures.map((figure) => (
          <div key={figure.id} className="menu-line">
            <Tick checked={draft.menu[figure.id] !== undefined} onChange={(checked) => put(figure.id, checked)}>
              {figure.name}
            </Tick>
            {draft.menu[figure.id] !== undefined && (
              <input
                className={problems[`menu.${figure.id}`] === undefined ? 'in share' : 'in share bad'}
                inputMode="decimal"
                aria-label={`How often ${figure.name} is asked for, beside the others`}
                aria-invalid={problems[`menu.${figure.id}`] === undefined ? undefined : true}
                value={draft.menu[figure.id]}
                onChange={(event) => set({ menu: { ...draft.menu, [figure.id]: event.target.value } })}
              />
            )}
          </div>
        ))}
      </div>
      {book.figures.length === 0 ? (
        <p className="note">
          No figure is in the book yet.{' '}
          <Link to="/repertoire/$figure/edit" params={{ figure: 'new' }}>
            Design the first one
          </Link>
          , then come back.
        </p>
      ) : (
        <p className="note">The number says how often a figure is asked for beside the others: 2 is twice as often as 1.</p>
      )}
    </Group>
  );
}

function Ordered({ form: { draft, set, problems } }: PartProps): ReactElement {
  const { book } = useBook();
  return (
    <Group legend="Pieces ordered">
      {problems.order !== undefined && <p className="err">{problems.order}</p>}
      <div className="menu-grid">
        {book.figures.map((figure) => (
          <TextField
            key={figure.id}
            label={figure.name}
            inputMode="numeric"
            value={draft.order[figure.id] ?? ''}
            problem={problems[`order.${figure.id}`]}
            onChange={(count) => set({ order: { ...draft.order, [figure.id]: count } })}
          />
        ))}
      </div>
    </Group>
  );
}

function Agreed({ form }: PartProps): ReactElement {
  const { book } = useBook();
  const currency = book.business.currency;
  return (
    <>
      <ChoiceField
        label="Agreement"
        {...form.field('state')}
        options={['asked', 'quoted', 'agreed'].map((value) => ({ value, text: value }))}
      />
      <TextField label={`Fee, ${currency}`} inputMode="decimal" {...form.field('fee')} note="Empty: the quote." />
      <TextField label={`Deposit, ${currency}`} inputMode="decimal" {...form.field('deposit')} />
      <TextField label="Deposit came in on" type="date" {...form.field('depositPaidOn')} />
    </>
  );
}
