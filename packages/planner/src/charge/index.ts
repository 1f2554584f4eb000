export { type Charge, type ChargeLine, chargeFor, type Floor } from './charge-for.ts';
export { type PieceCost, pieceCosts } from './piece-cost.ts';
