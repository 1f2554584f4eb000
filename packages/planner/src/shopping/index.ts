export { type GridGoal, type GridProgram, gridProgram } from './grid-program.ts';
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
export { coveredRuns, type GridScenarios, ownDemand, scenarioLevels } from './scenario-levels.ts';
export {
  cheapestPurchases,
  type Proof,
  type PurchaseAnswer,
  type PurchaseOutcome,
  type PurchaseRefusal,
  type PurchaseTools,
  safestPurchases,
} from './solve-purchases.ts';
