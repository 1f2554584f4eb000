import { type Book, type Figure, nameOfItem, type Offer, sizesOf } from '@twistwright/books';
import { piecesOf, readRecipe } from '@twistwright/repertoire';
import { fail, ok, type Problem, type Result } from '@twistwright/units';
import { checkKit } from './check-kit.ts';
import { coloursOf } from './colours-of-figure.ts';
import type { KitFigure, KitItem, KitOffer, KitProblem, KitTool, KitWishes } from './kit-problem.ts';

/** What a newcomer wishes, in the names of a book. */
export interface BookKitWishes extends KitWishes {
  /** Figures to consider, by id; all that have a recipe if missing. */
  readonly figures?: readonly string[];
  /** Asking shares by figure; taken from the menus of the book's gigs with guests who choose if missing; a figure on none of them gets half the usual share. Where shares are given, nobody asks for a figure that is not among them. */
  readonly shares?: Readonly<Record<string, number>>;
  /** Tools and sundries; those of the settings if missing: what they say of a first kit, else `always` is a must-have, `spare` a spare, the others come later. Count as in the settings, else 1. */
  readonly tools?: readonly { readonly item: string; readonly need: KitTool['need']; readonly count?: number }[];
  /** What the newcomer has already; the book's own stock belongs to the coach and is never counted. */
  readonly have?: KitProblem['have'];
}

/**
 * The kit problem of a book: figures with the pieces of their recipes and the colours of their colourways, offers with their price breaks,
 * shops with what they ask of an order, tools with every offer that sells them. Recipes that cannot be read, and everything else that is wrong, come back as problems.
 */
export function kitProblemOf(book: Book, wishes: BookKitWishes): Result<KitProblem> {
  const { problem, problems } = kitDraftOf(book, wishes);
  const errors = [...problems, ...checkKit(problem)].filter((one) => one.weight === 'error');
  return errors.length > 0 ? fail(errors) : ok(problem);
}

/** The kit problem of a book as far as it can be put together, unchecked, with what is wrong in the book itself. */
export function kitDraftOf(book: Book, wishes: BookKitWishes): { readonly problem: KitProblem; readonly problems: readonly Problem[] } {
  const problems: Problem[] = [];
  const chosen = figuresOf(book, wishes, problems);
  const shares = sharesOf(book, wishes);
  const figures = chosen.flatMap((figure): readonly KitFigure[] => {
    const recipe = figure.recipe === undefined ? undefined : readRecipe(figure.recipe, sizesOf(book));
    if (recipe !== undefined && !recipe.ok) {
      problems.push(...recipe.error.map((one) => ({ ...one, sentence: `${figure.name}: ${one.sentence}` })));
      return [];
    }
    const colours = recipe === undefined ? { roles: [] } : coloursOf(figure, piecesOf(recipe.value));
    return [
      {
        id: figure.id,
        name: figure.name,
        share: shares.get(figure.id) ?? 0,
        ...colours,
        ...(figure.extras === undefined ? {} : { extras: figure.extras }),
      },
    ];
  });
  const { figures: _figures, shares: _shares, tools, have, ...plain } = wishes;
  const problem: KitProblem = {
    currency: book.business.currency,
    items: book.items.map((item) => itemOf(book, item)),
    figures,
    offers: book.offers.map(offerOf),
    suppliers: book.suppliers.map((supplier) => ({
      id: supplier.id,
      name: supplier.name,
      shipping: supplier.carriage,
      ...(supplier.freeFrom === undefined ? {} : { freeFrom: supplier.freeFrom }),
      ...(supplier.leastOrder === undefined ? {} : { leastOrder: supplier.leastOrder }),
      ...(supplier.currency === undefined ? {} : { currency: supplier.currency }),
    })),
    tools: toolsOf(book, tools, problems),
    have: have ?? [],
    wishes: plain,
  };
  return { problem, problems };
}

