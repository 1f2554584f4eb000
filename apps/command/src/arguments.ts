import { parseArgs } from 'node:util';
import { fail, type LocalDate, ok, type Result, readDate } from '@twistwright/units';

/** What may stand behind a command. */
export interface Flag {
  readonly name: string;
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
    parsed = parseArgs({ args: [...args], options, allowPositionals: true, strict: true });
  } catch (error) {
    return fail(error instanceof Error ? (error.message.split('. ')[0] ?? error.message) : String(error));
  }
  const values = parsed.values as Readonly<Record<string, string | boolean | undefined>>;
  for (const flag of flags) {
    const value = values[flag.name];
    if (typeof value !== 'string') continue;
    if ((flag.takes === 'number' || flag.takes === 'amount') && !Number.isFinite(value.trim() === '' ? Number.NaN : Number(value)))
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
