import { chargeSettingsOf, gigKinds } from '@twistwright/books';
import type { FormEvent, ReactElement } from 'react';
import { useBook, useChangeBook } from '../book/use-book.ts';
import { type ChargeDraft, chargeDraftOf, hasRate, type KindRate, kindRates, readChargeDraft } from '../forms/charge-draft.ts';
import { FieldReader } from '../forms/field-reader.ts';
import { NotSaved } from '../forms/saving.tsx';
import { type Form, useForm } from '../forms/use-form.ts';
import { Group, TextField } from '../parts/field.tsx';
import { sentence } from '../words/counted.ts';

/** What an hour costs, what is added to it, and what has to be earned before anything is left. */
export function RatesForm(): ReactElement {
  const { book } = useBook();
  const { change, error, isSaving } = useChangeBook({ fromDraft: true });
  const currency = book.business.currency;
  const now = chargeSettingsOf(book);
  const form = useForm(() => chargeDraftOf(now, currency));
  const save = (event: FormEvent): void => {
    event.preventDefault();
    const read = new FieldReader();
    const charge = readChargeDraft(form.draft, now, currency, read);
    if (form.isFine(read)) change({ settings: { ...book.settings, charge } });
  };
  return (
    <section>
      <h2>What you charge.</h2>
      <p className="note" style={{ marginTop: 6 }}>
        Settings of yours, not advice. An empty field counts for nothing.
      </p>
      <form className="form" onSubmit={save} noValidate>
        <Asked form={form} currency={currency} />
        <ByKind form={form} currency={currency} />
        <Floor form={form} currency={currency} />
        <div className="wide row">
          <button type="submit" className="btn" disabled={isSaving}>
            Save the rates
          </button>
        </div>
      </form>
      <NotSaved error={error} />
    </section>
  );
}

interface PartProps {
  readonly form: Form<ChargeDraft>;
  readonly currency: string;
}
function Asked({ form, currency }: PartProps): ReactElement {
  return (
    <>
      <TextField label={`An hour, ${currency}`} inputMode="decimal" {...form.field('hourly')} />
      <TextField label={`At least, ${currency}`} inputMode="decimal" {...form.field('minimum')} note="For each artist, however short." />
      <TextField label="Miles without charge" inputMode="decimal" {...form.field('freeMiles')} note="One way." />
      <TextField label={`A mile beyond, ${currency}`} inputMode="decimal" {...form.field('perMile')} note="There and back." />
      <TextField label="Minutes early without charge" inputMode="decimal" {...form.field('earlyFreeMinutes')} />
      <TextField
        label={`A quarter of an hour early, ${currency}`}
        inputMode="decimal"
        {...form.field('earlyPerQuarter')}
        note="For each artist, as begun."
      />
      <TextField
        label={`A quarter of an hour of overtime, ${currency}`}
        inputMode="decimal"
        {...form.field('overtimePerQuarter')}
        note="For each artist, as begun."
      />
      <TextField label="Tax on the quote, in 100" inputMode="decimal" {...form.field('taxShare')} note="Empty: none is charged." />
      <TextField label="Name of the tax" {...form.field('taxName')} />
      <TextField label="Deposit, in 100" inputMode="decimal" {...form.field('depositShare')} />
      <TextField label={`Deposit at least, ${currency}`} inputMode="decimal" {...form.field('depositLeast')} />
      <TextField label="Days before the gig that the balance is due" inputMode="numeric" {...form.field('balanceDaysBefore')} />
    </>
  );
}

const rateWords: Readonly<Record<KindRate, string>> = { hourly: 'an hour', minimum: 'at least', perPiece: 'a piece', perHead: 'a learner' };
function ByKind({ form, currency }: PartProps): ReactElement {
  return (
    <Group legend={`Other rates for a kind of gig, ${currency}.`}>
      <p className="note">Empty: as above. A price for a piece or a learner takes the place of the hours.</p>
      {gigKinds.map((kind) => (
        <div className="form" key={kind}>
          {kindRates
            .filter((rate) => hasRate(kind, rate))
            .map((rate) => (
              <TextField
                key={rate}
                label={`${sentence(kind)}, ${rateWords[rate]}`}
                inputMode="decimal"
                {...form.field(`${kind}, ${rate}`)}
              />
            ))}
        </div>
      ))}
    </Group>
  );
}

function Floor({ form, currency }: PartProps): ReactElement {
  return (
    <Group legend="What has to be earned first.">
      <div className="form">
        <TextField label={`A mile costs you, ${currency}`} inputMode="decimal" {...form.field('mileCost')} />
        <TextField label="Where that figure comes from" {...form.field('mileSource')} />
        <TextField label="Of which year" inputMode="numeric" {...form.field('mileYear')} />
        <TextField
          label={`Costs of a year, ${currency}`}
          inputMode="decimal"
          {...form.field('fixedPerYear')}
          note="With or without gigs: insurance, phone, website."
        />
        <TextField label="Gigs that share them" inputMode="numeric" {...form.field('gigsPerYear')} />
        <TextField
          label="Put aside for tax, in 100"
          inputMode="decimal"
          {...form.field('reserveShare')}
          note="Of what is left after costs."
        />
        <TextField
          label="Minutes of preparing"
          inputMode="decimal"
          {...form.field('preparationMinutes')}
          note="Packing and paperwork that nobody pays for by name."
        />
        <TextField label="Minutes of setting up" inputMode="decimal" {...form.field('setUpMinutes')} />
        <TextField label="Minutes of packing up" inputMode="decimal" {...form.field('strikeMinutes')} />
        <TextField
          label={`Wanted for a true hour, ${currency}`}
          inputMode="decimal"
          {...form.field('wantedHourly')}
          note="After all costs."
        />
      </div>
    </Group>
  );
}
