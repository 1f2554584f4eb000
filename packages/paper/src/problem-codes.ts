/** Permanent codes of everything that stands in the way of a paper, with what each means; `docs/problems.md` is made from it. */
export const paperProblems = {
  'board.empty': 'There is no figure to put on a menu board.',
  'board.unreadable': 'A figure is not on a menu board because its recipe cannot be read.',
} as const;
export type PaperProblemCode = keyof typeof paperProblems;
