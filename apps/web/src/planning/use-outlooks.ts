import { useEffect, useState } from 'react';
import { useBook } from '../book/use-book.ts';
import type { GigOutlook } from '../diary/gig-marks.ts';
import { plannerDoor } from './planner-door.ts';

/** What the forecasts say about the coming gigs, one after another. */
export function useOutlooks(): ReadonlyMap<string, GigOutlook> {
  const { book, today } = useBook();
  const [outlooks, setOutlooks] = useState<ReadonlyMap<string, GigOutlook>>(new Map());
  useEffect(() => {
    plannerDoor.open(book, today);
    const number = plannerDoor.ask({ kind: 'outlooks' });
    return plannerDoor.listen((answer) => {
      if (answer.kind === 'outlook' && answer.number === number) setOutlooks((known) => new Map(known).set(answer.gig, answer.outlook));
    });
  }, [book, today]);
  return outlooks;
}
