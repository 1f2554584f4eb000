export { bookSchema } from './book/book-schema.ts';
export { type BookForm, writeBook } from './book/write-book.ts';
