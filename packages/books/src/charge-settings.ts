import type { Money } from '@twistwright/units';

/** Minor units for one mile, of which four decimals count: 72.5 is 72.5 cents. What is driven is charged exactly and rounded once. */
export type MileRate = number;

/** Rates and rules behind a quote. Amounts are minor units; every key has a shipped default of nothing charged. */
export interface ChargeSettings {
  readonly hourly?: Money;
  /** Least amount asked per artist, whatever the hours. */
  readonly minimum?: Money;
  /** Other rates by kind of gig. */
  readonly byKind?: Readonly<
    Record<string, { readonly hourly?: Money; readonly minimum?: Money; readonly perPiece?: Money; readonly perHead?: Money }>
  >;
  readonly travel?: { readonly freeMiles: number; readonly perMile: MileRate };
  /** Being on station before the start: free minutes, then per 15 minutes begun, per artist. */
  readonly early?: { readonly freeMinutes: number; readonly perQuarter: Money };
  /** Overtime per 15 minutes begun, per artist. */
  readonly overtime?: { readonly perQuarter: Money };
  /** Tax on the quote in basis points, such as 2000 for 20 %; missing: none is charged. A setting with its source, never advice. */
  readonly tax?: { readonly basisPoints: number; readonly name: string; readonly source?: string };
  readonly deposit?: { readonly basisPoints: number; readonly least?: Money };
  /** Days before the gig by which the balance is due. */
  readonly balanceDaysBefore?: number;
  /** Costs per mile driven for the floor under the price: editable, with source and year. */
  readonly mileCost?: { readonly perMile: MileRate; readonly source: string; readonly year: number };
  /** What a year costs whether or not there are gigs, and how many gigs share it. */
  readonly fixedCosts?: { readonly perYear: Money; readonly gigsPerYear: number };
  /** Share put aside for tax of what is left of the fee after costs, basis points. */
  readonly taxReserve?: { readonly basisPoints: number; readonly source?: string };
  /** Minutes per gig of preparing, packing, paperwork that no one pays for by name. */
  readonly preparationMinutes?: number;
  readonly setUpMinutes?: number;
  readonly strikeMinutes?: number;
  /** Hourly earnings wished for, after costs. */
  readonly wantedHourly?: Money;
}
