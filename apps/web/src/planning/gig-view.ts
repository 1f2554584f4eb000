import type { Charge, ForecastSummary, Needs, PackingPlan } from '@twistwright/planner';
import type { Spread } from '@twistwright/units';

/** What the page of a gig shows: spreads over the tries so far, and what follows from them. Plain data, so that it crosses from the worker. */
export interface GigView {
  readonly forecast: ForecastSummary;
  /** True when as many tries were made as the book asks for. */
  readonly isSettled: boolean;
  /** Expected minutes for one guest: choosing, making, handing over. */
  readonly minutesEach: number;
  /** Needs of everything up to and with this gig, jointly. */
  readonly together: Needs;
  readonly needs: readonly NeedView[];
  readonly charge: Charge;
  readonly packing: PackingPlan;
  /** Fewest artists that keep the promise; missing while it is not known, 0 if no number up to five does. */
  readonly artistsNeeded?: number;
}
export interface NeedView {
  readonly item: string;
  readonly takes: Pick<Spread, 'p10' | 'p50' | 'p90' | 'mean'>;
  /** What the gigs before it take, in the middle. */
  readonly before: number;
  /** Pieces that are enough at this gig with the chosen chance, jointly with all other items. */
  readonly enough: number;
  readonly have: number;
  readonly onOrder: number;
  /** Missing for everything up to and with this gig. */
  readonly short: number;
}
