/** How long something takes, in minutes. */
export type TimeLaw =
  | { readonly law: 'log-normal'; readonly median: number /** Standard deviation of the logarithm. */; readonly sigma: number }
  | { readonly law: 'gamma'; readonly mean: number /** Standard deviation over mean, squared, is 1 / shape. */; readonly shape: number }
  | { readonly law: 'exponential'; readonly mean: number }
  | { readonly law: 'fixed'; readonly minutes: number };

/** How long somebody is willing to wait, in minutes. */
export type Patience =
  | { readonly law: 'log-normal'; readonly median: number; readonly sigma: number }
  | { readonly law: 'exponential'; readonly mean: number }
  | { readonly law: 'endless' };

/** Who may still join the line. */
export type ClosingRule =
  | { readonly rule: 'none' }
  /** Nobody joins from `minutesBeforeEnd` before the end. */
  | { readonly rule: 'fixed time'; readonly minutesBeforeEnd: number }
  /** Nobody joins once the work ahead of them would last longer than the time left less `keptBackMinutes`. */
  | {
      readonly rule: 'work ahead';
      readonly keptBackMinutes: number;
      /** Minutes counted per head; the mean of the menu if missing. */
      readonly minutesPerHead?: number;
    };

/** What happens when the wanted colour or figure cannot be made from what is left. */
export type OutOfStock = 'other colour, then other figure' | 'other colour' | 'next figure in order' | 'disappointed';

/** The line model's habits; every one can be set for the business, for a kind of gig, or for one gig. */
export interface LineSettings {
  /** Weights of party sizes 1, 2, 3 ...; default [0.3, 0.35, 0.2, 0.1, 0.05]. */
  readonly partySizes?: readonly number[];
  /** Joining: a party joins with probability exp(-max(0, waiting - free) / scale). Missing `scale`: everybody joins. */
  readonly joining?: {
    readonly free: number;
    readonly scale?: number /** Most who may wait or be served; beyond it nobody joins. */;
    readonly room?: number;
  };
  readonly patience?: Patience;
  /** Talk and choosing before the making starts. */
  readonly choosing?: TimeLaw;
  /** More time when colours are chosen as well, minutes; 0 when colour choice is stopped. */
  readonly colourChoosingMinutes?: number;
  readonly handingOver?: TimeLaw;
  /** Copycat strength: at 1 what has just been handed out adds a third to the asking weights in the long run, at 3 as much as they weigh; 0 is none. */
  readonly copycat?: { readonly figures: number; readonly colours: number };
  /** Time grows by this share with every hour worked; default 0.04. */
  readonly fatiguePerHour?: number;
  /** Multiplies making time; 1 is mild and dry. */
  readonly weatherFactor?: number;
  /** Chance per balloon that it pops and is made again; items may have their own. */
  readonly chanceOfPop?: number;
  /** Share of the guest count that nobody mentioned: siblings, adults. Default 0.15. */
  readonly hiddenShare?: number;
  /** Share of those served who come back, half of them for a repair, half for another figure where `mostEach` allows it; default 0.1 in a line, 0.3 at a party. */
  readonly repeatShare?: number;
  /** Minutes of break after each hour worked, after the first hour; default 0 (breaks of a gig are set there). */
  readonly breakPerHourMinutes?: number;
  readonly closing?: ClosingRule;
  /** Minutes after the end in which a guest may still be started; default 0. */
  readonly overtimeMinutes?: number;
  readonly outOfStock?: OutOfStock;
  /** Most figures a guest may have, 1 by default. */
  readonly mostEach?: number;
  /** Someone who pumps (multiplies making time by `pumps`) or draws faces (multiplies extras' time by `draws`). */
  readonly helper?: { readonly pumps?: number; readonly draws?: number };
  /** True: two artists share one line; false: each has a line and guests join the shorter. */
  readonly oneLine?: boolean;
  /** Minutes from the start left out of the statistics. */
  readonly warmUpMinutes?: number;
}
