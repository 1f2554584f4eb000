/**
 * One gig as plain data for the line simulation: who comes when, what they ask for, who makes it, how long it takes, what it takes.
 * Times are minutes from the start of the gig; chances and shares are 0 to 1; indexes count from 0. Nothing here knows a book.
 */
export interface LineModel {
  /** The end of the gig in minutes. Nobody is started at or after `end` + `overtimeMinutes`. */
  readonly end: number;
  /** Minutes after the end in which somebody may still be started. 0 if absent. */
  readonly overtimeMinutes?: number;
  readonly arrivals: Arrivals;
  /** Chances of parties of 1, 2, 3 … guests; any scale. Everybody alone if absent. Not used for listed parties. */
  readonly partySizes?: readonly number[];
  /** Guests nobody counted (siblings who join at the front, grown-ups), as a share of the guests who were. 0 if absent. */
  readonly hiddenShare?: number;
  /** A party that finds Q people waiting joins with chance exp(-max(0, Q - free) / scale). Everybody joins if absent. */
  readonly joining?: { readonly free: number; readonly scale: number };
  /** Most people who may wait or be served at a time; a party that does not fit goes elsewhere (counted as not joined). No limit if absent. */
  readonly room?: number;
  /** One value a party: a guest who still waits after that leaves. At tables: minutes until the food comes or they go. */
  readonly patience: Patience;
  /** `shared line`: whoever is free takes the first. `own lines`: a line each, parties pick the shortest. `tables`: parties stay where they are, an artist goes to one table after another and makes for all of it. */
  readonly serving: 'shared line' | 'own lines' | 'tables';
  /** Only for tables. */
  readonly tables?: Tables;
  readonly artists: readonly LineArtist[];
  readonly closing: ClosingRule;
  /** The guest's time at the front before making begins. None if absent. */
  readonly choosing?: Duration;
  /** More of it where a figure has more than one colourway. None if absent. */
  readonly colourChoosing?: Duration;
  /** Handing over and thanks. None if absent. */
  readonly handingOver?: Duration;
  readonly items: readonly LineItem[];
  readonly figures: readonly LineFigure[];
  readonly copycat?: { readonly figures?: Urn; readonly colours?: Urn };
  readonly ifShort: IfShort;
  /** `each piece`: each balloon pops with its item's chance and is made again, which may pop too. `each line`: at most one more of a recipe line, with chance x count. */
  readonly pops: 'each piece' | 'each line';
  /** Weather: factor on the minutes of making and on the chance of popping. 1 and 1 if absent. */
  readonly weather?: { readonly makingFactor: number; readonly popFactor: number };
  /** Somebody who pumps (factor on making, below 1) and may draw the faces. */
  readonly helper?: { readonly makingFactor: number; readonly drawsFaces: boolean };
  /** Figures made before the start: handed out at once to who asks for them, their items gone from the stock at the start. */
  readonly preMade?: readonly { readonly figure: number; readonly colourway: number; readonly count: number }[];
  /** Guests who come back; `oneEach` forbids another figure, not a repair. */
  readonly returns?: Returns;
  /** Guests who come before this minute are left out of all statistics. 0 if absent. */
  readonly warmUpMinutes?: number;
  /** A wait longer than this breaks the promise. 15 if absent. */
  readonly promiseMinutes?: number;
  /**
   * Where the luck comes from. `by purpose` (the default): each party and each guest has a key, and every purpose its own draw from it, so
   * that a what-if leaves the luck of everybody else alone. `two streams`: one stream for who comes and one for who is served, drawn in
   * order; for comparing with a program that does so.
   */
  readonly draws?: 'by purpose' | 'two streams';
}

/** A time that varies, in minutes. `sigma` is the standard deviation of the logarithm; a gamma has mean `mean` and shape `shape` (1 = exponential). */
export type Duration =
  | { readonly kind: 'fixed'; readonly minutes: number }
  | { readonly kind: 'exponential'; readonly mean: number }
  | { readonly kind: 'gamma'; readonly mean: number; readonly shape: number }
  | { readonly kind: 'log-normal'; readonly median: number; readonly sigma: number };
export type Patience = { readonly kind: 'endless' } | Duration;

