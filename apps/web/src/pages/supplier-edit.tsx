import { useNavigate, useParams } from '@tanstack/react-router';
import { type Book, nameOfItem, type Offer, type Supplier } from '@twistwright/books';
import { type Money, money, showMoney } from '@twistwright/units';
import { type FormEvent, type ReactElement, useState } from 'react';
import { newId } from '../book/change.ts';
import { useBook, useChangeBook } from '../book/use-book.ts';
import { FieldReader, moneyText, numberText } from '../forms/field-reader.ts';
import { NotSaved } from '../forms/saving.tsx';
import { useForm } from '../forms/use-form.ts';
import { Page } from '../frame/page.tsx';
import { ChoiceField, TextField } from '../parts/field.tsx';
import { ItemName } from '../parts/item-name.tsx';
import { Undo } from '../parts/undo.tsx';
import { PriceListFile } from '../shopping/price-list-file.tsx';
import { counted, sentence } from '../words/counted.ts';
import { Lost } from './lost.tsx';

/** One supplier, its terms and its price list. */
export function SupplierEdit(): ReactElement {
  const { book } = useBook();
  const { supplier: id } = useParams({ from: '/open/shopping/suppliers/$supplier' });
  const known = book.suppliers.find((supplier) => supplier.id === id);
  if (id !== 'new' && known === undefined) return <Lost />;
  const title = known?.name ?? 'Add a supplier';
  return (
    <Page title={title} whose={book.business.name}>
      <div className="title">
        <h1 className="say">{title}</h1>
      </div>
      <SupplierForm known={known} key={id} />
      {known !== undefined && <PriceList supplier={known} />}
    </Page>
  );
}

interface Draft {
  readonly name: string;
  readonly leadWorkingDays: string;
  readonly orderBefore: string;
  readonly carriage: string;
  readonly freeFrom: string;
  readonly leastOrder: string;
}
const draftOf = (supplier: Supplier | undefined, currency: string): Draft => ({
  name: supplier?.name ?? '',
  leadWorkingDays: numberText(supplier?.leadWorkingDays),
  orderBefore: supplier?.orderBefore ?? '',
  carriage: moneyText(supplier?.carriage, currency),
  freeFrom: moneyText(supplier?.freeFrom, currency),
  leastOrder: moneyText(supplier?.leastOrder, currency),
});
function readSupplier(draft: Draft, known: Supplier | undefined, book: Book): { readonly supplier: Supplier; readonly read: FieldReader } {
  const read = new FieldReader();
  const currency = book.business.currency;
  const name = read.text('name', draft.name, 'the name of the shop');
  const orderBefore = draft.orderBefore === '' ? undefined : read.clock('orderBefore', draft.orderBefore);
  const optional: { freeFrom?: Money; leastOrder?: Money } = {};
  const freeFrom = read.optionalMoney('freeFrom', draft.freeFrom, currency);
  const leastOrder = read.optionalMoney('leastOrder', draft.leastOrder, currency);
  if (freeFrom !== undefined) optional.freeFrom = freeFrom;
  if (leastOrder !== undefined) optional.leastOrder = leastOrder;
  const { freeFrom: _free, leastOrder: _least, orderBefore: _before, ...kept } = known ?? { id: newId(name, book.suppliers) };
  const supplier: Supplier = {
    ...kept,
    name,
    leadWorkingDays: read.number('leadWorkingDays', draft.leadWorkingDays, { example: '3', most: 90, whole: true }),
    carriage: read.optionalMoney('carriage', draft.carriage, currency) ?? money(0),
    ...(orderBefore === undefined ? {} : { orderBefore }),
    ...optional,
  };
  return { supplier, read };
}

function SupplierForm({ known }: { readonly known: Supplier | undefined }): ReactElement {
  const { book } = useBook();
  const { change, error, isSaving } = useChangeBook({ fromDraft: true });
  const navigate = useNavigate();
  const currency = book.business.currency;
  const form = useForm(() => draftOf(known, currency));
  const save = (event: FormEvent): void => {
    event.preventDefault();
    const { supplier, read } = readSupplier(form.draft, known, book);
    if (form.isFine(read))
      change(
        { list: 'suppliers', put: supplier },
        () => void navigate({ to: '/shopping/suppliers/$supplier', params: { supplier: supplier.id } }),
      );
  };
  return (
    <>
      <form className="form" onSubmit={save} noValidate>
        <TextField label="Name" {...form.field('name')} />
        <TextField
          label="Working days to your door"
          inputMode="numeric"
          {...form.field('leadWorkingDays')}
          note="0 for a counter where you collect the same day."
        />
        <TextField label="Order before" type="time" {...form.field('orderBefore')} note="Later counts as the next working day." />
        <TextField label={`Carriage, ${currency}`} inputMode="decimal" {...form.field('carriage')} />
        <TextField label={`Free from, ${currency}`} inputMode="decimal" {...form.field('freeFrom')} />
        <TextField label={`Least order, ${currency}`} inputMode="decimal" {...form.field('leastOrder')} />
        <div className="wide row">
          <button type="submit" className="btn full" disabled={isSaving}>
            Save the supplier
          </button>
        </div>
      </form>
      <NotSaved error={error} />
    </>
  );
}

