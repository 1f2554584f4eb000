declare const minor: unique symbol;
/** Money as a whole number of minor units (cents, pence, yen) of one currency; may be negative. Made by {@link money} only. */
export type Money = number & { readonly [minor]: true };

/** ISO 4217 alphabetic code, three capitals. */
export type CurrencyCode = string;

/** Names a whole number of minor units as money. Throws on anything that is not a safe integer. */
export function money(minorUnits: number): Money {
  if (!Number.isSafeInteger(minorUnits)) throw new RangeError(`money must be a whole number of minor units below 2^53, not ${minorUnits}`);
  return (minorUnits === 0 ? 0 : minorUnits) as Money;
}

export const zero: Money = money(0);
export const add = (...amounts: readonly Money[]): Money => money(amounts.reduce<number>((sum, amount) => sum + amount, 0));
export const subtract = (from: Money, amount: Money): Money => money(from - amount);

/**
 * Minor-unit digits that differ from the usual two, ISO 4217 table A.1 (checks/money.test.ts names the copy it is held against).
 * Everything not listed has two.
 */
const exponents: Readonly<Record<string, number>> = {
  BIF: 0,
  CLP: 0,
  DJF: 0,
  GNF: 0,
  ISK: 0,
  JPY: 0,
  KMF: 0,
  KRW: 0,
  PYG: 0,
  RWF: 0,
  UGX: 0,
  UYI: 0,
  VND: 0,
  VUV: 0,
  XAF: 0,
  XOF: 0,
  XPF: 0,
  BHD: 3,
  IQD: 3,
  JOD: 3,
  KWD: 3,
  LYD: 3,
  OMR: 3,
  TND: 3,
  CLF: 4,
  UYW: 4,
};
/** Digits after the decimal sign in this currency, 0 to 4. */
export const exponentOf = (currency: CurrencyCode): number => exponents[currency] ?? 2;

/** How a fraction of a minor unit is settled. `half-up` means away from zero, as the European e-invoice rules do (EN 16931, BR-CO-17). */
export type Rounding = 'half-up' | 'half-even' | 'half-down' | 'up' | 'down';

/**
 * `amount` x `numerator` / `denominator`, rounded once. Exact: sums in BigInt, so 2.675 never becomes 2.67499.
 * Numerator and denominator are whole numbers; use basis points for tax and thousandths for miles.
 * @example scale(money(146050), 2500, 10_000) // -> 36513
 */
export function scale(amount: Money, numerator: number, denominator: number, rounding: Rounding = 'half-up'): Money {
  if (!Number.isSafeInteger(numerator) || !Number.isSafeInteger(denominator) || denominator <= 0)
    throw new RangeError(`scale needs whole numbers and a positive denominator, not ${numerator}/${denominator}`);
  return divideRounded(BigInt(amount) * BigInt(numerator), BigInt(denominator), rounding);
}

/** A count of minor units that came out of a computation with fractions (an expected cost, a rate times hours), rounded half away from zero. */
export function roundToMoney(minorUnits: number): Money {
  if (!Number.isFinite(minorUnits)) throw new RangeError(`cannot round ${minorUnits} to money`);
  return money(Math.sign(minorUnits) * Math.round(Math.abs(minorUnits)));
}

function divideRounded(numerator: bigint, denominator: bigint, rounding: Rounding): Money {
  const negative = numerator < 0n;
  const size = negative ? -numerator : numerator;
  const whole = size / denominator;
  const twiceRest = (size % denominator) * 2n;
  const up =
    rounding === 'up'
      ? twiceRest > 0n
      : rounding === 'down'
        ? false
        : twiceRest > denominator ||
          (twiceRest === denominator && (rounding === 'half-up' || (rounding === 'half-even' && whole % 2n === 1n)));
  const rounded = Number(up ? whole + 1n : whole);
  return money(negative ? -rounded : rounded);
}

/**
 * Splits `total` in proportion to `weights` by largest remainder, so that the parts sum to the total exactly.
 * Ties go to the earlier part. Weights are non-negative and not all zero; otherwise throws.
 * @example split(money(100), [1, 1, 1]) // -> [34, 33, 33]
 */
export function split(total: Money, weights: readonly number[]): readonly Money[] {
  const sum = weights.reduce((a, b) => a + b, 0);
  if (!(sum > 0) || weights.some((w) => !(w >= 0)))
    throw new RangeError(`weights must be non-negative with a positive sum, not ${weights.join(', ')}`);
  const sign = total < 0 ? -1 : 1;
  const exact = weights.map((w) => (Math.abs(total) * w) / sum);
  const parts = exact.map(Math.floor);
  let left = Math.abs(total) - parts.reduce((a, b) => a + b, 0);
  const byRemainder = exact.map((e, i) => [e - Math.floor(e), i] as const).sort((a, b) => b[0] - a[0] || a[1] - b[1]);
  for (const [, i] of byRemainder) {
    if (left <= 0) break;
    parts[i] = (parts[i] ?? 0) + 1;
    left--;
  }
  return parts.map((part) => money(sign * part));
}

/**
 * Reads a decimal text such as "8.20", "1,234.50" or "8,20" as money. Undefined if it is not an amount of this currency.
 * The last "." or "," is the decimal sign if no more digits follow it than the currency has; every earlier one must part thousands.
 */
export function parseMoney(text: string, currency: CurrencyCode): Money | undefined {
  const digits = exponentOf(currency);
  const match = /^([+-]?)([\d.,]*\d)$/.exec(text.trim().replace(/[\s'_\u00a0\u202f]/g, ''));
  if (!match) return undefined;
  const [, sign, number = ''] = match;
  const last = Math.max(number.lastIndexOf('.'), number.lastIndexOf(','));
  const hasDecimals = last >= 0 && number.length - last - 1 <= digits;
  const whole = hasDecimals ? number.slice(0, last) : number;
  if (!/^(\d+|\d{1,3}([.,]\d{3})+)$/.test(whole)) return undefined;
  const value = Number(whole.replace(/[.,]/g, '') + (hasDecimals ? number.slice(last + 1) : '').padEnd(digits, '0'));
  return Number.isSafeInteger(value) ? money(sign === '-' ? -value : value) : undefined;
}

/** Plain decimal text of money, without currency sign: "8.20", "-3", "0.005". */
export function decimalOf(amount: Money, currency: CurrencyCode): string {
  const digits = exponentOf(currency);
  const text = String(Math.abs(amount)).padStart(digits + 1, '0');
  const whole = digits === 0 ? text : `${text.slice(0, -digits)}.${text.slice(-digits)}`;
  return amount < 0 ? `-${whole}` : whole;
}

const signs: Readonly<Record<string, string>> = { GBP: '£', EUR: '€', USD: '$', JPY: '¥' };
/** Money as it is shown: the sign in front where it is well known ("£8.20"), else the code behind ("8.20 CHF"). */
export function showMoney(amount: Money, currency: CurrencyCode): string {
  const sign = signs[currency];
  const size = decimalOf(money(Math.abs(amount)), currency).replace(/\B(?<!\.\d*)(?=(\d{3})+(?!\d))/g, ',');
  const minus = amount < 0 ? '-' : '';
  return sign === undefined ? `${minus}${size} ${currency}` : `${minus}${sign}${size}`;
}
