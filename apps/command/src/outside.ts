import type { Solver } from '@twistwright/planner';
import type { LocalDate } from '@twistwright/units';

/** What a command asks of the world around it; tests hand in their own. */
export interface Outside {
  /** Reads a whole file as text; throws with a sentence if it cannot. */
  readonly readFile: (path: string) => Promise<string>;
  /** Throws `NotWritten` if it cannot. */
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

/** A file cannot be written; its message is a sentence for whoever named the file. */
export class NotWritten extends Error {
  constructor(path: string, cause: unknown) {
    const code = typeof cause === 'object' && cause !== null && 'code' in cause ? String(cause.code) : '';
    super(`${path} cannot be written${reasons[code] ?? ''}.`, { cause });
  }
}
const reasons: Readonly<Record<string, string>> = {
  ENOENT: ': there is no such folder',
  ENOTDIR: ': there is no such folder',
  EISDIR: ': it is a folder',
  EACCES: ': it is not allowed',
  EPERM: ': it is not allowed',
  EROFS: ': it is not allowed',
  ENOSPC: ': the disk is full',
};

/** 0 done, 1 a refusal or problems, 2 not understood. */
export type ExitCode = 0 | 1 | 2;
