import { type Book, nameOfItem, type Order, planningSettingsOf, type Supplier, stockOf } from '@twistwright/books';
import type { LocalDate, LocalTime, Money } from '@twistwright/units';
import type { JointSamples } from '../needs/index.ts';
import { arrivalAt } from './order-dates.ts';
import type { PurchaseItem, PurchaseProblem, PurchaseSupplier } from './purchase-problem.ts';
import type { ShoppingOrder } from './shopping-plan.ts';

export interface PurchaseOptions {
  readonly today: LocalDate;
  readonly now?: LocalTime;
  /** Last day that counts; all days of the samples and needs if missing. */
  readonly until?: LocalDate;
  /** Chance that something asked for runs out; the settings' if missing. */
  readonly chanceOfRunningOut?: number;
  readonly daysToSpare?: number;
  readonly budget?: Money;
  /** Only these suppliers are bought from; all if missing. */
  readonly suppliers?: readonly string[];
}

/** Days in a month of shelf life, rounded down so that nothing is said to keep too long. */
const daysOfMonth = 30;

/** The purchase problem of a book: its suppliers, offers, stock by age, open orders and hand-entered needs, with the joint samples of its gigs. */
export function purchaseOfBook(book: Book, samples: JointSamples, options: PurchaseOptions): PurchaseProblem {
  const settings = planningSettingsOf(book);
  const isIn = (day: LocalDate): boolean => options.until === undefined || day <= options.until;
  const budget = options.budget ?? settings.budget;
  return {
    currency: book.business.currency,
    today: options.today,
    ...(options.now === undefined ? {} : { now: options.now }),
    daysToSpare: options.daysToSpare ?? settings.daysToSpare,
    holidays: settings.holidays,
    suppliers: book.suppliers.filter(({ id }) => options.suppliers === undefined || options.suppliers.includes(id)).map(supplierOf),
    items: itemsOf(book, options.today),
    offers: book.offers.map((offer) => ({ ...offer, ...keepsOf(book, offer.item) })),
    samples: { ...samples, perGig: samples.perGig.filter((gig) => isIn(gig.day)) },
    byHand: book.needs
      .filter((need) => isIn(need.by))
      .map(({ item, count, by, why }) => ({ item, count, by, ...(why === undefined ? {} : { reason: why }) })),
    chance: 1 - (options.chanceOfRunningOut ?? settings.chanceOfRunningOut),
    ...(budget === undefined ? {} : { budget }),
    holding:
      settings.holdingPerPieceWeek === undefined
        ? { sharePerYear: settings.holdingSharePerYear }
        : { perPieceWeek: settings.holdingPerPieceWeek },
  };
}

function supplierOf({ orderBefore, freeFrom, leastOrder, closedOn, currency, ...supplier }: Supplier): PurchaseSupplier {
  return {
    id: supplier.id,
    name: supplier.name,
    leadWorkingDays: supplier.leadWorkingDays,
    carriage: supplier.carriage,
    ...(currency === undefined ? {} : { currency }),
    ...(orderBefore === undefined ? {} : { orderBefore }),
    ...(freeFrom === undefined ? {} : { freeFrom }),
    ...(leastOrder === undefined ? {} : { leastOrder }),
    ...(closedOn === undefined ? {} : { closedOn }),
  };
}

function keepsOf(book: Book, id: string): { readonly keepsDays?: number } {
  const item = book.items.find((candidate) => candidate.id === id);
  return item?.kind === 'balloon' && item.shelfMonths !== undefined ? { keepsDays: Math.floor(item.shelfMonths * daysOfMonth) } : {};
}

function itemsOf(book: Book, today: LocalDate): readonly PurchaseItem[] {
  const lines = stockOf(book.moves, today).lines;
  return book.items.map((item) => ({
    id: item.id,
    name: nameOfItem(item, book.colours),
    stock: lines
      .filter((line) => line.item === item.id)
      .flatMap((line) => line.lots.map(({ count, goodUntil }) => ({ count, ...(goodUntil === undefined ? {} : { goodUntil }) }))),
    onOrder: book.orders
      .filter((order) => order.arrivedOn === undefined)
      .flatMap((order) =>
        order.lines
          .filter((line) => line.item === item.id)
          .map((line) => ({ count: line.bags * line.count, expectedOn: order.expectedOn })),
      ),
  }));
}

/** The fact that stands in the book once a planned order has been placed on `orderedOn`. */
export function orderFact(
  problem: PurchaseProblem,
  planned: ShoppingOrder,
  fact: { readonly id: string; readonly orderedOn: LocalDate },
): Order {
  const supplier = problem.suppliers.find(({ id }) => id === planned.supplier);
  if (supplier === undefined) throw new RangeError(`no supplier ${planned.supplier}`);
  return {
    id: fact.id,
    supplier: planned.supplier,
    orderedOn: fact.orderedOn,
    expectedOn: arrivalAt(supplier, fact.orderedOn, problem.holidays),
    lines: planned.lines.map(({ offer, item, bags, count, price }) => ({ offer, item, bags, count, price })),
    carriage: planned.carriage,
  };
}
