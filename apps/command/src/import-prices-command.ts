import { basename } from 'node:path';
import { type PriceMapping, priceMappingSchema, problemsOfInput, readBook, readPrices, withPrices, writeBook } from '@twistwright/contract';
import { counted } from '@twistwright/planner';
import { showMoney } from '@twistwright/units';
import type { Arguments } from './arguments.ts';
import { problemText, readText, refuse } from './open-book.ts';
import type { Outside } from './outside.ts';
import { pageFor } from './page.ts';
import type { Command } from './run-command.ts';

export const importPricesCommand: Command = {
  name: 'import-prices',
  takes: 'BOOK SUPPLIER FILE.csv [--columns MAPPING.json] [--save]',
  says: 'read a price list into the book, and say what could not be matched',
  flags: [
    { name: 'columns', takes: 'text', says: 'JSON (or a file of it) that says which column holds what: {"size": "Size", "price": "Each"}' },
    { name: 'save', takes: 'nothing', says: 'write the book back; without it nothing is changed' },
    { name: 'drop-gone', takes: 'nothing', says: 'also take out offers that the list no longer has' },
    { name: 'json', takes: 'nothing', says: 'print JSON instead of a page' },
  ],
  words: [3, 3],
  run: async (args, outside) => {
    const [bookPath = '', supplier = '', listPath = ''] = args.words;
    const bookText = await readText(bookPath, outside);
    if (typeof bookText !== 'string') return refuse([bookText], bookPath, args, outside);
    const listText = await readText(listPath, outside);
    if (typeof listText !== 'string') return refuse([listText], listPath, args, outside);
    const book = readBook(bookText, { name: basename(bookPath) });
    if (!book.ok) return refuse(book.error, bookPath, args, outside);
    const mapping = await mappingOf(args, outside);
    if (mapping === 'wrong') return 2;
    let read = readPrices(listText, { book: book.value, supplier, ...(mapping === undefined ? {} : { mapping }) });
    if (!read.ok && mapping === undefined && outside.ask !== undefined && read.error.some((problem) => problem.code === 'prices.columns')) {
      const asked = await askColumns(listText, outside.ask);
      read = readPrices(listText, { book: book.value, supplier, mapping: asked });
    }
    if (!read.ok) return refuse(read.error, listPath, args, outside);
    const list = read.value;
    if (args.has('save')) {
      const form = bookPath.toLowerCase().endsWith('.json') ? 'json' : 'yaml';
      await outside.writeFile(bookPath, writeBook(withPrices(book.value, list, { gone: args.has('drop-gone') ? 'drop' : 'keep' }), form));
    }
    if (args.has('json')) {
      outside.out(`${JSON.stringify({ ...list, saved: args.has('save') }, undefined, 2)}\n`);
      return 0;
    }
    const page = pageFor(outside.isTerminal);
    const { currency } = book.value.business;
    page.say(
      `${counted(list.offers.length, 'offer')} of ${counted(list.rows.all - list.rows.above - list.rows.blank - heading, 'line')}: ${list.added.length} new, ${list.changed.length} changed, ${list.unmatched.length} not matched.`,
    );
    page.tell(args.has('save') ? `${bookPath} has them now.` : 'Nothing is written yet: add --save to put them into the book.');
    if (list.changed.length > 0) {
      page.gap();
      page.table(
        ['offer', 'item', 'was', 'is'],
        list.changed.map(({ before, after }) => [
          after.id,
          after.item,
          showMoney(before.price, currency),
          showMoney(after.price, currency),
        ]),
      );
    }
    if (list.gone.length > 0) page.tell(`Not in the list any more: ${list.gone.map((offer) => offer.id).join(', ')}.`);
    if (list.unmatched.length > 0) {
      page.gap();
      page.tell('Not matched:');
      page.table(
        ['line', 'what it says', 'why'],
        list.unmatched.slice(0, mostShown).map((line) => [line.line, line.cells.join(' | ').slice(0, 60), line.problem.sentence]),
      );
      if (list.unmatched.length > mostShown) page.tell(`and ${list.unmatched.length - mostShown} more; --json lists all of them.`);
    }
    outside.out(page.text());
    return 0;
  },
};
/** Lines of a list that name its columns. */
const heading = 1;
const mostShown = 40;

/** The mapping that was given as JSON or as a file of it; undefined if none was. */
async function mappingOf(args: Arguments, outside: Outside): Promise<PriceMapping | undefined | 'wrong'> {
  const given = args.text('columns');
  if (given === undefined) return undefined;
  const text = given.trimStart().startsWith('{') ? given : await readText(given, outside);
  if (typeof text !== 'string') {
    outside.err(`${problemText(text, given)}\n`);
    return 'wrong';
  }
  let value: unknown;
  try {
    value = JSON.parse(text);
  } catch {
    outside.err('--columns takes JSON, such as {"size": "Size", "price": "Each"}.\n');
    return 'wrong';
  }
  const problems = problemsOfInput(priceMappingSchema, value);
  for (const problem of problems) outside.err(`${problemText(problem, '--columns')}\n`);
  return problems.length > 0 ? 'wrong' : priceMappingSchema.parse(value);
}

/** Asks for each column in turn; an empty answer means that the list has none. */
async function askColumns(text: string, ask: NonNullable<Outside['ask']>): Promise<PriceMapping> {
  const heading = text.split('\n').find((line) => line.trim() !== '') ?? '';
  const mapping: Record<string, string> = {};
  for (const column of ['size', 'colour', 'finish', 'print', 'description', 'count', 'price', 'reference']) {
    const answer = (await ask(`Which heading of "${heading.trim()}" is the ${column}? (empty: none) `)).trim();
    if (answer !== '') mapping[column] = answer;
  }
  return mapping;
}
