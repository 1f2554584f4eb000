import { bookProblems } from '@twistwright/books';
import { plannerProblems } from '@twistwright/planner';
import { recipeProblems, shapeProblems } from '@twistwright/repertoire';
import { paperProblems } from '../packages/paper/src/problem-codes.ts'; // not by its index, which loads everything that makes PDFs

/** The codes of each part, where they are declared, and what the part is about. */
export const problemParts: readonly { readonly title: string; readonly where: string; readonly codes: Readonly<Record<string, string>> }[] =
  [
    { title: 'Book files, books and price lists', where: 'packages/books/src/problem-codes.ts', codes: bookProblems },
    { title: 'Recipes', where: 'packages/repertoire/src/notation/problem-codes.ts', codes: recipeProblems },
    { title: 'Frames and shapes', where: 'packages/repertoire/src/frames/problem-codes.ts', codes: shapeProblems },
    { title: 'Plans, shopping and first kits', where: 'packages/planner/src/problem-codes.ts', codes: plannerProblems },
    { title: 'Papers', where: 'packages/paper/src/problem-codes.ts', codes: paperProblems },
  ];

/** The text of `docs/problems.md`. */
export function problemsPage(): string {
  const sections = problemParts.map(({ title, where, codes }) => {
    const rows = Object.entries(codes).map(([code, meaning]) => `| \`${code}\` | ${meaning} |`);
    return [`## ${title}`, '', `Declared in \`${where}\`.`, '', '| code | what it means |', '| --- | --- |', ...rows].join('\n');
  });
  return `# Problems

Everything that can be wrong with what is put in has a permanent code. A code never changes its meaning and is never used again for
another one. Each problem comes with its path, a sentence with the values in it, what to do, and, where it was read from a file, line and
column. An *error* stops; a *warning* is said beside the answer.

This page is made by \`npx node scripts/problems.ts\`.

${sections.join('\n\n')}
`;
}
