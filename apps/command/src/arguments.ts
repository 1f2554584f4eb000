import { parseArgs } from 'node:util';
import {
  type CurrencyCode,
  decimalOf,
  fail,
  type LocalDate,
  type Money,
  money,
  ok,
  parseMoney,
  type Result,
  readDate,
} from '@twistwright/units';

/** What may stand behind a command. */
export interface Flag {
  readonly name: string;
  /** An amount is money of the book's currency, and is looked at once that is known. */
  readonly takes: 'nothing' | 'text' | 'number' | 'day' | 'amount';
  readonly says: string;
}
export interface Arguments {
  readonly words: readonly string[];
  has(name: string): boolean;
  text(name: string): string | undefined;
  number(name: string): number | undefined;
  day(name: string): LocalDate | undefined;
}

/** Flags that every planning command takes. */
export const commonFlags: readonly Flag[] = [
  { name: 'json', takes: 'nothing', says: 'print JSON instead of a page' },
  { name: 'seed', takes: 'number', says: 'seed of the simulated afternoons (whole number)' },
  { name: 'runs', takes: 'number', says: 'how many afternoons are simulated' },
  { name: 'today', takes: 'day', says: 'the day from which to look, YYYY-MM-DD' },
];

/** Reads the words behind a command. What cannot be understood comes back as one sentence. */
export function readArguments(args: readonly string[], flags: readonly Flag[]): Result<Arguments, string> {
  const options = Object.fromEntries(
    flags.map((flag) => [flag.name, { type: flag.takes === 'nothing' ? ('boolean' as const) : ('string' as const) }]),
  );
  let parsed: { readonly values: Record<string, unknown>; readonly positionals: readonly string[] };
  try {
    parsed = parseArgs({ args: withNegatives(args, flags), options, allowPositionals: true, strict: true });
  } catch (error) {
    return fail(error instanceof Error ? (error.message.split(/\.?\s*\n|\. /)[0] ?? error.message) : String(error));
  }
  const values = parsed.values as Readonly<Record<string, string | boolean | undefined>>;
  for (const flag of flags) {
    const value = values[flag.name];
    if (typeof value !== 'string') continue;
    if (flag.takes === 'number' && !Number.isFinite(value.trim() === '' ? Number.NaN : Number(value)))
      return fail(`--${flag.name} takes a number, not "${value}"`);
    if (flag.takes === 'day' && readDate(value) === undefined) return fail(`--${flag.name} takes a day as YYYY-MM-DD, not "${value}"`);
  }
  const text = (name: string): string | undefined => (typeof values[name] === 'string' ? values[name] : undefined);
  return ok({
    words: parsed.positionals,
    has: (name) => values[name] !== undefined,
    text,
    number: (name) => (text(name) === undefined ? undefined : Number(text(name))),
    day: (name) => readDate(text(name) ?? ''),
  });
}

/** Joins a negative number to the flag before it, as `--more-guests -30` is meant: the parser takes what begins with a dash for a flag. */
function withNegatives(args: readonly string[], flags: readonly Flag[]): string[] {
  const joined: string[] = [];
  for (const word of args) {
    const before = joined.at(-1);
    const takesNumber = flags.some((flag) => before === `--${flag.name}` && (flag.takes === 'number' || flag.takes === 'amount'));
    if (takesNumber && /^-[\d.]/.test(word)) joined[joined.length - 1] = `${before}=${word}`;
    else joined.push(word);
  }
  return joined;
}

/** The money that a flag says, undefined if it is not there, or a sentence if it is none; 0 or more. */
export function amountOf(args: Arguments, flag: string, currency: CurrencyCode): Money | string | undefined {
  const text = args.text(flag);
  const amount = text === undefined ? undefined : parseMoney(text, currency);
  if (text === undefined || (amount !== undefined && amount >= 0)) return amount;
  return `--${flag} takes an amount of ${currency} such as ${decimalOf(money(1250), currency)}, not "${text}".`;
}

/** Says which flag has a number that makes no sense, if one has. */
export function outOfRange(args: Arguments): string | undefined {
  for (const [name, least, most, whole] of ranges) {
    const value = args.number(name);
    if (value === undefined || (value >= least && value <= most && (!whole || Number.isSafeInteger(value)))) continue;
    return `--${name} takes ${whole ? 'a whole number' : 'a number'} from ${least} to ${most}, not ${args.text(name)}.`;
  }
  return undefined;
}
/** Least and most of the flags that several commands take, and whether only whole numbers will do. */
const ranges: readonly (readonly [name: string, least: number, most: number, whole: boolean])[] = [
  ['runs', 1, 1_000_000, true],
  ['seed', 0, 4_294_967_295, true],
  ['risk', 0, 0.99, false],
  ['warm-up', 0, 1440, false],
  ['spare-days', 0, 365, true],
  ['guests', 0, 100_000, true],
  ['more-guests', -100_000, 100_000, true],
  ['artists', 1, 50, true],
];
