import type { LocalDate, LocalTime, Money, ZoneName } from '@twistwright/units';
import type { LineSettings, TimeLaw } from './line-settings.ts';

export const gigKinds = ['line', 'party', 'tables', 'strolling', 'made to order', 'class'] as const;
export type GigKind = (typeof gigKinds)[number];

/** One booked job. */
export interface Gig {
  readonly id: string;
  readonly name: string;
  readonly kind: GigKind;
  readonly day: LocalDate;
  readonly starts: LocalTime;
  /** Later than `starts`; a gig past midnight ends at `24:00` and has overtime, or is two gigs. */
  readonly ends: LocalTime;
  /** If it differs from the business's. */
  readonly zone?: ZoneName;
  readonly client?: string;
  readonly where?: Venue;
  /** Artists booked, by id. */
  readonly artists: readonly string[];
  /** Guests expected to want something, as the client says it; hidden ones come on top. Missing only where `arrivals` has absolute rates. */
  readonly guests?: number;
  readonly arrivals?: Arrivals;
  readonly menu: readonly MenuLine[];
  /** Habits that differ at this gig. */
  readonly line?: LineSettings;
  readonly breaks?: readonly {
    readonly atMinute: number;
    readonly minutes: number /** All artists if missing. */;
    readonly artist?: string;
  }[];
  /** Figures made before the start and handed out at once. */
  readonly premade?: readonly { readonly figure: string; readonly colourway: string; readonly count: number }[];
  /** A piece for one guest, such as the child whose party it is. */
  readonly special?: { readonly figure: string; readonly colourway?: string };
  readonly tables?: TablesPlan;
  readonly strolling?: { /** From group to group. */ readonly walking: TimeLaw };
  readonly order?: readonly { readonly figure: string; readonly colourway: string; readonly count: number }[];
  readonly classPlan?: ClassPlan;
  readonly weather?: 'mild' | 'hot' | 'cold' | 'wet';
  readonly outdoors?: boolean;
  readonly agreement?: Agreement;
  /** Lines of the packing list that are ticked, by item id or tool. */
  readonly packed?: readonly string[];
  readonly notes?: string;
}
export interface Venue {
  readonly name: string;
  readonly address?: string;
  /** One way. */
  readonly miles?: number;
  /** Driving, one way. */
  readonly driveMinutes?: number;
}
/** How parties come. */
export type Arrivals =
  /** A Poisson stream whose rate is piecewise linear through the knots (minute from the start, weight). With `guests` on the gig the weights are only a
   * shape, scaled so that that many are expected; without, each weight is parties per minute. */
  | { readonly kind: 'stream'; readonly profile: readonly { readonly minute: number; readonly weight: number }[] }
  /** Everybody is there at the start, in random order. */
  | { readonly kind: 'all at the start' };
export interface MenuLine {
  readonly figure: string;
  /** Asking share; need not sum to one. */
  readonly share: number;
  /** Colourways offered here; all if missing. */
  readonly colourways?: readonly string[];
}
/** Table hopping: parties sit down in a stream, and can be visited until their food comes. */
export interface TablesPlan {
  readonly tables: number;
  /** From sitting down to food. */
  readonly foodAfter: TimeLaw;
  /** From food to leaving. */
  readonly leaveAfter: TimeLaw;
  /** From table to table. */
  readonly walking: TimeLaw;
}
export interface ClassPlan {
  readonly learners: number;
  /** Balloons a learner uses up per one that succeeds. */
  readonly practiceFactor: number;
  /** Figures taught, in order, and minutes for each. */
  readonly lessons: readonly { readonly figure: string; readonly minutes: number }[];
}
/** What has been agreed about money. */
export interface Agreement {
  readonly state: 'asked' | 'quoted' | 'agreed';
  /** Fee agreed, tax included; the quote if missing. */
  readonly fee?: Money;
  readonly deposit?: Money;
  readonly depositPaidOn?: LocalDate;
  readonly balancePaidOn?: LocalDate;
  /** Minutes on station before the start that the client asks for. */
  readonly earlyMinutes?: number;
}
