export * from './answers/index.ts';
export { api } from './api.ts';
export { bookJsonSchema } from './book/book-json-schema.ts';
export { bookSchema } from './book/book-schema.ts';
export { businessSchema, settingsSchema } from './book/business-schema.ts';
export { colourSchema, figureSchema, itemSchema, sizeSchema } from './book/figure-schema.ts';
export { gigSchema } from './book/gig-schema.ts';
export { artistSchema, clientSchema } from './book/people-schema.ts';
export {
  mostBookBytes,
  type PlacedBook,
  type ReadBookOptions,
  readBook,
  readPlacedBook,
  readUsableBook,
  type UsableBook,
} from './book/read-book.ts';
export { readCoverage } from './book/read-coverage.ts';
export { needSchema, offerSchema, orderSchema, placeSchema, stockMoveSchema, supplierSchema } from './book/supply-schema.ts';
export { type BookForm, writeBook } from './book/write-book.ts';
export { ApiError, type CallOptions, call } from './http/call.ts';
export { openApi, refusalsOf } from './http/open-api.ts';
export { type ProblemDetails, problemDetailsSchema, problemSchema } from './http/problem-details.ts';
export { problemsOfInput, readInput } from './http/problems-of-input.ts';
export {
  type Media,
  type Method,
  mediaTypes,
  type Route,
  type RouteInput,
  type RouteOutput,
  type RouteRequest,
  type Routes,
  route,
  routesOf,
  usualMostBytes,
} from './http/route.ts';
export { kitWishesSchema } from './kit-wishes-schema.ts';
export { type CsvRow, type CsvRows, readCsv, type Separator } from './prices/csv-rows.ts';
export { priceListSchema } from './prices/price-list-schema.ts';
export type { PriceMapping } from './prices/price-mapping.ts';
export { priceMappingSchema } from './prices/price-mapping-schema.ts';
export { mostPriceBytes, type PriceList, type ReadPricesOptions, readPrices, type UnmatchedLine } from './prices/read-prices.ts';
export { type WithPricesOptions, withPrices } from './prices/with-prices.ts';
export { writeCsv } from './prices/write-csv.ts';
