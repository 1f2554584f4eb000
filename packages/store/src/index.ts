export { isPostgres } from './connect.ts';
export { type BookReader, openStore, type Store, type Written } from './store.ts';
export { type Collection, tables } from './tables.ts';
