import type { Book } from '@twistwright/books';
import type { BookKitWishes, FoundKit, Kit, KitLasting, KitPlan, NearestKit } from '@twistwright/planner';
import type { Money, Problem } from '@twistwright/units';

/** What is asked of a worker. A newer question ends an older one. */
export type KitAsk =
  /** The book that the next questions are about, as far as kits are concerned. */
  | { readonly kind: 'book'; readonly number: number; readonly book: Book }
  /** What is found here for a budget is told to another worker through this port too, or is listened for on it. */
  | { readonly kind: 'port'; readonly number: number; readonly port: MessagePort; readonly use: 'tell' | 'listen' }
  /** What is affordable of what has been found so far: the answer within a frame or two of a moving finger. */
  | { readonly kind: 'known'; readonly number: number; readonly wishes: UnpricedWishes; readonly budget: Money }
  /** What the rest of the money adds, then the curve. Without a budget only the range and the curve are worked out. */
  | {
      readonly kind: 'soon';
      readonly number: number;
      readonly wishes: UnpricedWishes;
      readonly budget: Money | undefined;
    }
  /** The whole answer, and with it what is lost through what was forced in or taken out. */
  | { readonly kind: 'full'; readonly number: number; readonly wishes: BookKitWishes }
  /** Another kit, to hold beside. */
  | { readonly kind: 'other'; readonly number: number; readonly wishes: BookKitWishes };
/** Wishes before the money is known. */
export type UnpricedWishes = Omit<BookKitWishes, 'budget'>;

/** A purchase that one worker tells another. */
export interface ToldPurchase {
  /** Number of the question with which the book came. */
  readonly book: number;
  /** The wishes it is for. */
  readonly key: string;
  readonly budget: Money;
  readonly found: FoundKit;
}
export const keyOf = (wishes: UnpricedWishes): string => JSON.stringify(wishes);

/** What is known of a kit within a frame or two. */
export interface QuickKit {
  readonly kit: Kit;
  readonly lasting: KitLasting;
  /** Those of the last answer that had them, where a first answer comes without. */
  readonly rules: KitPlan['rules'];
}
export interface CurvePoint {
  readonly budget: Money;
  readonly met: number;
  readonly low: number;
  readonly high: number;
}
export interface BudgetRange {
  readonly cheapest: Money;
  readonly everything: Money;
}
export type KitAnswer =
  | { readonly kind: 'known'; readonly number: number; readonly quick: Omit<QuickKit, 'rules'> }
  | { readonly kind: 'quick'; readonly number: number; readonly quick: QuickKit }
  | { readonly kind: 'range'; readonly number: number; readonly range: BudgetRange }
  | { readonly kind: 'points'; readonly number: number; readonly points: readonly CurvePoint[]; readonly isDone: boolean }
  | { readonly kind: 'full'; readonly number: number; readonly plan: KitPlan; readonly freeMet: number | undefined }
  | { readonly kind: 'other'; readonly number: number; readonly plan: KitPlan }
  | { readonly kind: 'refused'; readonly number: number; readonly of: KitAsk['kind']; readonly problems: readonly Problem[] }
  /** What is possible where the kit that is wished is not. */
  | { readonly kind: 'nearest'; readonly number: number; readonly nearest: NearestKit }
  | { readonly kind: 'broken'; readonly number: number; readonly message: string };
