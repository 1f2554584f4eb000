import { type Book, chargeSettingsOf, type Gig, type MileRate } from '@twistwright/books';
import {
  add,
  addDays,
  exponentOf,
  type LocalDate,
  type Money,
  minuteOf,
  money,
  type Spread,
  scale,
  showMoney,
  spreadOf,
  zero,
} from '@twistwright/units';

/** One line of a quote. */
export interface ChargeLine {
  readonly what: string;
  /** How the amount comes about, in words with the numbers: "3 h at £120, 1 artist". */
  readonly how: string;
  readonly amount: Money;
}
/** The quote, and beside it what the gig costs and what an hour of it earns. */
export interface Charge {
  readonly lines: readonly ChargeLine[];
  /** Sum of the lines, before tax. */
  readonly net: Money;
  readonly tax?: { readonly name: string; readonly basisPoints: number; readonly amount: Money; readonly source?: string };
  /** What the client pays: `net` and tax. */
  readonly quote: Money;
  /** The fee the rest is computed from: what was agreed, else the quote. Tax included. */
  readonly fee: Money;
  readonly deposit?: { readonly amount: Money; readonly paidOn?: LocalDate };
  readonly balance: { readonly amount: Money; readonly dueOn: LocalDate };
  /** Asked on the day for every 15 minutes begun beyond the end, all artists. */
  readonly overtimePerQuarter?: Money;
  readonly floor: Floor;
  /** Earned per true hour of one artist, minor units. */
  readonly hourly: Spread;
  /** What is left of the net fee after costs, as a share of it; before the tax reserve. */
  readonly margin: Spread;
  /** Least quote (tax included) at which the mean hourly earnings reach the wanted ones; missing if no wish is set. */
  readonly quoteForWanted?: Money;
  readonly wantedHourly?: Money;
}
/** What the gig costs, whatever is asked. */
export interface Floor {
  /** Balloons and extras used, minor units. */
  readonly materials: Spread;
  readonly miles: Money;
  readonly milesDriven: number;
  readonly mileSource?: string;
  readonly fixedShare: Money;
  /** Put aside for tax out of what is left, minor units. */
  readonly taxReserve: Spread;
  /** Minutes of all artists together. */
  readonly minutes: {
    readonly atGig: number;
    readonly settingUp: number;
    readonly driving: number;
    readonly preparing: number;
    readonly total: number;
  };
  /** Quote, tax included, below which nothing is earned at all. */
  readonly breakEven: Money;
}

/**
 * Quote and floor of one gig. `materials`: cost of what was used in each replication, minor units, not empty.
 * Quote = the larger of the minimum and hours x rate, x artists, + travel beyond the free radius there and back, being early, pieces made to
 * order, tax. Money is rounded once per line; the tax once on the net sum.
 */
export function chargeFor(book: Book, gig: Gig, materials: ArrayLike<number>): Charge {
  const settings = chargeSettingsOf(book);
  const lines = linesOf(book, gig);
  const net = add(...lines.map((line) => line.amount));
  const tax = settings.tax === undefined ? undefined : { ...settings.tax, amount: scale(net, settings.tax.basisPoints, 10_000) };
  const quote = add(net, tax?.amount ?? zero);
  const fee = gig.agreement?.fee ?? quote;
  const depositAmount = gig.agreement?.deposit ?? depositOf(settings.deposit, fee);
  const netFee = withoutTax(fee, settings.tax?.basisPoints ?? 0);
  const artists = Math.max(1, gig.artists.length);
  const minutes = trueMinutes(book, gig, artists);
  const milesDriven = 2 * (gig.where?.miles ?? 0);
  const miles = settings.mileCost === undefined ? zero : forMiles(milesDriven, settings.mileCost.perMile);
  const fixedShare =
    settings.fixedCosts === undefined
      ? zero
      : scale(settings.fixedCosts.perYear, 1, Math.max(1, Math.round(settings.fixedCosts.gigsPerYear)));
  const reserve = (settings.taxReserve?.basisPoints ?? 0) / 10_000;
  const hours = minutes.total / 60;
  const costs = Float64Array.from(materials, (cost) => cost + miles + fixedShare);
  const left = costs.map((cost) => netFee - cost);
  const put = left.map((amount) => Math.max(0, amount) * reserve);
  const meanCost = costs.reduce((sum, cost) => sum + cost, 0) / costs.length;
  const grossOf = (amount: number): Money => {
    const net_ = money(Math.ceil(Math.max(0, amount)));
    return add(net_, settings.tax === undefined ? zero : scale(net_, settings.tax.basisPoints, 10_000));
  };
  return {
    lines,
    net,
    ...(tax === undefined ? {} : { tax }),
    quote,
    fee,
    ...(depositAmount === undefined
      ? {}
      : {
          deposit: {
            amount: depositAmount,
            ...(gig.agreement?.depositPaidOn === undefined ? {} : { paidOn: gig.agreement.depositPaidOn }),
          },
        }),
    balance: { amount: money(fee - (depositAmount ?? 0)), dueOn: addDays(gig.day, -(settings.balanceDaysBefore ?? 0)) },
    ...(settings.overtime === undefined ? {} : { overtimePerQuarter: money(settings.overtime.perQuarter * artists) }),
    floor: {
      materials: spreadOf(materials),
      miles,
      milesDriven,
      ...(settings.mileCost === undefined ? {} : { mileSource: `${settings.mileCost.source}, ${settings.mileCost.year}` }),
      fixedShare,
      taxReserve: spreadOf(put),
      minutes,
      breakEven: grossOf(meanCost),
    },
    hourly: spreadOf(left.map((amount, run) => (amount - (put[run] ?? 0)) / hours)),
    margin: spreadOf(left.map((amount) => (netFee === 0 ? 0 : amount / netFee))),
    ...(settings.wantedHourly === undefined
      ? {}
      : {
          wantedHourly: settings.wantedHourly,
          quoteForWanted: grossOf(meanCost + (settings.wantedHourly * hours) / Math.max(1e-9, 1 - reserve)),
        }),
  };
}

