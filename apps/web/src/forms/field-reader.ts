import {
  type CurrencyCode,
  decimalOf,
  type LocalDate,
  type LocalTime,
  type Money,
  parseMoney,
  readDate,
  readTime,
} from '@twistwright/units';

export interface NumberRule {
  /** What is written, with its unit, in a sentence: "guests". */
  readonly example: string;
  readonly least?: number;
  readonly most?: number;
  readonly whole?: boolean;
}
/** Sentences about fields, by the name of the field. */
export type FieldProblems = Readonly<Record<string, string>>;

/** Reads the texts of a form and gathers a sentence for every field that cannot be understood. */
export class FieldReader {
  readonly #problems: Record<string, string> = {};

  get problems(): FieldProblems {
    return this.#problems;
  }
  get isFine(): boolean {
    return Object.keys(this.#problems).length === 0;
  }
  refuse(field: string, sentence: string): void {
    this.#problems[field] ??= sentence;
  }
  text(field: string, text: string, what: string): string {
    const plain = text.trim();
    if (plain === '') this.refuse(field, `Write ${what}.`);
    return plain;
  }
  /** Undefined for an empty field. */
  optionalText(text: string): string | undefined {
    const plain = text.trim();
    return plain === '' ? undefined : plain;
  }
  number(field: string, text: string, rule: NumberRule): number {
    const value = this.optionalNumber(field, text, rule);
    if (value === undefined) this.refuse(field, `A number is missing. Write it as ${rule.example}.`);
    return value ?? 0;
  }
  optionalNumber(field: string, text: string, { example, least = 0, most = 1_000_000, whole = false }: NumberRule): number | undefined {
    const plain = text.trim().replace(',', '.');
    if (plain === '') return undefined;
    const value = /^-?\d+(\.\d+)?$/.test(plain) ? Number(plain) : Number.NaN;
    if (Number.isNaN(value)) this.refuse(field, `“${text.trim()}” is not a number. Write it as ${example}.`);
    else if (value < least) this.refuse(field, `${plain} is too little; the least is ${least}.`);
    else if (value > most) this.refuse(field, `${plain} is too much; the most is ${most.toLocaleString('en')}.`);
    else if (whole && !Number.isInteger(value)) this.refuse(field, `${plain} is not a whole number. Write it as ${example}.`);
    return Number.isNaN(value) ? 0 : value;
  }
  optionalMoney(field: string, text: string, currency: CurrencyCode): Money | undefined {
    if (text.trim() === '') return undefined;
    const amount = parseMoney(text.replace(/[£€$¥]|[A-Z]{3}/g, ''), currency);
    if (amount === undefined || amount < 0) {
      this.refuse(field, `“${text.trim()}” is not an amount in ${currency}. Write it as 12.50.`);
      return undefined;
    }
    return amount;
  }
  money(field: string, text: string, currency: CurrencyCode): Money | undefined {
    const amount = this.optionalMoney(field, text, currency);
    if (text.trim() === '') this.refuse(field, 'An amount is missing. Write it as 12.50.');
    return amount;
  }
  day(field: string, text: string): LocalDate | undefined {
    const day = readDate(text.trim());
    if (day === undefined)
      this.refuse(field, text.trim() === '' ? 'Choose a day.' : `“${text.trim()}” is not a day. Write it as 2026-06-13.`);
    return day;
  }
  clock(field: string, text: string): LocalTime | undefined {
    const clock = readTime(text.trim());
    if (clock === undefined)
      this.refuse(field, text.trim() === '' ? 'Choose a time.' : `“${text.trim()}” is not a time. Write it as 14:30.`);
    return clock;
  }
}

/** A number as it stands in a field. */
export const numberText = (value: number | undefined): string => (value === undefined ? '' : String(value));
/** Money as it stands in a field, without its sign. */
export const moneyText = (amount: Money | undefined, currency: CurrencyCode): string =>
  amount === undefined ? '' : decimalOf(amount, currency);
