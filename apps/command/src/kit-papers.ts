import type { Book } from '@twistwright/books';
import type { BookKitWishes, KitPlan } from '@twistwright/planner';
import type { Arguments, Flag } from './arguments.ts';
import type { Outside } from './outside.ts';

export const kitPaperFlags: readonly Flag[] = [
  { name: 'pdf', takes: 'text', says: 'write the list to print to this file' },
  { name: 'learn', takes: 'text', says: 'write the figures to learn, in order, to this PDF file' },
  { name: 'html', takes: 'text', says: 'write list and figures to this file, a page that opens without the app' },
  { name: 'csv', takes: 'text', says: 'write the list to this file' },
  { name: 'paper', takes: 'text', says: 'A4 or Letter; that of the business if missing' },
  { name: 'name', takes: 'text', says: 'a name for the kit, such as whom it is for' },
];

/** The size that the flags ask for; undefined if they ask for one that there is not. */
export function paperSize(args: Arguments): { readonly size?: 'A4' | 'Letter' } | undefined {
  const text = args.text('paper');
  if (text === undefined) return {};
  const size = (['A4', 'Letter'] as const).find((known) => known.toLowerCase() === text.toLowerCase());
  return size === undefined ? undefined : { size };
}

/** Writes the papers that the flags ask for, and says so. */
export async function writeKitPapers(args: Arguments, outside: Outside, book: Book, plan: KitPlan, wishes: BookKitWishes): Promise<void> {
  const name = args.text('name');
  const paper = { plan, wishes, ...(name === undefined ? {} : { name }) };
  const made = args.day('today') ?? outside.today(book.business.zone);
  const options = { made, ...paperSize(args) };
  if (!['pdf', 'learn', 'html', 'csv'].some((flag) => args.has(flag))) return;
  const { kitCsv, kitHandoutPdf, kitPage, learningSheetPdf } = await import('@twistwright/paper');
  const papers = {
    pdf: () => kitHandoutPdf(book, paper, options),
    learn: () => learningSheetPdf(book, paper, options),
    html: async () => kitPage(book, paper, made),
    csv: async () => kitCsv(book, plan),
  } as const;
  for (const [flag, make] of Object.entries(papers)) {
    const path = args.text(flag);
    if (path === undefined) continue;
    await outside.writeFile(path, await make());
    outside.err(`Wrote ${path}.\n`);
  }
}
