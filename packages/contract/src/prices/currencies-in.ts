import type { CurrencyCode } from '@twistwright/units';

/** Signs and the currencies they may stand for. The dollar sign stands for so many that it tells nothing. */
const signs: Readonly<Record<string, readonly CurrencyCode[]>> = { '£': ['GBP'], '€': ['EUR'], '¥': ['JPY', 'CNY'] };
/** Codes that are looked for in words (ISO 4217); other words in three capitals, such as VAT or RRP, are none. */
const codes = new Set(
  'GBP EUR USD CAD AUD NZD CHF SEK NOK DKK ISK PLN CZK HUF RON BGN TRY ILS AED SAR KWD BHD OMR QAR JOD TND MAD EGP ZAR NGN KES INR PKR LKR JPY CNY KRW TWD HKD SGD MYR THB IDR PHP VND BRL MXN ARS CLP COP PEN UYU UAH GEL'.split(
    ' ',
  ),
);

/** The first sign or code in a text that is not of this currency, as it is written; undefined if there is none. */
export function otherCurrencyIn(text: string, currency: CurrencyCode): string | undefined {
  const sign = [...text].find((letter) => signs[letter] !== undefined && !signs[letter].includes(currency));
  return sign ?? (text.match(/\b[A-Z]{3}\b/g) ?? []).find((word) => codes.has(word) && word !== currency);
}
/** The text without signs and codes of currencies. */
export const withoutCurrency = (text: string): string =>
  text.replace(/[£€$¥]/g, '').replace(/\b[A-Z]{3}\b/g, (word) => (codes.has(word) ? '' : word));
