import { type ChargeSettings, type GigKind, gigKinds, type MileRate } from '@twistwright/books';
import { type CurrencyCode, exponentOf, type Money } from '@twistwright/units';
import { type FieldReader, moneyText, numberText } from './field-reader.ts';

/** Rates that a kind of gig may have of its own; the last two only where they mean something. */
export const kindRates = ['hourly', 'minimum', 'perPiece', 'perHead'] as const;
export type KindRate = (typeof kindRates)[number];
export const hasRate = (kind: GigKind, rate: KindRate): boolean =>
  (rate !== 'perPiece' || kind === 'made to order') && (rate !== 'perHead' || kind === 'class');

type Plain =
  | 'hourly'
  | 'minimum'
  | 'freeMiles'
  | 'perMile'
  | 'earlyFreeMinutes'
  | 'earlyPerQuarter'
  | 'overtimePerQuarter'
  | 'taxShare'
  | 'taxName'
  | 'depositShare'
  | 'depositLeast'
  | 'balanceDaysBefore'
  | 'mileCost'
  | 'mileSource'
  | 'mileYear'
  | 'fixedPerYear'
  | 'gigsPerYear'
  | 'reserveShare'
  | 'preparationMinutes'
  | 'setUpMinutes'
  | 'strikeMinutes'
  | 'wantedHourly';
/** The texts of the form of rates. */
export type ChargeDraft = Readonly<Record<Plain | `${GigKind}, ${KindRate}`, string>>;

export function chargeDraftOf(now: ChargeSettings, currency: CurrencyCode): ChargeDraft {
  const amount = (value: Money | undefined): string => moneyText(value, currency);
  const share = (part: { readonly basisPoints: number } | undefined): string =>
    numberText(part === undefined ? undefined : part.basisPoints / 100);
  const mile = (rate: MileRate | undefined): string => (rate === undefined ? '' : rateText(rate, exponentOf(currency)));
  const byKind = gigKinds.flatMap((kind) => kindRates.map((rate) => [`${kind}, ${rate}`, amount(now.byKind?.[kind]?.[rate])] as const));
  return {
    ...(Object.fromEntries(byKind) as Record<`${GigKind}, ${KindRate}`, string>),
    hourly: amount(now.hourly),
    minimum: amount(now.minimum),
    freeMiles: numberText(now.travel?.freeMiles),
    perMile: mile(now.travel?.perMile),
    earlyFreeMinutes: numberText(now.early?.freeMinutes),
    earlyPerQuarter: amount(now.early?.perQuarter),
    overtimePerQuarter: amount(now.overtime?.perQuarter),
    taxShare: share(now.tax),
    taxName: now.tax?.name ?? '',
    depositShare: share(now.deposit),
    depositLeast: amount(now.deposit?.least),
    balanceDaysBefore: numberText(now.balanceDaysBefore),
    mileCost: mile(now.mileCost?.perMile),
    mileSource: now.mileCost?.source ?? '',
    mileYear: numberText(now.mileCost?.year),
    fixedPerYear: amount(now.fixedCosts?.perYear),
    gigsPerYear: numberText(now.fixedCosts?.gigsPerYear),
    reserveShare: share(now.taxReserve),
    preparationMinutes: numberText(now.preparationMinutes),
    setUpMinutes: numberText(now.setUpMinutes),
    strikeMinutes: numberText(now.strikeMinutes),
    wantedHourly: amount(now.wantedHourly),
  };
}

/** A rate in minor units of so many decimals, as money with all its decimals and parts of the last one: "0.90", "0.725". */
function rateText(rate: MileRate, decimals: number): string {
  const amount = rate / 10 ** decimals;
  const short = amount.toFixed(decimals);
  return Number(short) === Number(amount.toFixed(8)) ? short : String(Number(amount.toFixed(8)));
}

