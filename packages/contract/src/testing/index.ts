export { anyBook } from './any-book.ts';
