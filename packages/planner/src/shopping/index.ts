export { type BagMenu, bagMenu } from './bag-menu.ts';
export { type NumberedProblem, numbered } from './grid-of-problem.ts';
export { boughtLots, cashOf, type GridGoal, type GridProgram, gridProgram } from './grid-program.ts';
export { arrivalAt, type OrderDate, orderDateFor } from './order-dates.ts';
export { type SearchEffort, type SearchedPurchases, searchOrders } from './order-search.ts';
export {
  carriageOf,
  costOf,
  type GridBag,
  type GridCost,
  type GridItem,
  type GridLot,
  type GridOffer,
  type GridOrder,
  netOf,
  type PriceStep,
  type PurchaseGrid,
  priceAt,
} from './purchase-grid.ts';
export { orderFact, type PurchaseOptions, purchaseOfBook } from './purchase-of-book.ts';
export type { PurchaseItem, PurchaseOffer, PurchaseProblem, PurchaseSupplier } from './purchase-problem.ts';
export { type ThumbPurchases, thumbPurchases } from './rule-of-thumb.ts';
export { coveredRuns, type GridScenarios, ownDemand, scenarioLevels } from './scenario-levels.ts';
export { chanceOfOrders, type ShopOptions, shop, shoppingCurve } from './shop.ts';
export type { Because, CurvePoint, RuleOfThumb, ShoppingLine, ShoppingOrder, ShoppingPlan, ShoppingRefusal } from './shopping-plan.ts';
export {
  cheapestPurchases,
  type Proof,
  type PurchaseAnswer,
  type PurchaseOutcome,
  type PurchaseRefusal,
  type PurchaseTools,
  safestPurchases,
} from './solve-purchases.ts';