/** The settings that the form describes, and a sentence for every field that does not make sense. What the form does not show is kept. */
export function readChargeDraft(draft: ChargeDraft, now: ChargeSettings, currency: CurrencyCode, read: FieldReader): ChargeSettings {
  const amount = (field: keyof ChargeDraft): Money | undefined => read.optionalMoney(field, draft[field], currency);
  const number = (field: Plain, example: string, most: number, whole = false): number | undefined =>
    read.optionalNumber(field, draft[field], { example, most, whole });
  const share = (field: Plain): { readonly basisPoints: number } | undefined => {
    const hundredths = number(field, '20', 100);
    return hundredths === undefined ? undefined : { basisPoints: Math.round(hundredths * 100) };
  };
  const mile = (field: Plain): MileRate | undefined => {
    const rate = number(field, '0.45', 10_000);
    return rate === undefined ? undefined : Number((rate * 10 ** exponentOf(currency)).toFixed(4));
  };
  const travel = mile('perMile');
  const freeMiles = number('freeMiles', '10', 5000) ?? 0;
  const early = amount('earlyPerQuarter');
  const freeMinutes = number('earlyFreeMinutes', '15', 600) ?? 0;
  const overtime = amount('overtimePerQuarter');
  const tax = share('taxShare');
  const deposit = share('depositShare');
  const least = amount('depositLeast');
  const reserve = share('reserveShare');
  return present({
    hourly: amount('hourly'),
    minimum: amount('minimum'),
    byKind: byKindOf(now, amount),
    travel: travel === undefined ? undefined : { freeMiles, perMile: travel },
    early: early === undefined ? undefined : { freeMinutes, perQuarter: early },
    overtime: overtime === undefined ? undefined : { perQuarter: overtime },
    tax: tax === undefined ? undefined : { ...now.tax, ...tax, name: read.optionalText(draft.taxName) ?? 'tax' },
    deposit: deposit === undefined ? undefined : present({ ...deposit, least }),
    balanceDaysBefore: number('balanceDaysBefore', '7', 365, true),
    mileCost: mileCostOf(draft, mile('mileCost'), read),
    fixedCosts: fixedCostsOf(draft, amount('fixedPerYear'), read),
    taxReserve: reserve === undefined ? undefined : { ...now.taxReserve, ...reserve },
    preparationMinutes: number('preparationMinutes', '15', 2880),
    setUpMinutes: number('setUpMinutes', '15', 2880),
    strikeMinutes: number('strikeMinutes', '15', 2880),
    wantedHourly: amount('wantedHourly'),
  });
}

type Present<T> = { [K in keyof T as undefined extends T[K] ? never : K]: T[K] } & {
  [K in keyof T as undefined extends T[K] ? K : never]?: Exclude<T[K], undefined>;
};
/** Only what is there. */
const present = <T extends object>(parts: T): Present<T> =>
  Object.fromEntries(Object.entries(parts).filter(([, part]) => part !== undefined)) as Present<T>;

function byKindOf(now: ChargeSettings, amount: (field: keyof ChargeDraft) => Money | undefined): ChargeSettings['byKind'] {
  const shown = gigKinds.map(
    (kind) => [kind, present(Object.fromEntries(kindRates.map((rate) => [rate, amount(`${kind}, ${rate}`)])))] as const,
  );
  const others = Object.entries(now.byKind ?? {}).filter(([kind]) => !gigKinds.some((known) => known === kind));
  const rates = [...others, ...shown].filter(([, own]) => Object.keys(own).length > 0);
  return rates.length === 0 ? undefined : Object.fromEntries(rates);
}

/** What a mile costs is a figure of somebody's for a year; both stand beside it. */
function mileCostOf(draft: ChargeDraft, perMile: MileRate | undefined, read: FieldReader): ChargeSettings['mileCost'] {
  if (perMile === undefined) return undefined;
  return {
    perMile,
    source: read.text('mileSource', draft.mileSource, 'where the figure comes from, such as your own books'),
    year: read.number('mileYear', draft.mileYear, { example: '2026', least: 1900, most: 2200, whole: true }),
  };
}

function fixedCostsOf(draft: ChargeDraft, perYear: Money | undefined, read: FieldReader): ChargeSettings['fixedCosts'] {
  if (perYear === undefined) return undefined;
  return { perYear, gigsPerYear: read.number('gigsPerYear', draft.gigsPerYear, { example: '95', least: 1, most: 100_000, whole: true }) };
}
