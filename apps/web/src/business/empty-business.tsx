import { useMutation } from '@tanstack/react-query';
import type { Business } from '@twistwright/books';
import type { FormEvent, ReactElement } from 'react';
import { FieldReader } from '../forms/field-reader.ts';
import { NotSaved } from '../forms/saving.tsx';
import { useForm } from '../forms/use-form.ts';
import { ChoiceField, TextField } from '../parts/field.tsx';

const currencies = ['GBP', 'EUR', 'USD', 'CHF', 'JPY', 'AUD', 'CAD', 'NZD', 'SEK', 'NOK', 'DKK', 'PLN', 'CZK'];

interface EmptyBusinessProps {
  /** Puts an empty book of this business in place. */
  readonly begin: (business: Business) => Promise<unknown>;
  readonly onDone: () => Promise<void>;
}

/** Name, currency and time zone of a business whose book is empty yet. */
export function EmptyBusiness({ begin, onDone }: EmptyBusinessProps): ReactElement {
  const here = Intl.DateTimeFormat().resolvedOptions().timeZone;
  const form = useForm({ name: '', currency: 'EUR', zone: here });
  const { draft } = form;
  const save = useMutation({ mutationFn: begin, onSuccess: onDone });
  const submit = (event: FormEvent): void => {
    event.preventDefault();
    const read = new FieldReader();
    const name = read.text('name', draft.name, 'the name that stands on your papers');
    if (!Intl.supportedValuesOf('timeZone').includes(draft.zone) && draft.zone !== 'UTC')
      read.refuse('zone', `“${draft.zone}” is not a time zone. Write it as Europe/London.`);
    if (form.isFine(read)) save.mutate({ name, currency: draft.currency, zone: draft.zone });
  };
  return (
    <form onSubmit={submit} noValidate className="rows">
      <TextField label="Name of the business" {...form.field('name')} />
      <ChoiceField label="Currency" {...form.field('currency')} options={currencies.map((code) => ({ value: code, text: code }))} />
      <TextField label="Time zone" {...form.field('zone')} list={Intl.supportedValuesOf('timeZone')} />
      <NotSaved error={save.error} />
      <div style={{ marginTop: 12 }}>
        <button type="submit" className="btn" disabled={save.isPending}>
          Start an empty book
        </button>
      </div>
    </form>
  );
}
