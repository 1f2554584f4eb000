import type { SavedKit } from '@twistwright/books';
import { type BookKitWishes, type KitPlan, metWithin, wholeMoney } from '@twistwright/planner';
import { type CurrencyCode, showMoney } from '@twistwright/units';
import { memo, type ReactElement, useState } from 'react';
import { useBook } from '../book/use-book.ts';
import { listed } from '../words/counted.ts';
import { bagsWords, comparedSentence, figureName, of100, offerName } from './kit-words.ts';
import { type PlannedKit, useOtherKit } from './use-kit.ts';

interface Kept {
  readonly name: string;
  readonly wishes: BookKitWishes;
}

/** Two kits side by side: the one on the page, and one that was kept before. */
export const CompareSection = memo(function CompareSection({ plan, wishes }: PlannedKit): ReactElement {
  const { book } = useBook();
  const { currency } = book.business;
  const [kept, setKept] = useState<Kept>();
  const other = useOtherKit(kept?.wishes);
  const saved = book.kits ?? [];
  const choose = (id: string): void => {
    const kit = saved.find((one: SavedKit) => one.id === id);
    if (kit !== undefined) setKept({ name: kit.name, wishes: kit.wishes });
  };
  return (
    <section>
      <h2>
        {kept === undefined
          ? 'Hold two kits side by side.'
          : other === undefined
            ? 'Working out the other kit …'
            : comparedSentence(plan.kit, other.kit, kept.name, currency)}
      </h2>
      <div className="row noprint" style={{ marginTop: 12 }}>
        <button type="button" className="btn" onClick={() => setKept({ name: keptName(wishes, currency), wishes })}>
          Keep this one beside
        </button>
        {saved.length > 0 && (
          <label className="choice">
            <span className="skip">A saved kit to hold beside</span>
            <span className="chooser">
              <select className="in" value="" onChange={(event) => choose(event.target.value)}>
                <option value="">or a saved kit</option>
                {saved.map((kit) => (
                  <option key={kit.id} value={kit.id}>
                    {kit.name}
                  </option>
                ))}
              </select>
            </span>
          </label>
        )}
        {kept !== undefined && (
          <button type="button" className="btn plain" onClick={() => setKept(undefined)}>
            Put it away
          </button>
        )}
      </div>
      {kept === undefined && (
        <p className="note more">Keep this one, then move the sliders: both stand here with what is only in one of them.</p>
      )}
      {kept !== undefined && other !== undefined && (
        <div className="sides">
          <Side title="This kit" plan={plan} beside={other} />
          <Side title={kept.name} plan={other} beside={plan} />
        </div>
      )}
    </section>
  );
});

/** "the kit for £90", and that something was put in or taken out. */
function keptName({ budget, forcedIn = [], takenOut = [] }: BookKitWishes, currency: CurrencyCode): string {
  const decided = forcedIn.length + takenOut.length > 0 ? ' as you had decided it' : '';
  return `the kit for ${wholeMoney(budget, currency)}${decided}`;
}
function Side({ title, plan, beside }: { readonly title: string; readonly plan: KitPlan; readonly beside: KitPlan }): ReactElement {
  const { book } = useBook();
  const { currency } = book.business;
  const { kit, lasting } = plan;
  const { low, high } = metWithin(kit, lasting);
  const bagsElsewhere = new Map(beside.kit.lines.map((line) => [line.offer, line.bags]));
  const onlyHere = [
    ...kit.lines.flatMap((line) => {
      const more = line.bags - (bagsElsewhere.get(line.offer) ?? 0);
      return more > 0
        ? [`${offerName(book, line.offer, false)}, ${bagsWords(book, line.offer, more, (more * line.pieces) / line.bags)}`]
        : [];
    }),
    ...kit.tools.filter((tool) => !beside.kit.tools.some((one) => one.tool === tool.tool)).map((tool) => tool.name),
  ];
  const made = (of: KitPlan): readonly string[] => of.kit.figures.filter((figure) => figure.met > 0).map((figure) => figure.figure);
  const figures = made(plan).filter((figure) => !made(beside).includes(figure));
  return (
    <div>
      <h3>{title.charAt(0).toUpperCase() + title.slice(1)}</h3>
      <dl>
        <Fact what="Costs" is={showMoney(kit.spent, currency)} />
        <Fact what="Requests met" is={`${of100(kit.met)} of 100`} spread={`${of100(low)} to ${of100(high)}`} />
        <Fact what="Figures" is={String(made(plan).length)} />
        <Fact what="Colours" is={String(kit.colours.length)} />
        <Fact
          what="Lasts, hours"
          is={lasting.hoursUntilShort.p50.toFixed(1)}
          spread={`${lasting.hoursUntilShort.p10.toFixed(1)} to ${lasting.hoursUntilShort.p90.toFixed(1)}`}
        />
      </dl>
      <p style={{ marginTop: 12, fontWeight: 700 }}>
        {onlyHere.length + figures.length === 0 ? 'Nothing that the other lacks.' : 'Only here:'}
      </p>
      <ul>
        {onlyHere.map((name) => (
          <li key={name}>{name}</li>
        ))}
        {figures.length > 0 && <li>Makes {listed(figures.map((figure) => figureName(book, figure)))}</li>}
      </ul>
    </div>
  );
}
const Fact = ({ what, is, spread }: { readonly what: string; readonly is: string; readonly spread?: string }): ReactElement => (
  <div>
    <dt>{what}</dt>
    <dd>
      {is} {spread !== undefined && <span className="sp">({spread})</span>}
    </dd>
  </div>
);
