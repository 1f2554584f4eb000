import type { ToolWish } from '@twistwright/books';
import type { KitWork } from '@twistwright/planner';
import { showMoney } from '@twistwright/units';
import { memo, type ReactElement, useMemo, useState } from 'react';
import { useBook } from '../book/use-book.ts';
import { Slider } from '../parts/slider.tsx';
import { Tick } from '../parts/tick.tsx';
import { counted } from '../words/counted.ts';
import { itemName, offerName } from './kit-words.ts';
import { guestsOf, kitFigures, type PageWishes } from './wishes-of-page.ts';

interface PanelProps {
  readonly wishes: PageWishes;
  readonly onChange: (part: Partial<PageWishes>) => void;
  /** Asking share of each figure, for the list of figures. */
  readonly shares: ReadonlyMap<string, number>;
}
const works: readonly { readonly value: KitWork; readonly text: string }[] = [
  { value: 'tables', text: 'Tables in restaurants' },
  { value: 'parties', text: 'Parties' },
  { value: 'small fairs', text: 'Small fairs' },
];

/** Nobody makes more figures than that in an hour for long. */
const mostGuests = 30;

/** Who the kit is for: work, hours, colours, what is there already, what is to be made. */
export const NewcomerPanel = memo(function NewcomerPanel({ wishes, onChange, shares }: PanelProps): ReactElement {
  const { book } = useBook();
  const hasAssorted = book.offers.some((offer) => offer.mix !== undefined);
  const colours = book.colours.length;
  return (
    <aside className="if noprint" aria-label="The newcomer">
      <h2>The newcomer</h2>
      <label className="choice">
        <span>Kind of work</span>
        <span className="chooser">
          <select
            className="in"
            value={wishes.kind}
            onChange={(event) => onChange({ kind: event.target.value as KitWork, guests: undefined })}
          >
            {works.map((work) => (
              <option key={work.value} value={work.value}>
                {work.text}
              </option>
            ))}
          </select>
        </span>
      </label>
      <Slider
        label="Hours to the next order"
        min={1}
        max={60}
        value={wishes.hours}
        text={`${wishes.hours} h`}
        ends={['1', '60 h']}
        onMove={(hours) => onChange({ hours })}
      />
      <Slider
        label="Guests an hour"
        min={1}
        max={Math.max(mostGuests, guestsOf(wishes))}
        value={guestsOf(wishes)}
        text={String(guestsOf(wishes))}
        ends={['1', String(Math.max(mostGuests, guestsOf(wishes)))]}
        onMove={(guests) => onChange({ guests })}
      />
      <Slider
        label="Colours at most"
        min={1}
        max={colours}
        value={wishes.mostColours === 0 ? colours : wishes.mostColours}
        text={wishes.mostColours === 0 ? 'any' : String(wishes.mostColours)}
        ends={['1', 'any']}
        onMove={(most) => onChange({ mostColours: most >= colours ? 0 : most })}
      />
      <Slider
        label="Takes another colour"
        min={0}
        max={10}
        value={Math.round(10 * wishes.takesOther)}
        text={`${Math.round(10 * wishes.takesOther)} in 10`}
        ends={['nobody', 'everybody']}
        onMove={(tenths) => onChange({ takesOther: tenths / 10 })}
      />
      {hasAssorted && (
        <Tick checked={wishes.assortedBags} onChange={(assortedBags) => onChange({ assortedBags })}>
          Bags of mixed colours
        </Tick>
      )}
      <Has wishes={wishes} onChange={onChange} />
      <Figures wishes={wishes} onChange={onChange} shares={shares} />
      <PutIn wishes={wishes} onChange={onChange} />
    </aside>
  );
});

type PartProps = Pick<PanelProps, 'wishes' | 'onChange'>;

const isForTheStart = ({ firstKit, when }: ToolWish): boolean =>
  firstKit === undefined ? when === 'always' || when === 'spare' : firstKit !== 'later';

