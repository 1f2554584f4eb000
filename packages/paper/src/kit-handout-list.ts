import { type Book, type Caution, cautions, nameOfItem, swordCaution } from '@twistwright/books';
import { type BookKitWishes, type KitPlan, metWithin, mostHoursFollowed, paintOf, sayMix } from '@twistwright/planner';
import { type CurrencyCode, type Money, money, showMoney } from '@twistwright/units';
import { itemSwatch, mixedSwatch } from './swatch.ts';

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
        return {
          count: packsOf(tool, 'pack'),
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
      const item = book.items.find((one) => one.id === offer?.item);
      return {
        count: packsOf(line, offer?.mix === undefined && item?.kind !== 'balloon' ? 'pack' : 'bag'),
        bags: line.bags,
        pieces: line.pieces,
        what: sentence(line.name),
        why: [whyWithout(line.name, line.why), sayMix(book, line)].filter((said) => said !== undefined).join(' '),
        price: line.cost,
        ...(offer?.mix === undefined ? swatchOf(book, offer?.item) : { swatch: mixedSwatch(balloonsIn(book, Object.keys(offer.mix))) }),
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
/** "1 bag of 100", "2 packs of 50", "1 piece". */
function packsOf({ bags, pieces }: { readonly bags: number; readonly pieces: number }, one: 'bag' | 'pack'): string {
  const size = pieces / bags;
  return size === 1 && one === 'pack' ? counted(bags, 'piece') : `${counted(bags, one)} of ${size}`;
}
const toolWhy = (why: string): string => (why === 'must-have' ? 'Needed from the first gig.' : 'A spare, with money that is left.');
/** The reason without the name that stands beside it. */
function whyWithout(name: string, why: string): string {
  return sentence(why.startsWith(`${name}: `) ? why.slice(name.length + 2) : why);
}
const sentence = (text: string): string => text.charAt(0).toUpperCase() + text.slice(1);
const balloonsIn = (book: Book, ids: readonly string[]): readonly { readonly size: string; readonly paint: string }[] =>
  book.items.flatMap((item) =>
    item.kind === 'balloon' && ids.includes(item.id) ? [{ size: item.size, paint: paintOf(book, item.colour) }] : [],
  );
function swatchOf(book: Book, id: string | undefined): { readonly swatch?: string } {
  const item = book.items.find((one) => one.id === id);
  return item === undefined ? {} : { swatch: itemSwatch(book, item) };
}

/** ", £3.95 of it carriage; least order £15.00", to stand behind the sum of a shop. */
export function termsWords({ carriage, leastOrder }: ListShop, show: (amount: Money) => string): string {
  if (carriage === undefined) return '';
  const paid = carriage > 0 ? `, ${show(carriage)} of it carriage` : ', no carriage to pay';
  return `${paid}${leastOrder === undefined ? '' : `; least order ${show(leastOrder)}`}`;
}

/** "For Bea: 26 things for £94.00". */
export function titleOf({ plan: { kit }, name }: KitPaper, shops: readonly ListShop[], currency: CurrencyCode): string {
  const things = shops.reduce((sum, shop) => sum + shop.rows.reduce((inner, row) => inner + row.bags, 0), 0);
  return `${name ?? 'Your first kit'}: ${counted(things, 'thing')} for ${showMoney(kit.spent, currency)}`;
}
const counted = (value: number, one: string): string => `${value} ${value === 1 ? one : `${one}s`}`;

/** "It makes 40 figures and meets about 88 of 100 requests (83 to 92) in 12 hours of parties ...". */
export function kitSentences({ plan: { kit, lasting }, wishes }: KitPaper): string {
  const of100 = (share: number): number => Math.round(100 * share);
  const made = kit.figures.filter((figure) => figure.met > 0).length;
  const { low, high } = metWithin(kit, lasting);
  const { p10, p50, p90 } = lasting.guestsUntilShort;
  const most = mostHoursFollowed * kit.requests;
  const guests = (number: number): string => `${Math.round(number)}${number >= most ? ' or more' : ''}`;
  const lasts =
    p10 >= most
      ? `Nothing runs out before ${Math.round(p10)} guests have come.`
      : `Something first runs out after about ${guests(p50)} guests${spread(guests(p10), guests(p90))}.`;
  return (
    `It makes ${counted(made, 'figure')} and meets about ${of100(kit.met)} of 100 requests${spread(of100(low), of100(high))} ` +
    `in ${counted(wishes.hours, 'hour')} of ${wishes.kind}: about ${counted(Math.round(kit.requests), 'guest')}. ${lasts}`
  );
}
/** " (83 to 92)"; nothing where both ends are the same. */
const spread = (low: number | string, high: number | string): string => (low === high ? '' : ` (${low} to ${high})`);

/** What stands over and under the next purchases. */
export const nextTitle = 'Next, when there is money again.';
export const nextNote = 'Prices of the goods; a shop may ask for carriage, and for a least order, once more.';

/** The few best purchases after this kit, in words. */
export function nextRows(
  book: Book,
  { next, kit }: KitPlan,
  most = 5,
): readonly { readonly what: string; readonly price: string; readonly gain: string }[] {
  const figureName = (id: string): string => kit.figures.find((figure) => figure.figure === id)?.name ?? id;
  return next.slice(0, most).map((step) => ({
    what: offersInWords(book, step.offers),
    // Bought later, in an order of its own, in which the carriage of this one neither grows nor falls away.
    price: showMoney(
      money(step.offers.reduce((sum, id) => sum + (book.offers.find((offer) => offer.id === id)?.price ?? 0), 0)),
      book.business.currency,
    ),
    gain: `then ${Math.round(100 * step.metAfter)} of 100${step.unlocks.length === 0 ? '' : `; brings ${step.unlocks.map(figureName).join(', ')}`}`,
  }));
}
/** "260 black and 2 x 5-inch red round, bags of 25". */
function offersInWords(book: Book, ids: readonly string[]): string {
  const offers = [...new Set(ids)].flatMap((id) => book.offers.find((one) => one.id === id) ?? []);
  const names = offers.map((offer) => {
    const item = book.items.find((one) => one.id === offer.item);
    const times = ids.filter((id) => id === offer.id).length;
    return `${times === 1 ? '' : `${times} x `}${item === undefined ? offer.item : nameOfItem(item, book.colours)}`;
  });
  const counts = [...new Set(offers.map((offer) => offer.count))];
  return `${names.join(' and ')}, ${ids.length === 1 ? 'bag' : 'bags'} of ${counts.join(' and ')}`;
}

/** An address of a site as it is read on paper. */
export const bareSite = (site: string): string => site.replace(/^https?:\/\/(?:www\.)?/iu, '').replace(/\/$/u, '');

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