function linesOf(book: Book, gig: Gig): readonly ChargeLine[] {
  const settings = chargeSettingsOf(book);
  const show = (amount: Money): string => showMoney(amount, book.business.currency);
  const kind = settings.byKind?.[gig.kind];
  const hourly = kind?.hourly ?? settings.hourly ?? zero;
  const minimum = kind?.minimum ?? settings.minimum ?? zero;
  const artists = Math.max(1, gig.artists.length);
  const minutes = minuteOf(gig.ends) - minuteOf(gig.starts);
  const people = artists === 1 ? '1 artist' : `${artists} artists`;
  const lines: ChargeLine[] = [];
  if (kind?.perPiece !== undefined) {
    const pieces = (gig.order ?? []).reduce((sum, line) => sum + line.count, 0);
    lines.push(
      atLeast(
        { what: 'Pieces made to order', how: `${pieces} at ${show(kind.perPiece)}`, amount: money(kind.perPiece * pieces) },
        minimum,
        show,
      ),
    );
  } else if (kind?.perHead !== undefined) {
    const heads = gig.classPlan?.learners ?? gig.guests ?? 0;
    lines.push(
      atLeast({ what: 'Class', how: `${heads} learners at ${show(kind.perHead)}`, amount: money(kind.perHead * heads) }, minimum, show),
    );
  } else {
    const byTheHour = scale(hourly, minutes, 60);
    const one = money(Math.max(byTheHour, minimum));
    const how =
      byTheHour < minimum
        ? `minimum of ${show(minimum)}, as ${hoursText(minutes)} at ${show(hourly)} is less`
        : `${hoursText(minutes)} at ${show(hourly)}`;
    lines.push({ what: gig.where?.name ?? gig.name, how: artists === 1 ? how : `${how}, ${people}`, amount: money(one * artists) });
  }
  const beyond = Math.max(0, (gig.where?.miles ?? 0) - (settings.travel?.freeMiles ?? 0));
  if (settings.travel !== undefined && beyond > 0)
    lines.push({
      what: 'Travel',
      how: `${trim(beyond)} miles beyond the free ${trim(settings.travel.freeMiles)}, there and back, at ${showRate(settings.travel.perMile, book)}`,
      amount: forMiles(2 * beyond, settings.travel.perMile),
    });
  const early = Math.max(0, (gig.agreement?.earlyMinutes ?? 0) - (settings.early?.freeMinutes ?? 0));
  if (settings.early !== undefined && early > 0) {
    const quarters = Math.ceil(early / 15);
    lines.push({
      what: 'On station early',
      how: `${quarters === 1 ? '1 quarter' : `${quarters} quarters`} of an hour at ${show(settings.early.perQuarter)}, ${people}`,
      amount: money(settings.early.perQuarter * quarters * artists),
    });
  }
  return lines;
}
/** Money for so many miles, to the thousandth of a mile, at minor units with up to four decimals; exact, rounded once. */
const forMiles = (miles: number, rate: MileRate): Money => scale(money(Math.round(rate * 10_000)), Math.round(miles * 1000), 10_000_000);
/** "£0.45", "$0.725". */
function showRate(rate: MileRate, book: Book): string {
  const { currency } = book.business;
  const whole = money(Math.floor(rate));
  const rest = String(Number((rate - whole).toFixed(4))).slice(2);
  if (rest === '') return showMoney(whole, currency);
  const digits = exponentOf(currency) === 0 ? `.${rest}` : rest;
  return showMoney(whole, currency).replace(/\d(?=\D*$)/, (last) => last + digits);
}
const atLeast = (line: ChargeLine, minimum: Money, show: (amount: Money) => string): ChargeLine =>
  line.amount >= minimum ? line : { ...line, how: `minimum of ${show(minimum)}, as ${line.how} is less`, amount: minimum };

function trueMinutes(book: Book, gig: Gig, artists: number): Floor['minutes'] {
  const settings = chargeSettingsOf(book);
  const atGig = (minuteOf(gig.ends) - minuteOf(gig.starts) + (gig.agreement?.earlyMinutes ?? 0)) * artists;
  const settingUp = ((settings.setUpMinutes ?? 0) + (settings.strikeMinutes ?? 0)) * artists;
  const driving = 2 * (gig.where?.driveMinutes ?? 0) * artists;
  const preparing = settings.preparationMinutes ?? 0;
  return { atGig, settingUp, driving, preparing, total: atGig + settingUp + driving + preparing };
}

const depositOf = (rule: { readonly basisPoints: number; readonly least?: Money } | undefined, fee: Money): Money | undefined => {
  if (rule === undefined) return undefined;
  const share = scale(fee, rule.basisPoints, 10_000);
  return money(Math.min(fee, Math.max(share, rule.least ?? 0)));
};
/** The part of a tax-inclusive amount that is not tax. */
const withoutTax = (gross: Money, basisPoints: number): Money => scale(gross, 10_000, 10_000 + basisPoints);
const trim = (value: number): string => String(Number(value.toFixed(1)));
const hoursText = (minutes: number): string => `${trim(minutes / 60)} h`;
