export { inventedKit } from '../kit/invented-kit.ts';
