import { Link, useNavigate, useParams } from '@tanstack/react-router';
import { type Gig, gigKinds } from '@twistwright/books';
import { type FormEvent, type ReactElement, useState } from 'react';
import { useBook, useChangeBook } from '../book/use-book.ts';
import { type GigDraft, gigDraftOf, readGigDraft, takesArrivals } from '../forms/gig-draft.ts';
import { NotSaved } from '../forms/saving.tsx';
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
  const [draft, setDraft] = useState(() => gigDraftOf(book, known, today));
  const [problems, setProblems] = useState<Readonly<Record<string, string>>>({});
  const set = (part: Partial<GigDraft>): void => setDraft({ ...draft, ...part });
  const title = known === undefined ? 'Add a gig' : `Change ${known.name}`;
  const save = (event: FormEvent): void => {
    event.preventDefault();
    const { gig, read } = readGigDraft(book, draft, known, today);
    setProblems(read.problems);
    if (gig === undefined) {
      requestAnimationFrame(() => document.querySelector<HTMLElement>('[aria-invalid="true"]')?.focus());
      return;
    }
    const put = draft.kind === 'made to order' ? withColourways(gig, book.figures) : gig;
    change({ list: 'gigs', put }, () => void navigate({ to: '/gigs/$gig', params: { gig: put.id } }));
  };
  return (
    <Page title={title} whose={book.business.name}>
      <div className="title">
        <h1 className="say">{title}</h1>
      </div>
      <form className="form" onSubmit={save} noValidate>
        <TextField label="Name" value={draft.name} problem={problems.name} onChange={(name) => set({ name })} />
        <ChoiceField
          label="Kind"
          value={draft.kind}
          options={gigKinds.map((kind) => ({ value: kind, text: kind }))}
          onChange={(kind) => set({ kind: kind as GigDraft['kind'] })}
        />
        <When draft={draft} set={set} problems={problems} />
        <Guests draft={draft} set={set} problems={problems} known={known} />
        <People draft={draft} set={set} />
        {draft.kind === 'made to order' ? (
          <Ordered draft={draft} set={set} problems={problems} />
        ) : (
          <Menu draft={draft} set={set} problems={problems} />
        )}
        <Agreed draft={draft} set={set} problems={problems} />
        <div className="wide">
          <TextField label="Notes" long value={draft.notes} onChange={(notes) => set({ notes })} />
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
  readonly draft: GigDraft;
  readonly set: (part: Partial<GigDraft>) => void;
  readonly problems: Readonly<Record<string, string>>;
}
function When({ draft, set, problems }: PartProps): ReactElement {
  return (
    <>
      <TextField label="Day" type="date" value={draft.day} problem={problems.day} onChange={(day) => set({ day })} />
      <TextField label="Starts" type="time" value={draft.starts} problem={problems.starts} onChange={(starts) => set({ starts })} />
      <TextField label="Ends" type="time" value={draft.ends} problem={problems.ends} onChange={(ends) => set({ ends })} />
      <TextField label="Where" value={draft.where} onChange={(where) => set({ where })} />
      <TextField
        label="Miles, one way"
        inputMode="decimal"
        value={draft.miles}
        problem={problems.miles}
        onChange={(miles) => set({ miles })}
      />
      <TextField
        label="Minutes of driving, one way"
        inputMode="decimal"
        value={draft.driveMinutes}
        problem={problems.driveMinutes}
        onChange={(driveMinutes) => set({ driveMinutes })}
      />
    </>
  );
}

function Guests({ draft, set, problems, known }: PartProps & { readonly known: Gig | undefined }): ReactElement {
  const choices = ['evenly', 'busiest in the middle', 'all at the start'];
  const options = known?.arrivals === undefined || known.arrivals.kind === 'all at the start' ? choices : ['as it is', ...choices];
  return (
    <>
      {draft.kind !== 'made to order' && (
        <TextField
          label={draft.kind === 'class' ? 'Learners' : 'Guests'}
          inputMode="numeric"
          value={draft.guests}
          problem={problems.guests}
          note={draft.kind === 'class' ? undefined : 'As the client says; siblings and grown-ups come on top.'}
          onChange={(guests) => set({ guests })}
        />
      )}
      {takesArrivals(draft.kind) && (
        <ChoiceField
          label="They come"
          value={draft.arrivals}
          options={options.map((value) => ({ value, text: value }))}
          onChange={(arrivals) => set({ arrivals: arrivals as GigDraft['arrivals'] })}
        />
      )}
      {draft.kind === 'tables' && (
        <TextField
          label="Tables"
          inputMode="numeric"
          value={draft.tables}
          problem={problems.tables}
          onChange={(tables) => set({ tables })}
        />
      )}
      {draft.kind === 'class' && (
        <TextField
          label="Balloons for each that succeeds"
          inputMode="decimal"
          value={draft.practiceFactor}
          problem={problems.practiceFactor}
          onChange={(practiceFactor) => set({ practiceFactor })}
        />
      )}
      <ChoiceField
        label="Weather"
        value={draft.weather}
        options={[
          { value: '', text: 'not known' },
          { value: 'mild', text: 'mild' },
          { value: 'hot', text: 'hot' },
          { value: 'cold', text: 'cold' },
          { value: 'wet', text: 'wet' },
        ]}
        onChange={(weather) => set({ weather: weather as GigDraft['weather'] })}
      />
      <Tick checked={draft.outdoors} onChange={(outdoors) => set({ outdoors })}>
        It is outdoors
      </Tick>
    </>
  );
}

function People({ draft, set }: Pick<PartProps, 'draft' | 'set'>): ReactElement {
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

function Menu({ draft, set, problems }: PartProps): ReactElement {
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

function Ordered({ draft, set, problems }: PartProps): ReactElement {
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

function Agreed({ draft, set, problems }: PartProps): ReactElement {
  const { book } = useBook();
  const currency = book.business.currency;
  return (
    <>
      <ChoiceField
        label="Agreement"
        value={draft.state}
        options={['asked', 'quoted', 'agreed'].map((value) => ({ value, text: value }))}
        onChange={(state) => set({ state: state as GigDraft['state'] })}
      />
      <TextField
        label={`Fee, ${currency}`}
        inputMode="decimal"
        value={draft.fee}
        problem={problems.fee}
        note="Empty: the quote."
        onChange={(fee) => set({ fee })}
      />
      <TextField
        label={`Deposit, ${currency}`}
        inputMode="decimal"
        value={draft.deposit}
        problem={problems.deposit}
        onChange={(deposit) => set({ deposit })}
      />
      <TextField
        label="Deposit came in on"
        type="date"
        value={draft.depositPaidOn}
        problem={problems.depositPaidOn}
        onChange={(depositPaidOn) => set({ depositPaidOn })}
      />
    </>
  );
}
