import { type Book, sizesOf } from '@twistwright/books';
import { piecesOf, readRecipe } from '@twistwright/repertoire';
import { type Money, type Result, roundToMoney } from '@twistwright/units';
import { type BookKitWishes, type Growth, type GrowthProblem, growthOf, guestsPerHourOf } from '../kit/index.ts';
import type { KitPlan } from './plan-kit.ts';

/** What the first gigs of a newcomer bring and cost. */
export type FirstEarnings = Pick<GrowthProblem, 'hoursPerGig' | 'feePerHour' | 'tipPerGuest' | 'costPerGig' | 'gigsPerWeek'> &
  Partial<Pick<GrowthProblem, 'tipSigma' | 'setAside' | 'weeks'>>;

/**
 * When a kit pays for itself, and when what comes next can be bought: guests as in the wishes, of whom the share is served that the kit
 * meets; balloons at what the bags of the kit cost a piece.
 */
export function growKit(
  book: Book,
  wishes: BookKitWishes,
  plan: Pick<KitPlan, 'kit' | 'growthPurchases'>,
  earnings: FirstEarnings,
  options: { readonly runs?: number; readonly seed?: number } = {},
): Result<Growth> {
  const { kit } = plan;
  return growthOf(
    {
      ...earnings,
      invested: kit.spent,
      guestsPerHour: (wishes.guestsPerHour ?? guestsPerHourOf[wishes.kind]) * kit.met,
      materialPerGuest: materialPerGuest(book, kit),
      purchases: plan.growthPurchases,
    },
    options.runs ?? 1000,
    options.seed ?? 1,
  );
}

/** Balloons for a guest: pieces of the figures that are made, as often as they are, at the mean price of a piece of the kit. */
function materialPerGuest(book: Book, { lines, figures }: KitPlan['kit']): Money {
  const bought = lines.reduce((sum, line) => sum + line.pieces, 0);
  const paid = lines.reduce((sum, line) => sum + line.cost, 0);
  let made = 0;
  let pieces = 0;
  for (const { figure, share, met } of figures) {
    if (!(share * met > 0)) continue;
    made += share * met;
    pieces += share * met * piecesFor(book, figure);
  }
  return roundToMoney(bought === 0 || made === 0 ? 0 : (pieces / made) * (paid / bought));
}
function piecesFor(book: Book, id: string): number {
  const recipe = book.figures.find((figure) => figure.id === id)?.recipe;
  const read = recipe === undefined ? undefined : readRecipe(recipe, sizesOf(book));
  return read?.ok === true ? piecesOf(read.value).reduce((sum, piece) => sum + piece.count, 0) : 0;
}
