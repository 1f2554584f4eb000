import type { Size } from '@twistwright/repertoire';
import type { LocalDate } from '@twistwright/units';
import type { Artist } from './artist.ts';
import type { BalloonTest } from './balloon-test.ts';
import type { Business, Settings } from './business.ts';
import type { Client } from './client.ts';
import type { Figure } from './figure.ts';
import type { Gig } from './gig.ts';
import type { Colour, Item } from './item.ts';
import type { SavedKit } from './saved-kit.ts';
import type { Place, StockMove } from './stock.ts';
import type { Need, Offer, Order, Supplier } from './supply.ts';

/** Everything of one business; also the content of the book file. */
export interface Book {
  /** Version of the file's form. */
  readonly book: 1;
  /** For examples: the day on which the dates were laid out; when it is opened, all dates move by whole weeks (`layDates`). */
  readonly laidOn?: LocalDate;
  readonly business: Business;
  readonly settings?: Settings;
  /** Size codes beside, or instead of, the shipped ones of the same code. */
  readonly sizes?: readonly Size[];
  readonly colours: readonly Colour[];
  readonly items: readonly Item[];
  readonly figures: readonly Figure[];
  readonly artists: readonly Artist[];
  readonly places: readonly Place[];
  readonly suppliers: readonly Supplier[];
  readonly offers: readonly Offer[];
  readonly clients: readonly Client[];
  readonly gigs: readonly Gig[];
  readonly needs: readonly Need[];
  readonly orders: readonly Order[];
  /** The ledger of stock. */
  readonly moves: readonly StockMove[];
  /** First kits that were kept under a name. */
  readonly kits?: readonly SavedKit[];
  /** Two-minute tests of balloons. */
  readonly balloonTests?: readonly BalloonTest[];
}

/** A book with nothing in it yet. */
export const emptyBook = (business: Business): Book => ({
  book: 1,
  business,
  colours: [],
  items: [],
  figures: [],
  artists: [],
  places: [],
  suppliers: [],
  offers: [],
  clients: [],
  gigs: [],
  needs: [],
  orders: [],
  moves: [],
});

/** The lists of a book whose entries have an id of their own, in the order of the file; `sizes` go by their code instead. */
export const bookLists = [
  'colours',
  'items',
  'figures',
  'artists',
  'places',
  'suppliers',
  'offers',
  'clients',
  'gigs',
  'needs',
  'orders',
  'moves',
  'kits',
  'balloonTests',
] as const satisfies readonly (keyof Book)[];
export type BookList = (typeof bookLists)[number];