function figuresOf(book: Book, wishes: BookKitWishes, problems: Problem[]): readonly Figure[] {
  if (wishes.figures === undefined) return book.figures.filter((figure) => figure.recipe !== undefined);
  return wishes.figures.flatMap((id, f, all) => {
    if (all.indexOf(id) < f) return [];
    const figure = book.figures.find((one) => one.id === id);
    if (figure === undefined)
      problems.push({
        code: 'kit.unknown',
        path: ['wishes', 'figures', f],
        sentence: `${id} is no figure of the book.`,
        todo: 'Name a figure of the repertoire.',
        weight: 'error',
      });
    return figure === undefined ? [] : [figure];
  });
}

/**
 * Asking shares: each gig's menu counts once, so that a long menu weighs no more than a short one. What is made to order or taught
 * in a class was settled beforehand and says nothing about what guests ask for.
 */
function sharesOf(book: Book, wishes: BookKitWishes): ReadonlyMap<string, number> {
  if (wishes.shares !== undefined) return new Map(Object.entries(wishes.shares));
  const sums = new Map<string, number>();
  for (const gig of book.gigs) {
    if (gig.kind === 'made to order' || gig.kind === 'class') continue;
    const total = gig.menu.reduce((sum, line) => sum + line.share, 0);
    if (total > 0) for (const line of gig.menu) sums.set(line.figure, (sums.get(line.figure) ?? 0) + line.share / total);
  }
  const listed = [...sums.values()];
  const typical = listed.length === 0 ? 1 : listed.reduce((sum, share) => sum + share, 0) / listed.length;
  // On no menu yet: asked for half as often as the average of those that are. Common practice, no published source.
  return new Map(book.figures.map((figure) => [figure.id, sums.get(figure.id) ?? typical / 2]));
}

function itemOf(book: Book, item: Book['items'][number]): KitItem {
  const name = nameOfItem(item, book.colours);
  if (item.kind !== 'balloon') return { id: item.id, name };
  return {
    id: item.id,
    name,
    size: item.size,
    colour: item.colour,
    ...(item.finish === undefined ? {} : { finish: item.finish }),
    ...(item.print === undefined ? {} : { print: item.print.toLowerCase() }),
  };
}
const offerOf = (offer: Offer): KitOffer => ({
  id: offer.id,
  supplier: offer.supplier,
  item: offer.item,
  count: offer.count,
  price: offer.price,
  ...(offer.breaks === undefined ? {} : { breaks: offer.breaks }),
  ...(offer.mostBags === undefined ? {} : { mostBags: offer.mostBags }),
  ...(offer.mix === undefined ? {} : { mix: offer.mix }),
});
function toolsOf(book: Book, wished: BookKitWishes['tools'], problems: Problem[]): readonly KitTool[] {
  const needOf = { always: 'must-have', spare: 'spare', outdoors: 'later', tables: 'later' } as const;
  const settings = book.settings?.tools ?? [];
  const list = wished ?? settings.map((tool) => ({ item: tool.item, need: tool.firstKit ?? needOf[tool.when] }));
  return list.flatMap((tool: NonNullable<BookKitWishes['tools']>[number], t): readonly KitTool[] => {
    const item = book.items.find((one) => one.id === tool.item);
    if (item !== undefined && book.offers.some((offer) => offer.item === tool.item)) {
      const count = tool.count ?? settings.find((one) => one.item === tool.item)?.count ?? 1;
      return [{ id: tool.item, name: nameOfItem(item, book.colours), need: tool.need, ...(count === 1 ? {} : { count }) }];
    }
    // The book's own tools may long be paid for and have no offer; a wish for one has to have a price.
    if (wished !== undefined)
      problems.push({
        code: 'kit.unknown',
        path: ['wishes', 'tools', t],
        sentence: `${tool.item} has no offer, so it has no price.`,
        todo: 'Add an offer for it, or leave it out.',
        weight: 'error',
      });
    return [];
  });
}
