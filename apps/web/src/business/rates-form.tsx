import { type ChargeSettings, chargeSettingsOf } from '@twistwright/books';
import { exponentOf, type Money } from '@twistwright/units';
import { type FormEvent, type ReactElement, useState } from 'react';
import { useBook, useChangeBook } from '../book/use-book.ts';
import { FieldReader, moneyText, numberText } from '../forms/field-reader.ts';
import { NotSaved } from '../forms/saving.tsx';
import { TextField } from '../parts/field.tsx';

/** What an hour costs, and what is added to it. */
export function RatesForm(): ReactElement {
  const { book } = useBook();
  const { change, error, isSaving } = useChangeBook({ fromDraft: true });
  const currency = book.business.currency;
  const now = chargeSettingsOf(book);
  /** Minor units in one of the currency; a rate for a mile may have parts of one. */
  const unit = 10 ** exponentOf(currency);
  const [draft, setDraft] = useState({
    hourly: moneyText(now.hourly, currency),
    minimum: moneyText(now.minimum, currency),
    freeMiles: numberText(now.travel?.freeMiles),
    perMile: numberText(now.travel === undefined ? undefined : Number((now.travel.perMile / unit).toFixed(6))),
    taxName: now.tax?.name ?? '',
    taxShare: numberText(now.tax === undefined ? undefined : now.tax.basisPoints / 100),
    depositShare: numberText(now.deposit === undefined ? undefined : now.deposit.basisPoints / 100),
    wantedHourly: moneyText(now.wantedHourly, currency),
    setUpMinutes: numberText(now.setUpMinutes),
    preparationMinutes: numberText(now.preparationMinutes),
  });
  const [problems, setProblems] = useState<Readonly<Record<string, string>>>({});
  const set = (part: Partial<typeof draft>): void => setDraft({ ...draft, ...part });
  const save = (event: FormEvent): void => {
    event.preventDefault();
    const read = new FieldReader();
    const amount = (field: 'hourly' | 'minimum' | 'wantedHourly'): Money | undefined => read.optionalMoney(field, draft[field], currency);
    const minutes = (field: 'setUpMinutes' | 'preparationMinutes'): number | undefined =>
      read.optionalNumber(field, draft[field], { example: '15', most: 2880 });
    const [hourly, minimum, wantedHourly] = [amount('hourly'), amount('minimum'), amount('wantedHourly')];
    const perMile = read.optionalNumber('perMile', draft.perMile, { example: '0.90', most: 10_000 });
    const freeMiles = read.optionalNumber('freeMiles', draft.freeMiles, { example: '10', most: 5000 }) ?? 0;
    const taxShare = read.optionalNumber('taxShare', draft.taxShare, { example: '20', most: 100 });
    const depositShare = read.optionalNumber('depositShare', draft.depositShare, { example: '25', most: 100 });
    const [setUpMinutes, preparationMinutes] = [minutes('setUpMinutes'), minutes('preparationMinutes')];
    setProblems(read.problems);
    if (!read.isFine) return;
    const { hourly: _h, minimum: _m, travel: _t, tax, deposit, wantedHourly: _w, setUpMinutes: _s, preparationMinutes: _p, ...kept } = now;
    const charge: ChargeSettings = {
      ...kept,
      ...(hourly === undefined ? {} : { hourly }),
      ...(minimum === undefined ? {} : { minimum }),
      ...(perMile === undefined ? {} : { travel: { freeMiles, perMile: Number((perMile * unit).toFixed(4)) } }),
      ...(taxShare === undefined
        ? {}
        : { tax: { ...tax, name: draft.taxName.trim() === '' ? 'tax' : draft.taxName.trim(), basisPoints: Math.round(taxShare * 100) } }),
      ...(depositShare === undefined ? {} : { deposit: { ...deposit, basisPoints: Math.round(depositShare * 100) } }),
      ...(wantedHourly === undefined ? {} : { wantedHourly }),
      ...(setUpMinutes === undefined ? {} : { setUpMinutes }),
      ...(preparationMinutes === undefined ? {} : { preparationMinutes }),
    };
    change({ settings: { ...book.settings, charge } });
  };
  return (
    <section>
      <h2>What you charge.</h2>
      <p className="note" style={{ marginTop: 6 }}>
        Settings of yours, not advice. Rates for each kind of gig, overtime and mileage costs stand in the book file.
      </p>
      <form className="form" onSubmit={save} noValidate>
        <TextField
          label={`An hour, ${currency}`}
          inputMode="decimal"
          value={draft.hourly}
          problem={problems.hourly}
          onChange={(hourly) => set({ hourly })}
        />
        <TextField
          label={`At least, ${currency}`}
          inputMode="decimal"
          value={draft.minimum}
          problem={problems.minimum}
          note="For each artist, however short."
          onChange={(minimum) => set({ minimum })}
        />
        <TextField
          label="Miles without charge"
          inputMode="decimal"
          value={draft.freeMiles}
          problem={problems.freeMiles}
          note="One way."
          onChange={(freeMiles) => set({ freeMiles })}
        />
        <TextField
          label={`A mile beyond, ${currency}`}
          inputMode="decimal"
          value={draft.perMile}
          problem={problems.perMile}
          onChange={(perMile) => set({ perMile })}
        />
        <TextField
          label="Tax on the quote, in 100"
          inputMode="decimal"
          value={draft.taxShare}
          problem={problems.taxShare}
          note="Empty: none is charged."
          onChange={(taxShare) => set({ taxShare })}
        />
        <TextField label="Name of the tax" value={draft.taxName} onChange={(taxName) => set({ taxName })} />
        <TextField
          label="Deposit, in 100"
          inputMode="decimal"
          value={draft.depositShare}
          problem={problems.depositShare}
          onChange={(depositShare) => set({ depositShare })}
        />
        <TextField
          label={`Wanted for a true hour, ${currency}`}
          inputMode="decimal"
          value={draft.wantedHourly}
          problem={problems.wantedHourly}
          onChange={(wantedHourly) => set({ wantedHourly })}
        />
        <TextField
          label="Minutes of setting up"
          inputMode="decimal"
          value={draft.setUpMinutes}
          problem={problems.setUpMinutes}
          onChange={(setUpMinutes) => set({ setUpMinutes })}
        />
        <TextField
          label="Minutes of preparing"
          inputMode="decimal"
          value={draft.preparationMinutes}
          problem={problems.preparationMinutes}
          note="Packing and paperwork that nobody pays for by name."
          onChange={(preparationMinutes) => set({ preparationMinutes })}
        />
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
