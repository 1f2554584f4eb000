import type { KitPlan } from '@twistwright/planner';
import type { ReactElement } from 'react';
import { Because } from '../parts/because.tsx';
import { counted, listed, sentence } from '../words/counted.ts';
import { of100 } from './kit-words.ts';
import { guestsOf, type PageWishes } from './wishes-of-page.ts';

const workWords = { tables: 'at tables', parties: 'at parties', 'small fairs': 'at small fairs' } as const;

/** What the number of requests met is made of, what it rests on, and how good the purchase is. */
export function Proof({ plan, page }: { readonly plan: KitPlan; readonly page: PageWishes }): ReactElement {
  const { kit, lasting, warnings } = plan;
  const met = of100(kit.met);
  const first = of100(kit.metFirstChoice);
  const leftOut = Math.min(100 - met, of100(kit.leftOut.reduce((sum, { share }) => sum + share, 0)));
  const short = 100 - met - leftOut;
  const cannot = warnings.filter((one) => one.code === 'kit.figure-out-of-reach');
  return (
    <Because ask={`Why ${met}?`}>
      <p>
        Of 100 guests {first} get the colour they ask for first and {met - first} another one that will do.{' '}
        {leftOut > 0 && `${leftOut} ask for a figure that is left out. `}
        {short > 0 && `${short} find their colour gone, and no other that they take.`}
      </p>
      <p>
        It rests on {guestsOf(page)} guests an hour {workWords[page.kind]}, so about {Math.round(kit.requests)} in{' '}
        {page.hours === 1 ? 'the hour' : `the ${page.hours} hours`}; on {Math.round(10 * kit.chanceOfOtherColour)} in 10 who take another
        colour when theirs is missing; and on how often each figure is asked for,{' '}
        {page.shares === undefined ? 'as on the menus of the gigs in the book' : 'as you have said'}.
      </p>
      <p>
        Guests were sent past this kit, by chance, again and again: in 8 tries of 10 between {of100(lasting.met.p10)} and{' '}
        {of100(lasting.met.p90)} of 100 are met. About {Math.round(lasting.figures.p50)} figures are made ({Math.round(lasting.figures.p10)}{' '}
        to {Math.round(lasting.figures.p90)}).
        {kit.met < lasting.met.p10 && ` The ${met} is reckoned from averages, and promises too little where much runs out.`}
      </p>
      <p>
        {kit.standing.kind === 'proven'
          ? 'Proven: no other purchase for this money meets more.'
          : `No purchase for this money meets more than ${(100 * kit.metAtMost).toFixed(1)} of 100; this one meets ${(100 * kit.met).toFixed(1)}.`}
      </p>
      {cannot.length > 0 && (
        <p>
          {sentence(counted(cannot.length, 'figure'))} cannot be made from any offer:{' '}
          {listed(cannot.map((one) => one.sentence.split(' cannot be made')[0] ?? ''))}.
        </p>
      )}
    </Because>
  );
}