export type Arrivals =
  /**
   * Parties in a Poisson stream whose rate, in parties a minute, runs straight from knot to knot and is 0 outside them. `shape`: the
   * whole rate is multiplied by a gamma of mean 1 and this shape, once a gig, where the size of the crowd is not sure.
   */
  | { readonly kind: 'stream'; readonly knots: readonly RateKnot[]; readonly shape?: number }
  /** Everybody is there at the start; the last party is cut to make the number whole. */
  | { readonly kind: 'at start'; readonly guests: number }
  /** A fixed list, by time; a guest may have a figure (and a colourway of it) settled beforehand. */
  | { readonly kind: 'list'; readonly parties: readonly ListedParty[] }
  /** Strolling: an artist who is free walks, finds a group, makes for it, walks on, until the end or until `guests` were found. */
  | { readonly kind: 'found'; readonly walking: Duration; readonly guests?: number }
  /** A class: learners make the figures of the list one after another with the first artist; each needs `tries` pieces of a figure and `slowness` times the artist's minutes. */
  | {
      readonly kind: 'class';
      readonly learners: number;
      readonly figures: readonly number[];
      readonly tries: number;
      readonly slowness: number;
    };
export interface RateKnot {
  readonly minute: number;
  readonly perMinute: number;
}
export interface ListedParty {
  readonly minute: number;
  readonly guests: readonly Wish[];
}
export interface Wish {
  readonly figure?: number;
  readonly colourway?: number;
}

export interface Tables {
  /** From one table to the next. */
  readonly walking: Duration;
  /** Number of tables; a party that finds all taken goes elsewhere (counted as not joined). No limit if absent. */
  readonly count?: number;
  /** Minutes a party keeps its table after it may no longer be visited. 0 if absent. */
  readonly stayingMinutes?: number;
}

export interface LineArtist {
  readonly id: string;
  /** Factor on the minutes of making: 1 as the figure says, 1.3 slower. */
  readonly pace: number;
  /** There from this minute (0 if absent) until this one (the end if absent); what was started is finished. */
  readonly from?: number;
  readonly until?: number;
  /** Taken at the minute, or when the guest of that moment is done. */
  readonly breaks?: readonly { readonly minute: number; readonly minutes: number }[];
  /** Making takes 1 + `perHour` x (hours worked beyond `freshMinutes`) as long. */
  readonly fatigue?: { readonly perHour: number; readonly freshMinutes: number };
}

export type ClosingRule =
  | { readonly kind: 'none' }
  /** Nobody joins from this minute on. */
  | { readonly kind: 'fixed'; readonly minute: number }
  /** A party may join if now + (waiting + party) x `minutesEach` / artists is not after the end less `keptBackMinutes`. `minutesEach` as expected from the menu if absent. */
  | { readonly kind: 'work ahead'; readonly minutesEach?: number; readonly keptBackMinutes: number };

export interface LineItem {
  readonly id: string;
  /** Pieces at the start. Never runs out if absent. */
  readonly stock?: number;
  /** Chance that one piece pops or is a dud. */
  readonly popChance: number;
}
export interface LineFigure {
  readonly id: string;
  /** Asking share; any scale. */
  readonly share: number;
  /** False: taken off the menu. It stays in the list so that guests who did not ask for it keep their wishes. True if absent. */
  readonly offered?: boolean;
  readonly making: Duration;
  /** Drawing a face or so, not paced by the hands; 0 if absent or if a helper does it. */
  readonly drawingMinutes?: number;
  /** To make a popped piece again. 0 if absent. */
  readonly redoMinutes?: number;
  readonly colourways: readonly LineColourway[];
}
export interface LineColourway {
  readonly id: string;
  /** Asking share among the figure's colourways; any scale. */
  readonly share: number;
  /** The colour that guests see and copy, as an index of ones own choice from 0. */
  readonly colour: number;
  readonly lines: readonly { readonly item: number; readonly count: number }[];
}

/**
 * Copycat demand as an urn. Shares start with weight 1 together; each one handed out adds `added` to its kind, and what was added before
 * shrinks to `keeps` of itself. `keeps` 1 is the urn of Eggenberger and Polya (1923); below 1 only what has just been handed out counts.
 */
export interface Urn {
  readonly added: number;
  readonly keeps: number;
}

/** What happens when the balloons for a wish are not there: perhaps another colour, else perhaps another figure, else the guest is disappointed. */
export interface IfShort {
  readonly otherColour: number;
  readonly otherFigure: number;
  /** `next in order`: the first figure after it in the list that can be made. `by share`: one of those that can be made, by asking shares. */
  readonly search: 'next in order' | 'by share';
}

export interface Returns {
  /** Chance that a guest who was served lines up again for another one, and how long after. */
  readonly repeatChance: number;
  readonly repeatAfter: Duration;
  /** Chance that a figure comes back for repair, and how long after. The same figure is made again. */
  readonly repairChance: number;
  readonly repairAfter: Duration;
  readonly oneEach: boolean;
}
