import type { WhatIf } from '@twistwright/planner';
import type { Problem } from '@twistwright/units';
import { useEffect, useRef, useState } from 'react';
import { useBook } from '../book/use-book.ts';
import type { GigView } from './gig-view.ts';
import { plannerDoor } from './planner-door.ts';

export interface GigAnswer {
  readonly view: GigView | undefined;
  readonly problems: readonly Problem[];
  /** True while what is shown is not yet the full answer to what was asked. */
  readonly isBusy: boolean;
}

/** The view of a gig after a change of mind. The last view stays until the next one is there. */
export function useGigView(gig: string, change: WhatIf, chance: number, isResting: boolean): GigAnswer {
  const { book, today } = useBook();
  const [answer, setAnswer] = useState<Omit<GigAnswer, 'isBusy'> & { readonly to: string }>({ view: undefined, problems: [], to: '' });
  const number = useRef(0);
  const asked = useRef('');
  const changeText = JSON.stringify(change);
  const question = JSON.stringify([gig, changeText, chance]);
  useEffect(
    () =>
      plannerDoor.listen((told) => {
        if (told.number !== number.current) return;
        if (told.kind === 'gig') setAnswer({ view: told.view, problems: [], to: asked.current });
        if (told.kind === 'refused') setAnswer({ view: undefined, problems: told.problems, to: asked.current });
      }),
    [],
  );
  useEffect(() => {
    plannerDoor.open(book, today);
    asked.current = question;
    number.current = plannerDoor.ask({ kind: 'gig', gig, change: JSON.parse(changeText) as WhatIf, chance, isResting });
  }, [book, today, gig, changeText, chance, question, isResting]);
  const isFull = answer.problems.length > 0 || answer.view?.isSettled === true;
  return { view: answer.view, problems: answer.problems, isBusy: answer.to !== question || !isFull };
}
