export type { Artist } from './artist.ts';
export { balloonFor, balloonsByLook } from './balloon-for.ts';
export type { BalloonTest } from './balloon-test.ts';
export { type Book, type BookList, bookLists, emptyBook } from './book.ts';
export type { Business, Contact, PlanningSettings, Pump, ServicePromise, Settings, ToolWish } from './business.ts';
export { type Caution, cautions, deference, type PrescribedWording, prescribedWording, swordCaution } from './cautions.ts';
export type { ChargeSettings, MileRate } from './charge-settings.ts';
export { type CheckOptions, checkBook } from './check-book.ts';
export { sizesOf } from './check-names.ts';
export type { Client } from './client.ts';
export {
  chargeSettingsOf,
  type FullLineSettings,
  type FullPlanningSettings,
  lineSettingsOf,
  planningSettingsOf,
} from './default-settings.ts';
export type { Colourway, Extra, Figure } from './figure.ts';
export {
  type Agreement,
  type Arrivals,
  type ClassPlan,
  type Gig,
  type GigKind,
  gigKinds,
  type MenuLine,
  type TablesPlan,
  type Venue,
} from './gig.ts';
export { type BalloonItem, type Colour, type Finish, finishes, type Item, nameOfItem, type OtherItem } from './item.ts';
export { layDates } from './lay-dates.ts';
export type { ClosingRule, LineSettings, OutOfStock, Patience, TimeLaw } from './line-settings.ts';
export { type PrintOn, printOn } from './print-on.ts';
export { type BookProblemCode, bookProblems, errorAt, warningAt } from './problem-codes.ts';
export type { SavedKit, SavedKitWishes } from './saved-kit.ts';
export { countsByItem, type Lot, type Place, type Stock, type StockDifference, type StockLine, type StockMove, stockOf } from './stock.ts';
export type { Need, Offer, Order, Supplier } from './supply.ts';
export { makersOf, makersOfSize, testsOf, tubesTaken, workingOfPieces, workingsOf } from './workings.ts';
