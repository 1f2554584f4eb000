import { Link } from '@tanstack/react-router';
import type { Gig } from '@twistwright/books';
import { shortDate, showMoney } from '@twistwright/units';
import type { ReactElement } from 'react';
import { useBook } from '../book/use-book.ts';
import { Page } from '../frame/page.tsx';
import { Empty } from '../parts/empty.tsx';
import { counted, sentence } from '../words/counted.ts';

/** Every gig of the book, the coming ones first. */
export function Gigs(): ReactElement {
  const { book, today } = useBook();
  const coming = book.gigs.filter((gig) => gig.day >= today).sort((a, b) => (a.day + a.starts < b.day + b.starts ? -1 : 1));
  const past = book.gigs.filter((gig) => gig.day < today).sort((a, b) => (a.day < b.day ? 1 : -1));
  return (
    <Page title="Gigs" whose={book.business.name}>
      <div className="title">
        <h1 className="say">{coming.length === 0 ? 'No gig is coming.' : `${sentence(counted(coming.length, 'gig'))} to come.`}</h1>
        <Link className="btn full" to="/gigs/new">
          Add a gig
        </Link>
      </div>
      {coming.length === 0 && past.length === 0 ? (
        <Empty sentence="Add the first gig, and its page says whether you can serve it, what it takes and what to charge." />
      ) : (
        <GigTable gigs={coming} caption="Coming gigs" />
      )}
      {past.length > 0 && (
        <section>
          <h2>{sentence(counted(past.length, 'gig'))} behind you.</h2>
          <GigTable gigs={past} caption="Past gigs" />
        </section>
      )}
    </Page>
  );
}

function GigTable({ gigs, caption }: { readonly gigs: readonly Gig[]; readonly caption: string }): ReactElement | null {
  const { book } = useBook();
  if (gigs.length === 0) return null;
  return (
    <table className="list-row">
      <caption className="skip">{caption}</caption>
      <thead>
        <tr>
          <th scope="col">Gig</th>
          <th scope="col">When</th>
          <th scope="col" className="roomy">
            Kind
          </th>
          <th scope="col" className="num roomy">
            Guests
          </th>
          <th scope="col" className="num roomy">
            Agreed fee
          </th>
        </tr>
      </thead>
      <tbody>
        {gigs.map((gig) => (
          <tr key={gig.id}>
            <th scope="row">
              <Link to="/gigs/$gig" params={{ gig: gig.id }}>
                {gig.name}
              </Link>
            </th>
            <td className="plainrow">
              {shortDate(gig.day)}, {gig.starts} to {gig.ends}
            </td>
            <td className="roomy">{gig.kind}</td>
            <td className="num roomy">{gig.guests ?? gig.classPlan?.learners ?? ''}</td>
            <td className="num roomy">{gig.agreement?.fee === undefined ? '' : showMoney(gig.agreement.fee, book.business.currency)}</td>
          </tr>
        ))}
      </tbody>
    </table>
  );
}
