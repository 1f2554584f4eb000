import type { Calibration } from '@twistwright/repertoire';
import type { ReactElement } from 'react';
import { bandWords, numbersOf, percent, type Ruler, valueWords } from './balloon-words.ts';

/** The three numbers before and after, and whose data they are. */
export function WorkingTable({ working, ruler }: { readonly working: Calibration['working']; readonly ruler: Ruler }): ReactElement {
  return (
    // biome-ignore lint/a11y/noNoninteractiveTabindex: on a narrow screen it is read by scrolling, and that has to work with the keyboard
    <div className="scroll" tabIndex={0}>
      <table className="workingtable">
        <thead>
          <tr>
            <th scope="col">Number</th>
            <th scope="col" className="num">
              usual
            </th>
            <th scope="col" className="num">
              these
            </th>
            <th scope="col" className="num">
              measured
            </th>
            <th scope="col" className="num">
              your part
            </th>
            <th scope="col" className="num">
              other makers
            </th>
          </tr>
        </thead>
        <tbody>
          {numbersOf(ruler).map((number) => {
            const posterior = working[number.key];
            return (
              <tr key={number.key} className="plainrow">
                <td>{number.name}</td>
                <td className="num">
                  {valueWords(number, posterior.prior.mean)}
                  <br />
                  <span className="sp">({bandWords(number, posterior.prior)})</span>
                </td>
                <td className="num">
                  <b>{valueWords(number, posterior.mean)}</b>
                  <br />
                  <span className="sp">({bandWords(number, posterior)})</span>
                </td>
                <td className="num">{posterior.measured}</td>
                <td className="num">{percent(posterior.parts.own)}</td>
                <td className="num">{percent(posterior.parts.others)}</td>
              </tr>
            );
          })}
        </tbody>
      </table>
    </div>
  );
}
