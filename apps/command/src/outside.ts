import type { Solver } from '@twistwright/planner';
import type { LocalDate } from '@twistwright/units';

/** What a command asks of the world around it; tests hand in their own. */
export interface Outside {
  /** Reads a whole file as text; throws with a sentence if it cannot. */
  readonly readFile: (path: string) => Promise<string>;
  readonly writeFile: (path: string, content: string | Uint8Array) => Promise<void>;
  readonly out: (text: string) => void;
  /** Progress and complaints. */
  readonly err: (text: string) => void;
  /** True if `out` is a terminal that shows weight and colour. */
  readonly isTerminal: boolean;
  readonly today: (zone: string) => LocalDate;
  /** Seconds, for time limits and progress only. */
  readonly now: () => number;
  /** Opened when it is needed first. */
  readonly solver: () => Solver;
  /** Asks the person; undefined where there is nobody to ask. */
  readonly ask?: (question: string) => Promise<string>;
}

/** 0 done, 1 a refusal or problems, 2 not understood. */
export type ExitCode = 0 | 1 | 2;
