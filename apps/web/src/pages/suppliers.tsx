import { Link } from '@tanstack/react-router';
import { showMoney } from '@twistwright/units';
import type { ReactElement } from 'react';
import { useBook } from '../book/use-book.ts';
import { Page } from '../frame/page.tsx';
import { Empty } from '../parts/empty.tsx';
import { counted, sentence } from '../words/counted.ts';

/** Who sells what, and on which terms. */
export function Suppliers(): ReactElement {
  const { book } = useBook();
  const show = (amount: Parameters<typeof showMoney>[0]): string => showMoney(amount, book.business.currency);
  return (
    <Page title="Suppliers and prices" whose={book.business.name}>
      <div className="title">
        <h1 className="say">
          {book.suppliers.length === 0
            ? 'No supplier yet.'
            : `${sentence(counted(book.suppliers.length, 'supplier'))} with ${book.offers.length.toLocaleString('en')} bags on offer.`}
        </h1>
        <Link className="btn full" to="/shopping/suppliers/$supplier" params={{ supplier: 'new' }}>
          Add a supplier
        </Link>
      </div>
      {book.suppliers.length === 0 ? (
        <Empty sentence="Add a supplier and the bags it sells, and Shopping says what to buy where, and by when." />
      ) : (
        <table className="list-row">
          <caption className="skip">Suppliers</caption>
          <thead>
            <tr>
              <th scope="col">Supplier</th>
              <th scope="col">To your door</th>
              <th scope="col" className="roomy">
                Carriage
              </th>
              <th scope="col" className="num">
                Bags on offer
              </th>
            </tr>
          </thead>
          <tbody>
            {book.suppliers.map((supplier) => (
              <tr key={supplier.id}>
                <th scope="row">
                  <Link to="/shopping/suppliers/$supplier" params={{ supplier: supplier.id }}>
                    {supplier.name}
                  </Link>
                </th>
                <td>{supplier.leadWorkingDays === 0 ? 'same day, from the counter' : counted(supplier.leadWorkingDays, 'working day')}</td>
                <td className="roomy">
                  {supplier.carriage === 0 ? 'none' : show(supplier.carriage)}
                  {supplier.freeFrom === undefined ? '' : `, free from ${show(supplier.freeFrom)}`}
                  {supplier.leastOrder === undefined ? '' : `; at least ${show(supplier.leastOrder)}`}
                </td>
                <td className="num">{book.offers.filter((offer) => offer.supplier === supplier.id).length}</td>
              </tr>
            ))}
          </tbody>
        </table>
      )}
    </Page>
  );
}
