export { storeContract } from './store-contract.ts';
