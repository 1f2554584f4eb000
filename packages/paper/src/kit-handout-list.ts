import { type Book, type Caution, cautions, nameOfItem, swordCaution } from '@twistwright/books';
import type { BookKitWishes, KitPlan } from '@twistwright/planner';
import { type Money, money, showMoney } from '@twistwright/units';
import { itemSwatch } from './swatch.ts';

/** What the papers about a kit are made from. */
export interface KitPaper {
  readonly plan: KitPlan;
  readonly wishes: BookKitWishes;
  /** Whom it is for, if it has a name. */
  readonly name?: string;
}
/** One thing to buy, with a box to tick. */
export interface ListRow {
  /** "1 bag of 100", "1". */
  readonly count: string;
  readonly bags: number;
  readonly pieces: number;
  readonly what: string;
  readonly why: string;
  readonly price: Money;
  /** A small picture of it. */
  readonly swatch?: string;
}
/** What is bought at one place. */
export interface ListShop {
  readonly name: string;
  readonly site?: string;
  readonly rows: readonly ListRow[];
  /** Missing for what can be bought anywhere. */
  readonly carriage?: Money;
  /** The shop accepts no smaller order. */
  readonly leastOrder?: Money;
  readonly total: Money;
}

/** The list grouped by where to buy; tools without a supplier come last. */
export function shopsOf(book: Book, { kit }: KitPlan): readonly ListShop[] {
  const rowsAt = (supplier: string | undefined): readonly ListRow[] => [
    ...kit.tools
      .filter((tool) => tool.supplier === supplier)
      .map((tool): ListRow => {
        const size = tool.pieces / tool.bags;
        return {
          count:
            size === 1
              ? `${tool.bags} ${tool.bags === 1 ? 'piece' : 'pieces'}`
              : `${tool.bags} ${tool.bags === 1 ? 'pack' : 'packs'} of ${size}`,
          bags: tool.bags,
          pieces: tool.pieces,
          what: sentence(tool.name),
          why: toolWhy(tool.why),
          price: tool.price,
          ...swatchOf(book, tool.tool),
        };
      }),
    ...(supplier === undefined ? [] : kit.lines.filter((line) => line.supplier === supplier)).map((line): ListRow => {
      const offer = book.offers.find((one) => one.id === line.offer);
      const size = line.pieces / line.bags;
      return {
        count: `${line.bags} ${line.bags === 1 ? 'bag' : 'bags'} of ${size}`,
        bags: line.bags,
        pieces: line.pieces,
        what: line.name,
        why: whyWithout(line.name, line.why),
        price: line.cost,
        ...swatchOf(book, offer?.item),
      };
    }),
  ];
  const shops = kit.shops.map((shop): ListShop => {
    const { site, leastOrder } = book.suppliers.find((supplier) => supplier.id === shop.supplier) ?? {};
    const rows = rowsAt(shop.supplier);
    const total = money(rows.reduce((sum, row) => sum + row.price, 0) + shop.shipping);
    return {
      name: shop.name,
      rows,
      carriage: shop.shipping,
      total,
      ...(site === undefined ? {} : { site }),
      ...(leastOrder === undefined ? {} : { leastOrder }),
    };
  });
  const anywhere = rowsAt(undefined);
  const rest = anywhere.reduce((sum, row) => sum + row.price, 0);
  return anywhere.length === 0
    ? shops.filter((shop) => shop.rows.length > 0)
    : [...shops.filter((shop) => shop.rows.length > 0), { name: 'Anywhere', rows: anywhere, total: money(rest) }];
}
const toolWhy = (why: string): string => (why === 'must-have' ? 'Needed from the first gig.' : 'A spare, with money that is left.');
/** The reason without the name that stands beside it. */
function whyWithout(name: string, why: string): string {
  return sentence(why.startsWith(`${name}: `) ? why.slice(name.length + 2) : why);
}
const sentence = (text: string): string => text.charAt(0).toUpperCase() + text.slice(1);
function swatchOf(book: Book, id: string | undefined): { readonly swatch?: string } {
  const item = book.items.find((one) => one.id === id);
  return item === undefined ? {} : { swatch: itemSwatch(book, item) };
}

