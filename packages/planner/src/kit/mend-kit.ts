import { checkKit, priced } from './check-kit.ts';
import type { KitProblem } from './kit-problem.ts';
import { findKit, leastBudget } from './solve-kit.ts';

/** A kit problem that can be solved, and what was changed for it, a sentence each. */
export interface MendedKit {
  readonly problem: KitProblem;
  readonly changes: readonly string[];
}

/** The nearest problem that can be solved to one that cannot; undefined where nothing is left that could be made. */
export function mendKit(problem: KitProblem): MendedKit | undefined {
  const changes: string[] = [];
  let mended = problem;
  const change = (next: KitProblem, sentence: string): void => {
    mended = next;
    changes.push(sentence);
  };
  leaveOut(mended, change);
  if (!(mended.figures.reduce((sum, figure) => sum + figure.share, 0) > 0) && mended.figures.length > 0)
    change(
      { ...mended, figures: mended.figures.map((figure) => ({ ...figure, share: 1 })) },
      'All figures are taken to be asked for alike.',
    );
  if (checkKit(mended).some((one) => one.weight === 'error')) return undefined;
  if (findKit(mended, { effort: 'soon' }).ok) return { problem: mended, changes };
  return withMoney(mended, changes);
}

/** Leaves out, one after the other, what cannot be used, until the check has nothing to say of figures, offers, shops and tools. */
function leaveOut(problem: KitProblem, change: (next: KitProblem, sentence: string) => void): void {
  const errors = checkKit(problem).filter((one) => one.weight === 'error');
  const at = (list: string): ReadonlySet<number> =>
    new Set(errors.flatMap(({ path }) => (path[0] === list && typeof path[1] === 'number' ? [path[1]] : [])));
  const [suppliers, offers, figures] = [at('suppliers'), at('offers'), at('figures')];
  const shops = new Set(problem.suppliers.filter((_, s) => suppliers.has(s)).map((supplier) => supplier.id));
  const wishes = mendWishes(problem);
  const next: KitProblem = {
    ...problem,
    suppliers: problem.suppliers.filter((_, s) => !suppliers.has(s)),
    offers: problem.offers.filter((offer, o) => !offers.has(o) && !shops.has(offer.supplier)),
    figures: problem.figures.filter((_, f) => !figures.has(f)),
    tools: problem.tools.filter((_, t) => !at('tools').has(t)),
    have: problem.have.filter((_, h) => !at('have').has(h)),
    wishes: wishes.wishes,
  };
  const names = [
    ...problem.suppliers.filter((_, s) => suppliers.has(s)).map((supplier) => supplier.name),
    ...problem.offers.filter((_, o) => offers.has(o)).map((offer) => `offer ${offer.id}`),
    ...problem.figures.filter((_, f) => figures.has(f)).map((figure) => figure.name),
    ...problem.tools.filter((_, t) => at('tools').has(t)).map((tool) => tool.name),
  ];
  if (names.length > 0) change(next, `Without ${names.join(', ')}.`);
  else if (wishes.sentence !== undefined || at('have').size > 0)
    change(next, wishes.sentence ?? 'Without what is said to be there already.');
  if (names.length > 0 && wishes.sentence !== undefined) change(next, wishes.sentence);
}
/** The wishes without what names nothing. */
function mendWishes({ wishes, offers, tools }: KitProblem): { readonly wishes: KitProblem['wishes']; readonly sentence?: string } {
  const known = (wishes.forcedIn ?? []).filter((id) => offers.some((offer) => offer.id === id) || tools.some((tool) => tool.id === id));
  const unknown = (wishes.forcedIn ?? []).filter((id) => !known.includes(id));
  return unknown.length === 0
    ? { wishes }
    : { wishes: { ...wishes, forcedIn: known }, sentence: `${unknown.join(', ')} is not bought, as nothing is called so.` };
}

/** With the least money that is enough; where no money is, without what is to be bought in any case, or any limit on colours. */
function withMoney(problem: KitProblem, changes: readonly string[]): MendedKit | undefined {
  const least = leastBudget(problem);
  if (least !== undefined && least > problem.wishes.budget)
    return {
      problem: { ...problem, wishes: { ...problem.wishes, budget: least } },
      changes: [...changes, `With ${priced(problem, least)} instead of ${priced(problem, problem.wishes.budget)}.`],
    };
  const { forcedIn, mostColours, ...plain } = problem.wishes;
  if (forcedIn !== undefined)
    return mendMore({ ...problem, wishes: { ...problem.wishes, forcedIn: [] } }, [...changes, 'Without what is to be bought in any case.']);
  if (mostColours !== undefined) return mendMore({ ...problem, wishes: plain }, [...changes, 'Without a limit on colours.']);
  return undefined;
}
function mendMore(problem: KitProblem, changes: readonly string[]): MendedKit | undefined {
  if (findKit(problem, { effort: 'soon' }).ok) return { problem, changes };
  const { forcedIn, ...wishes } = problem.wishes;
  return withMoney(forcedIn?.length === 0 ? { ...problem, wishes } : problem, changes);
}
