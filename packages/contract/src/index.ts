export { bookJsonSchema } from './book/book-json-schema.ts';
export { bookSchema } from './book/book-schema.ts';
export { mostBookBytes, type ReadBookOptions, readBook } from './book/read-book.ts';
export { type BookForm, writeBook } from './book/write-book.ts';
