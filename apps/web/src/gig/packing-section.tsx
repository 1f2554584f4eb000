import { type Book, cautions, deference, type Gig, swordCaution } from '@twistwright/books';
import type { PackingLine, PackingPlan } from '@twistwright/planner';
import { longDate } from '@twistwright/units';
import { memo, type ReactElement } from 'react';
import { useBook, useChangeBook } from '../book/use-book.ts';
import { Because } from '../parts/because.tsx';
import { ItemName } from '../parts/item-name.tsx';
import { Tick } from '../parts/tick.tsx';
import { counted, sentence } from '../words/counted.ts';

/** What goes into which pocket, bag and boot; each line a box to tick. */
export const PackingSection = memo(function PackingSection({
  gig,
  packing,
}: {
  readonly gig: Gig;
  readonly packing: PackingPlan;
}): ReactElement {
  const { book } = useBook();
  const { change } = useChangeBook();
  const packed = gig.packed ?? [];
  const tick = (line: PackingLine, checked: boolean): void =>
    change({ list: 'gigs', put: { ...gig, packed: checked ? [...packed, line.id] : packed.filter((id) => id !== line.id) } });
  const print = (): void => {
    document.body.classList.add('printing-packing');
    addEventListener('afterprint', () => document.body.classList.remove('printing-packing'), { once: true });
    window.print();
  };
  return (
    <section className="packlist">
      <div className="onlyprint">
        <p>
          <b>{gig.name}</b>, {longDate(gig.day)}, {gig.starts} to {gig.ends}.{' '}
          {sentence([gig.where?.name, gig.where?.address].filter((part) => part !== undefined && part !== '').join(', '))}
        </p>
      </div>
      <h2>{packingSentence(packing)}</h2>
      <div className="packing">
        {packing.places.map((place) => (
          <div key={place.place}>
            <h3>{sentence(place.name)}</h3>
            <ul>
              {place.lines.map((line) => (
                <li key={line.id}>
                  <Tick checked={packed.includes(line.id)} onChange={(checked) => tick(line, checked)}>
                    <span className="what">
                      <span className="q">{line.count}</span>
                      <ItemName book={book} item={line.item} />
                      <LineNote line={line} />
                    </span>
                  </Tick>
                </li>
              ))}
            </ul>
          </div>
        ))}
      </div>
      {packing.leaveAtHome.length > 0 && (
        <Because ask={`Leave ${counted(new Set(packing.leaveAtHome.map((entry) => entry.item)).size, 'kind')} at home`}>
          <p>Nobody asks for them here.</p>
          {[...Map.groupBy(packing.leaveAtHome, (entry) => entry.place)].map(([place, entries]) => (
            <p key={place}>
              <b>Out of the {nameOfPlace(book, place)}:</b>{' '}
              {entries.map((entry, index) => (
                <span key={entry.item}>
                  {index > 0 && ', '}
                  {entry.name} <span className="note">({entry.count})</span>
                </span>
              ))}
              .
            </p>
          ))}
        </Because>
      )}
      <p className="onlyprint caution">
        <b>Take care.</b> {cautions.map((caution) => caution.text).join(' ')} {swordCaution.text} {deference}
      </p>
      <div className="row noprint" style={{ marginTop: 24 }}>
        <button type="button" className="btn" onClick={print}>
          Print the packing list
        </button>
      </div>
    </section>
  );
});

/** The name of a place as it stands behind "the". */
const nameOfPlace = (book: Book, place: string): string =>
  (book.places.find((entry) => entry.id === place)?.name ?? place).replace(/^the /, '');

function packingSentence(packing: PackingPlan): string {
  if (packing.total === 0) return 'There is nothing to pack.';
  const missing =
    packing.missing.length === 0
      ? ''
      : ` ${sentence(counted(packing.missing.length, 'line'))} ${packing.missing.length === 1 ? 'is' : 'are'} not complete.`;
  return `Pack ${counted(packing.total, 'line')}${packing.ticked === 0 ? '' : `; ${packing.ticked} ${packing.ticked === 1 ? 'is' : 'are'} ticked`}.${missing}`;
}

/** Where it comes from, or what is missing. */
function LineNote({ line }: { readonly line: PackingLine }): ReactElement {
  const { book } = useBook();
  const from = line.from.map((part) => (part.already ? `${part.count} there` : `${part.count} from the ${nameOfPlace(book, part.place)}`));
  return (
    <span className="note">
      {from.join(', ')}
      {line.missing > 0 && (
        <b>
          {' '}
          <span className="hatched" />
          {line.missing} missing{line.onOrder > 0 ? `, ${line.onOrder} on order` : ''}
        </b>
      )}
    </span>
  );
}
