import { shortDate } from '@twistwright/units';
import type { ReactElement } from 'react';
import { useBook } from '../book/use-book.ts';
import { Because } from '../parts/because.tsx';
import { ledgerOf } from './ledger-words.ts';

/** What came in, went and was counted of one item, and where the rest lies. */
export function ItemLedger({ item }: { readonly item: string }): ReactElement {
  const { book } = useBook();
  const lines = ledgerOf(book, item);
  const left = lines[0]?.left ?? 0;
  return (
    <section>
      <h2>{left === 0 ? 'There is none.' : `There ${left === 1 ? 'is one piece' : `are ${left.toLocaleString('en')} pieces`}.`}</h2>
      {lines.length > 0 && (
        <Because ask="The ledger">
          <div className="scroll">
            <table>
              <caption className="skip">What came in, went and was counted, latest first</caption>
              <thead>
                <tr>
                  <th scope="col">Day</th>
                  <th scope="col">What</th>
                  <th scope="col">Where</th>
                  <th scope="col" className="num">
                    Change
                  </th>
                  <th scope="col" className="num">
                    Then there were
                  </th>
                </tr>
              </thead>
              <tbody>
                {lines.map((line) => (
                  <tr key={line.id}>
                    <th scope="row">{shortDate(line.day)}</th>
                    <td>{line.what}</td>
                    <td>{line.where}</td>
                    <td className="num">{line.change > 0 ? `+${line.change}` : line.change < 0 ? `−${-line.change}` : 'none'}</td>
                    <td className="num">{line.left}</td>
                  </tr>
                ))}
              </tbody>
            </table>
          </div>
        </Because>
      )}
    </section>
  );
}