/** ", £3.95 of it carriage; takes orders from £15.00", to stand behind the sum of a shop. */
export function termsWords({ carriage, leastOrder }: ListShop, show: (amount: Money) => string): string {
  if (carriage === undefined) return '';
  const paid = carriage > 0 ? `, ${show(carriage)} of it carriage` : ', no carriage to pay';
  return `${paid}${leastOrder === undefined ? '' : `; takes orders from ${show(leastOrder)}`}`;
}

/** How many things: bags and tools. */
export const thingsOf = (shops: readonly ListShop[]): number =>
  shops.reduce((sum, shop) => sum + shop.rows.reduce((inner, row) => inner + row.bags, 0), 0);

/** "It meets about 79 of 100 requests over 12 hours of parties ...". */
export function kitSentences({ plan: { kit, lasting }, wishes }: KitPaper): string {
  const of100 = (share: number): number => Math.round(100 * share);
  const made = kit.figures.filter((figure) => figure.met > 0).length;
  const until = lasting.guestsUntilShort;
  return (
    `It makes ${made} ${made === 1 ? 'figure' : 'figures'} and meets about ${of100(kit.met)} of 100 requests${spread(of100(lasting.met.p10), of100(lasting.met.p90))} ` +
    `in ${wishes.hours} ${wishes.hours === 1 ? 'hour' : 'hours'} of ${wishes.kind}: about ${Math.round(kit.requests)} guests. ` +
    `Something first runs out after about ${Math.round(until.p50)} guests${spread(Math.round(until.p10), Math.round(until.p90))}.`
  );
}
/** " (83 to 92)"; nothing where both ends are the same. */
const spread = (low: number, high: number): string => (low === high ? '' : ` (${low} to ${high})`);

/** The few best purchases after this kit, in words. */
export function nextRows(
  book: Book,
  { next, kit }: KitPlan,
  most = 5,
): readonly { readonly what: string; readonly price: string; readonly gain: string }[] {
  const figureName = (id: string): string => kit.figures.find((figure) => figure.figure === id)?.name ?? id;
  return next.slice(0, most).map((step) => ({
    what: offersInWords(book, step.offers),
    price: showMoney(step.cost, book.business.currency),
    gain: `then ${Math.round(100 * step.metAfter)} of 100${step.unlocks.length === 0 ? '' : `; brings ${step.unlocks.map(figureName).join(', ')}`}${carriageChange(book, step)}`,
  }));
}
/** Says so where the bill grows by more or by less than the price. */
function carriageChange(book: Book, { offers, cost }: KitPlan['next'][number]): string {
  const prices = offers.reduce((sum, id) => sum + (book.offers.find((offer) => offer.id === id)?.price ?? 0), 0);
  if (cost === prices) return '';
  return cost > prices ? '; carriage included' : '; carriage falls away';
}
/** "260 black and 5-inch red round, bags of 25". */
function offersInWords(book: Book, ids: readonly string[]): string {
  const offers = ids.flatMap((id) => book.offers.find((one) => one.id === id) ?? []);
  const names = offers.map((offer) => {
    const item = book.items.find((one) => one.id === offer.item);
    return item === undefined ? offer.item : nameOfItem(item, book.colours);
  });
  const counts = [...new Set(offers.map((offer) => offer.count))];
  return `${names.join(' and ')}, ${offers.length === 1 ? 'bag' : 'bags'} of ${counts.join(' and ')}`;
}

/** The cautions of a kit: one more where a figure of it is like a sword. */
export function kitCautions(book: Book, { kit }: KitPlan): readonly Caution[] {
  const sword = kit.figures.some(
    ({ figure, met }) => met > 0 && book.figures.find((one) => one.id === figure)?.tags?.includes('sword-like') === true,
  );
  return [...cautions, ...(sword ? [swordCaution] : [])];
}

/** Name, telephone, mail and site of the coach, one after the other. */
export function contactLines(book: Book): readonly string[] {
  const { name, contact = {} } = book.business;
  return [contact.person, name, contact.phone, contact.email, contact.site, contact.address].filter((line) => line !== undefined);
}
