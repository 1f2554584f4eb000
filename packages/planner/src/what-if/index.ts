export { compareGigs, type WhatIfOutcome, type WhatIfSide } from './compare-gigs.ts';
export { gigAfter, type WhatIf } from './what-if.ts';
