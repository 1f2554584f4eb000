import type { Book } from '@twistwright/books';
import { type CurvePoint, type ShoppingPlan, sayShopping, sayThumb } from '@twistwright/planner';
import { decimalOf, longDate } from '@twistwright/units';
import type { Page } from './page.ts';

/** Orders, each with its last safe day and why every bag is in it. */
export function writeShopping(page: Page, book: Book, plan: ShoppingPlan): void {
  const { currency } = book.business;
  const said = sayShopping(plan, currency);
  page.say(said.answer);
  for (const sentence of said.more) page.tell(sentence);
  for (const order of plan.orders) {
    page.gap();
    page.tell(
      `${order.name}: order by ${longDate(order.orderBy)}${order.before === undefined ? '' : `, ${order.before}`}; at the door on ${longDate(order.arrives)}.`,
    );
    page.table(
      ['bags', 'of', 'what', 'why', 'a bag', currency],
      [
        ...order.lines.map((line) => [
          line.bags,
          line.count,
          line.name,
          whyOf(book, line.because),
          decimalOf(line.price, currency),
          decimalOf(line.total, currency),
        ]),
        [
          '',
          '',
          'carriage',
          order.toFreeCarriage === undefined ? '' : `free with ${decimalOf(order.toFreeCarriage, currency)} more`,
          '',
          decimalOf(order.carriage, currency),
        ],
      ],
      { foot: ['', '', 'order', '', '', decimalOf(order.total, currency)] },
    );
  }
  const thumb = sayThumb(plan, currency);
  if (thumb !== undefined) {
    page.gap();
    page.tell(thumb);
  }
}

function whyOf(book: Book, because: ShoppingPlan['orders'][number]['lines'][number]['because']): string {
  const causes = because.causes.slice(0, 1).map((cause) => gigName(book, cause.gig) ?? cause.reason ?? 'by hand');
  const more = because.causes.length - causes.length;
  return `${because.short > 0 ? `${because.short} short ` : ''}for ${causes.join(', ')}${more > 0 ? ` and ${more} more` : ''}`;
}

const gigName = (book: Book, id: string | undefined): string | undefined => book.gigs.find((gig) => gig.id === id)?.name;

export function writeCurve(page: Page, book: Book, curve: readonly CurvePoint[]): void {
  const { currency } = book.business;
  page.tell('What more or less money would do:');
  page.table(
    [currency, 'bags', 'nothing runs out in', ''],
    curve.map((point) => [
      decimalOf(point.total, currency),
      point.bags,
      `${Math.round(1000 * point.chance) / 10} % of tries`,
      proofWords(point.proof),
    ]),
  );
}

const proofWords = (proof: CurvePoint['proof']): string =>
  proof.kind === 'proven'
    ? 'proven cheapest'
    : proof.kind === 'within'
      ? `within ${(100 * proof.share).toFixed(1)} % of the cheapest`
      : 'found, nothing proven';