/** Tools to tick, and balloons to add with a count. */
function Has({ wishes, onChange }: PartProps): ReactElement {
  const { book } = useBook();
  const [adding, setAdding] = useState('');
  const tools = [...new Set((book.settings?.tools ?? []).flatMap((tool) => (isForTheStart(tool) ? [tool.item] : [])))].flatMap((id) => {
    const item = book.items.find((one) => one.id === id);
    return item !== undefined && item.kind !== 'balloon' && book.offers.some((offer) => offer.item === id) ? [item] : [];
  });
  const balloons = book.items.filter((item) => item.kind === 'balloon' && !wishes.have.some((line) => line.item === item.id));
  const put = (item: string, count: number): void =>
    onChange({ have: [...wishes.have.filter((line) => line.item !== item), ...(count > 0 ? [{ item, count }] : [])] });
  return (
    <details className="because">
      <summary>Already has {wishes.have.length === 0 ? 'nothing' : counted(wishes.have.length, 'thing')}</summary>
      {tools.map((tool) => (
        <Tick key={tool.id} checked={wishes.have.some((line) => line.item === tool.id)} onChange={(has) => put(tool.id, has ? 1 : 0)}>
          {tool.name}
        </Tick>
      ))}
      {wishes.have
        .filter((line) => !tools.some((tool) => tool.id === line.item))
        .map((line) => (
          <label key={line.item} className="pick">
            <input
              className="in share"
              type="number"
              min={0}
              max={10000}
              value={line.count}
              onChange={(event) => put(line.item, Math.max(0, Math.min(10000, Math.round(Number(event.target.value)))))}
            />
            <span className="picked">{itemName(book, line.item)}</span>
          </label>
        ))}
      <label className="choice">
        <span className="note">Balloons that are there already</span>
        <span className="chooser">
          <select
            className="in"
            value={adding}
            onChange={(event) => {
              put(event.target.value, 50);
              setAdding('');
            }}
          >
            <option value="">choose one</option>
            {balloons.map((item) => (
              <option key={item.id} value={item.id}>
                {itemName(book, item.id)}
              </option>
            ))}
          </select>
        </span>
      </label>
    </details>
  );
}

/** Figures to tick, each with how often it is asked for. */
function Figures({ wishes, onChange, shares }: PanelProps): ReactElement {
  const { book } = useBook();
  const figures = kitFigures(book);
  const wanted = figures.length - wishes.unwanted.length;
  const asked = (id: string): number => wishes.shares?.[id] ?? Number((100 * (shares.get(id) ?? 0)).toFixed(1));
  const ask = (id: string, share: number): void =>
    onChange({ shares: { ...Object.fromEntries(figures.map((figure) => [figure.id, asked(figure.id)])), [id]: share } });
  return (
    <details className="because">
      <summary>
        {wanted < figures.length ? `${wanted} of ${figures.length} figures` : wanted === 1 ? 'The one figure' : `All ${wanted} figures`} to
        make
      </summary>
      <div className="row">
        <button type="button" className="btn plain" onClick={() => onChange({ unwanted: [] })}>
          All
        </button>
        <button
          type="button"
          className="btn plain"
          onClick={() => onChange({ unwanted: figures.filter((figure) => (figure.difficulty ?? 3) > 2).map((figure) => figure.id) })}
        >
          Easy ones only
        </button>
      </div>
      {wishes.shares !== undefined && (
        <button type="button" className="btn plain" onClick={() => onChange({ shares: undefined })}>
          Ask as in the gigs of the book
        </button>
      )}
      <p className="note">The number says how many of 100 guests ask for it.</p>
      {figures.map((figure) => {
        const isWanted = !wishes.unwanted.includes(figure.id);
        return (
          <div key={figure.id} className="menu-line">
            <Tick
              checked={isWanted}
              onChange={(want) =>
                onChange({ unwanted: want ? wishes.unwanted.filter((id) => id !== figure.id) : [...wishes.unwanted, figure.id] })
              }
            >
              {figure.name}
            </Tick>
            {isWanted && (
              <input
                className="in share"
                type="number"
                min={0}
                max={1000}
                step={0.1}
                aria-label={`How often ${figure.name} is asked for`}
                value={asked(figure.id)}
                onChange={(event) => ask(figure.id, Math.max(0, Number(event.target.value)))}
              />
            )}
          </div>
        );
      })}
    </details>
  );
}

/** Offers to buy in any case, and what has been taken out. */
function PutIn({ wishes, onChange }: PartProps): ReactElement {
  const { book } = useBook();
  const { currency } = book.business;
  const nameOf = (id: string): string => {
    const offer = book.offers.find((one) => one.id === id);
    if (offer === undefined) return offerName(book, id);
    const supplier = book.suppliers.find((one) => one.id === offer.supplier)?.name ?? offer.supplier;
    return `${offerName(book, id)}, ${showMoney(offer.price, currency)}, ${supplier}`;
  };
  const balloons = useMemo(() => new Set(book.items.flatMap((item) => (item.kind === 'tool' ? [] : [item.id]))), [book]);
  const left = book.offers.filter((offer) => !wishes.forcedIn.includes(offer.id) && (offer.mix !== undefined || balloons.has(offer.item)));
  return (
    <details className="because">
      <summary>Put a bag in, whatever it costs</summary>
      {wishes.forcedIn.map((id) => (
        <Tick key={id} checked onChange={() => onChange({ forcedIn: wishes.forcedIn.filter((one) => one !== id) })}>
          {nameOf(id)}
        </Tick>
      ))}
      <span className="chooser">
        <select
          className="in"
          aria-label="Put a bag in"
          value=""
          onChange={(event) =>
            onChange({
              forcedIn: [...wishes.forcedIn, event.target.value],
              takenOut: wishes.takenOut.filter((one) => one !== event.target.value),
            })
          }
        >
          <option value="">choose a bag</option>
          {left.map((offer) => (
            <option key={offer.id} value={offer.id}>
              {nameOf(offer.id)}
            </option>
          ))}
        </select>
      </span>
    </details>
  );
}
