/** What a search may still do, counted down in steps of about ten nanoseconds; used up at 0 or below. Counted, not timed, so that the answer is the same on every machine. */
export interface Work {
  left: number;
}
