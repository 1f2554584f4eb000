import type { Book } from '@twistwright/books';
import { colours } from './colours.ts';
import { laidOn } from './days.ts';
import { figures } from './figures.ts';
import { gigs, needs, orders } from './gigs.ts';
import { balloonTests, items } from './items.ts';
import { artists, business, clients, places, suppliers } from './places.ts';
import { offers } from './price-lists.ts';
import { settings } from './settings.ts';
import { moves } from './stock.ts';

/** The demo: an invented business in the invented town of Wrenmouth. */
export const demoBook: Book = {
  book: 1,
  laidOn,
  business,
  settings,
  colours,
  items,
  figures,
  artists,
  places,
  suppliers,
  offers,
  clients,
  gigs,
  needs,
  orders,
  moves,
  balloonTests,
};
