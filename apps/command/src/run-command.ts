import { type Arguments, type Flag, readArguments } from './arguments.ts';
import { checkCommand } from './check-command.ts';
import { coverCommand } from './cover-command.ts';
import { figureCommand } from './figure-command.ts';
import { frameCommand } from './frame-command.ts';
import { importPricesCommand } from './import-prices-command.ts';
import { kitCommand } from './kit-command.ts';
import { type ExitCode, NotWritten, type Outside } from './outside.ts';
import { adviseCommand, chargeCommand, forecastCommand, needsCommand, packCommand, planCommand, shopCommand } from './plan-commands.ts';
import { whatIfCommand } from './what-if-command.ts';

/** One word of the command line. */
export interface Command {
  readonly name: string;
  /** What stands behind the name: `BOOK [--gig ID]`. */
  readonly takes: string;
  readonly says: string;
  readonly flags: readonly Flag[];
  /** Least and most words behind it. */
  readonly words: readonly [number, number];
  readonly run: (args: Arguments, outside: Outside) => Promise<ExitCode>;
}

export const commands: readonly Command[] = [
  planCommand,
  forecastCommand,
  needsCommand,
  shopCommand,
  packCommand,
  chargeCommand,
  whatIfCommand,
  kitCommand,
  coverCommand,
  adviseCommand,
  checkCommand,
  importPricesCommand,
  figureCommand,
  frameCommand,
];

export function usage(): string {
  const width = Math.max(...commands.map((command) => command.name.length));
  return [
    'twistwright COMMAND ...',
    '',
    ...commands.map((command) => `  ${command.name.padEnd(width)}  ${command.says}`),
    '',
    'twistwright COMMAND --help says what stands behind it. BOOK is a book file, YAML or JSON; demo/book.yaml is one to try.',
    'Exit codes: 0 done, 1 a refusal or problems, 2 not understood.',
    '',
  ].join('\n');
}
function usageOf(command: Command): string {
  const width = Math.max(0, ...command.flags.map((flag) => flag.name.length));
  return [
    `twistwright ${command.name} ${command.takes}`,
    `  ${command.says}`,
    ...command.flags.map((flag) => `  --${flag.name.padEnd(width)}  ${flag.says}`),
    '',
  ].join('\n');
}

/** Runs the command line; everything it asks of the world comes through `outside`. */
export async function runCommand(args: readonly string[], outside: Outside): Promise<ExitCode> {
  const [name, ...rest] = args;
  if (name === undefined || name === '--help' || name === 'help') {
    outside.out(usage());
    return name === undefined ? 2 : 0;
  }
  const command = commands.find((candidate) => candidate.name === name);
  if (command === undefined) {
    outside.err(`There is no command "${name}".\n\n${usage()}`);
    return 2;
  }
  if (rest.includes('--help')) {
    outside.out(usageOf(command));
    return 0;
  }
  const read = readArguments(rest, command.flags);
  if (!read.ok) {
    outside.err(`${read.error}.\n\n${usageOf(command)}`);
    return 2;
  }
  const [least, most] = command.words;
  if (read.value.words.length < least || read.value.words.length > most) {
    outside.err(`${usageOf(command)}`);
    return 2;
  }
  try {
    return await command.run(read.value, outside);
  } catch (error) {
    if (!(error instanceof NotWritten)) throw error;
    outside.err(`${error.message}\n`);
    return 1;
  }
}
