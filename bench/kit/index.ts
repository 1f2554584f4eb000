export { benchKit, longTail } from './bench-kit.ts';
