import { basename } from 'node:path';
import { readCoverage } from '@twistwright/contract';
import { type Coverage, type CoverageAnswer, solveCoverage } from '@twistwright/planner';
import { type CurrencyCode, money, showMoney } from '@twistwright/units';
import type { Arguments } from './arguments.ts';
import { readText, refuse } from './open-book.ts';
import type { ExitCode, Outside } from './outside.ts';
import { pageFor } from './page.ts';
import type { Command } from './run-command.ts';

export const coverCommand: Command = {
  name: 'cover',
  takes: 'FILE',
  says: 'solve a plain coverage problem (YAML or JSON): which bags let the figures be made that are worth the most',
  flags: [
    { name: 'json', takes: 'nothing', says: 'print JSON instead of a page' },
    {
      name: 'currency',
      takes: 'text',
      says: 'the amounts of the file are minor units of this currency, such as GBP; plain numbers if missing',
    },
  ],
  words: [1, 1],
  run: (args, outside) => cover(args, outside),
};

async function cover(args: Arguments, outside: Outside): Promise<ExitCode> {
  const [path = ''] = args.words;
  const currency = args.text('currency');
  if (currency !== undefined && !/^[A-Z]{3}$/u.test(currency)) {
    outside.err(`--currency takes a code of three letters such as GBP, not "${currency}".\n`);
    return 2;
  }
  const text = await readText(path, outside);
  if (typeof text !== 'string') return refuse([text], path, args, outside);
  const read = readCoverage(text, basename(path));
  if (!read.ok) return refuse(read.error, path, args, outside);
  const answer = solveCoverage(read.value);
  outside.out(args.has('json') ? `${JSON.stringify(answer, undefined, 2)}\n` : pageOf(read.value, answer, currency, outside.isTerminal));
  return 0;
}

function pageOf(
  { budget, bags, figures }: Coverage,
  answer: CoverageAnswer,
  currency: CurrencyCode | undefined,
  isTerminal: boolean,
): string {
  const show = (amount: number): string => (currency === undefined ? String(amount) : showMoney(money(amount), currency));
  const { buy, make, spent, value, bound, proven } = answer;
  const page = pageFor(isTerminal);
  page.say(
    `${buy.length} of ${counted(bags.length, 'bag')} for ${show(spent)} of ${show(budget)}: ${make.length} of ${counted(figures.length, 'figure')} can be made, worth ${value}.`,
  );
  page.tell(proven ? 'Proven: no other purchase for this budget is worth more.' : `Nothing is worth more than ${bound}.`);
  page.tell(buy.length === 0 ? 'Nothing is bought.' : `Buy ${buy.join(', ')}.`);
  if (make.length > 0) page.tell(`Make ${make.join(', ')}.`);
  return page.text();
}
const counted = (value: number, one: string): string => `${value} ${value === 1 ? one : `${one}s`}`;
