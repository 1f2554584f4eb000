import { checkedBook, problemText } from './open-book.ts';
import type { Command } from './run-command.ts';

export const checkCommand: Command = {
  name: 'check',
  takes: 'BOOK [--json] [--today DATE]',
  says: 'say everything that is wrong with a book, with lines',
  flags: [
    { name: 'json', takes: 'nothing', says: 'print JSON instead of sentences' },
    { name: 'today', takes: 'day', says: 'the day from which to look, YYYY-MM-DD' },
  ],
  words: [1, 1],
  run: async (args, outside) => {
    const [path = ''] = args.words;
    const { problems } = await checkedBook(path, args.day('today'), outside);
    if (args.has('json')) outside.out(`${JSON.stringify({ problems }, undefined, 2)}\n`);
    else if (problems.length === 0) outside.out('The book is in order.\n');
    else outside.out(`${problems.map((problem) => problemText(problem, path)).join('\n')}\n`);
    return problems.some((problem) => problem.weight === 'error') ? 1 : 0;
  },
};
