import type { WhatIf } from '@twistwright/planner';
import type { Problem } from '@twistwright/units';
import { useEffect, useRef, useState } from 'react';
import { useBook } from '../book/use-book.ts';
import type { GigView } from './gig-view.ts';
import { plannerDoor } from './planner-door.ts';

export interface GigAnswer {
  readonly view: GigView | undefined;
  readonly problems: readonly Problem[];
}

/** The view of a gig after a change of mind. The last view stays until the next one is there. */
export function useGigView(gig: string, change: WhatIf, chance: number, isResting: boolean): GigAnswer {
  const { book, today } = useBook();
  const [answer, setAnswer] = useState<GigAnswer>({ view: undefined, problems: [] });
  const number = useRef(0);
  const changeText = JSON.stringify(change);
  useEffect(
    () =>
      plannerDoor.listen((told) => {
        if (told.number !== number.current) return;
        if (told.kind === 'gig') setAnswer({ view: told.view, problems: [] });
        if (told.kind === 'refused') setAnswer({ view: undefined, problems: told.problems });
      }),
    [],
  );
  useEffect(() => {
    plannerDoor.open(book, today);
    number.current = plannerDoor.ask({ kind: 'gig', gig, change: JSON.parse(changeText) as WhatIf, chance, isResting });
  }, [book, today, gig, changeText, chance, isResting]);
  return answer;
}
