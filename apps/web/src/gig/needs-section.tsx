import { Link } from '@tanstack/react-router';
import { type Gig, nameOfItem } from '@twistwright/books';
import { sayNeeds } from '@twistwright/planner';
import { memo, type ReactElement } from 'react';
import { useBook } from '../book/use-book.ts';
import { ItemName, rubberOfItem } from '../parts/item-name.tsx';
import { Measured } from '../parts/measured.tsx';
import { Unbroken } from '../parts/unbroken.tsx';
import { NeedKey, NeedPicture } from '../pictures/need-picture.tsx';
import type { GigView, NeedView } from '../planning/gig-view.ts';
import { needNote, occasionOfGig, surelyIn } from '../planning/gig-words.ts';

/** What will it take, against what there is. */
export const NeedsSection = memo(function NeedsSection({
  gig,
  view,
  chance,
}: {
  readonly gig: Gig;
  readonly view: GigView;
  readonly chance: number;
}): ReactElement {
  const { book } = useBook();
  const own = new Set(view.needs.map((need) => need.item));
  const said = sayNeeds(book, { ...view.together, items: view.together.items.filter((need) => own.has(need.item)) });
  const occasion = occasionOfGig(gig);
  const most = Math.max(1, ...view.needs.map((need) => Math.max(need.takes.p90, need.enough)));
  const isShort = view.needs.some((need) => need.short > 0);
  return (
    <section>
      <h2>
        <Unbroken text={said.answer} />
      </h2>
      <p className="lead more">
        {isShort
          ? `So that nothing asked for runs out in ${surelyIn(chance, occasion)}, with all gigs before this one. Hatched is what is missing.`
          : `With what is in store and on order, nothing asked for runs out in ${Math.round(view.together.chanceNow * 100)} of 100 ${occasion}s, all gigs before this one counted.`}
      </p>
      <div>
        {view.needs.map((need) => (
          <NeedRow key={need.item} need={need} scale={most * 1.15} />
        ))}
      </div>
      <div style={{ marginTop: 12 }}>
        <NeedKey occasion={occasion} />
      </div>
      {isShort && (
        <div className="row noprint" style={{ marginTop: 24 }}>
          <Link className="btn" to="/shopping">
            Order what is short
          </Link>
        </div>
      )}
    </section>
  );
});

function NeedRow({ need, scale }: { readonly need: NeedView; readonly scale: number }): ReactElement {
  const { book } = useBook();
  const item = book.items.find((entry) => entry.id === need.item);
  const left = Math.max(0, need.have - need.before);
  const enough = need.short > 0 ? left + need.onOrder + need.short : Math.min(need.enough, left + need.onOrder);
  return (
    <div className="need">
      <div className="i">
        <ItemName book={book} item={need.item} />
      </div>
      <Measured className="p">
        {(width) => (
          <NeedPicture
            width={width}
            scale={scale}
            name={item === undefined ? need.item : nameOfItem(item, book.colours)}
            takes={need.takes}
            enough={enough}
            have={left}
            onOrder={need.onOrder}
            rubber={item?.kind === 'balloon' ? rubberOfItem(book, item) : undefined}
          />
        )}
      </Measured>
      <div className="v">{need.short > 0 ? `Short by ${need.short}` : 'Enough'}</div>
      <div className="note">{needNote(need)}</div>
    </div>
  );
}
