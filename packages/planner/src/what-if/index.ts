export { gigAfter, type WhatIf } from './what-if.ts';