function PriceList({ supplier }: { readonly supplier: Supplier }): ReactElement {
  const { book } = useBook();
  const { change, undo, error } = useChangeBook({ fromDraft: true });
  const [removed, setRemoved] = useState('');
  const offers = book.offers.filter((offer) => offer.supplier === supplier.id);
  const currency = supplier.currency ?? book.business.currency;
  return (
    <section>
      <h2>{offers.length === 0 ? 'Nothing on its price list yet.' : `${sentence(counted(offers.length, 'bag'))} on its price list.`}</h2>
      {removed !== '' && undo !== undefined && (
        <Undo
          sentence={removed}
          action="Put it back"
          onUndo={() => {
            undo();
            setRemoved('');
          }}
        />
      )}
      <PriceListFile supplier={supplier} key={supplier.id} />
      <AddOffer supplier={supplier} />
      <NotSaved error={error} />
      {offers.length > 0 && (
        <table className="list-row" style={{ marginTop: 24 }}>
          <caption className="skip">Price list of {supplier.name}</caption>
          <thead>
            <tr>
              <th scope="col">Item</th>
              <th scope="col" className="num">
                In a bag
              </th>
              <th scope="col" className="num">
                {currency} a bag
              </th>
              <th scope="col" className="roomy">
                Cheaper by the bag
              </th>
              <th scope="col">
                <span className="skip">Take off</span>
              </th>
            </tr>
          </thead>
          <tbody>
            {offers.map((offer) => (
              <tr key={offer.id}>
                <th scope="row">
                  <ItemName book={book} item={offer.item} />
                </th>
                <td className="num">{offer.count}</td>
                <td className="num">{moneyText(offer.price, currency)}</td>
                <td className="roomy">{breaksText(offer, currency)}</td>
                <td className="num">
                  <button
                    type="button"
                    className="btn plain"
                    aria-label={`Take off ${offer.item}, ${offer.count} in a bag`}
                    onClick={() => {
                      change({ list: 'offers', remove: offer.id });
                      setRemoved(`${offer.item} at ${showMoney(offer.price, currency)} is off the list.`);
                    }}
                  >
                    Take off
                  </button>
                </td>
              </tr>
            ))}
          </tbody>
        </table>
      )}
    </section>
  );
}
const breaksText = (offer: Offer, currency: string): string =>
  (offer.breaks ?? []).map((level) => `${showMoney(level.price, currency)} from ${level.bags} bags`).join(', ');

function AddOffer({ supplier }: { readonly supplier: Supplier }): ReactElement {
  const { book } = useBook();
  const { change, error } = useChangeBook({ fromDraft: true });
  const currency = supplier.currency ?? book.business.currency;
  const form = useForm({ item: book.items[0]?.id ?? '', count: '100', price: '' });
  const { draft } = form;
  const save = (event: FormEvent): void => {
    event.preventDefault();
    const read = new FieldReader();
    const count = read.number('count', draft.count, { example: '100', least: 1, whole: true });
    const price = read.money('price', draft.price, currency);
    if (draft.item === '') read.refuse('item', 'Add an item in the store first.');
    if (!form.isFine(read) || price === undefined) return;
    change({
      list: 'offers',
      put: { id: newId(`${supplier.id} ${draft.item} ${count}`, book.offers), supplier: supplier.id, item: draft.item, count, price },
    });
    form.set({ price: '' });
  };
  return (
    <form className="form" onSubmit={save} noValidate>
      <ChoiceField
        label="Item"
        {...form.field('item')}
        options={book.items.map((item) => ({ value: item.id, text: nameOfItem(item, book.colours) }))}
      />
      <TextField label="Pieces in a bag" inputMode="numeric" {...form.field('count')} />
      <TextField label={`Price of a bag, ${currency}`} inputMode="decimal" {...form.field('price')} />
      <div className="wide row">
        <button type="submit" className="btn">
          Add to the price list
        </button>
      </div>
      <NotSaved error={error} />
    </form>
  );
}
