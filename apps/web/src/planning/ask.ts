import type { Book } from '@twistwright/books';
import type { WhatIf } from '@twistwright/planner';
import type { LocalDate, Problem } from '@twistwright/units';
import type { GigOutlook } from '../diary/gig-marks.ts';
import type { GigView } from './gig-view.ts';

/** What the page asks of the worker. A newer question about the same thing ends the older one. */
export type Ask =
  | { readonly kind: 'open'; readonly book: Book; readonly today: LocalDate }
  | {
      readonly kind: 'gig';
      readonly number: number;
      readonly gig: string;
      readonly change: WhatIf;
      readonly chance: number;
      /** False while a finger is on a slider: a quick answer is enough. */
      readonly isResting: boolean;
    }
  | { readonly kind: 'outlooks'; readonly number: number };

/** What comes back, some of it before the answer is final. */
export type Answer =
  | { readonly kind: 'gig'; readonly number: number; readonly view: GigView }
  | { readonly kind: 'refused'; readonly number: number; readonly problems: readonly Problem[] }
  | { readonly kind: 'outlook'; readonly number: number; readonly gig: string; readonly outlook: GigOutlook };
