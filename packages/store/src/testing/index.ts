export { freshDatabase } from './fresh-database.ts';
export { storeContract } from './store-contract.ts';
