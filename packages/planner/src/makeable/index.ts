export {
  type AirBook,
  airOfBook,
  airOptionsOf,
  balloonsTaken,
  colourNames,
  type FigureFacts,
  favouriteColourway,
  figureFacts,
  finished,
  knownPaint,
  paintOf,
  paintsOf,
} from './figure-facts.ts';
export { type FitChange, fitChanges, isNewVerdict } from './fit-changes.ts';
export {
  filterMakeable,
  type MakeableFigure,
  type MakeableFilter,
  type MakeableWay,
  makeableFigures,
  type Substitute,
  type Taking,
  withoutEnd,
} from './makeable-figures.ts';
export { type MinutesSpread, minutesSpread } from './minutes-spread.ts';
export { figureGroups, figureOfShipped, type GroupName, groupOfFigure, shippedBook } from './shipped-book.ts';
export { usualFill } from './usual-fill.ts';
