import type { Problem } from '@twistwright/units';
import { z } from 'zod';

export const problemSchema = z
  .strictObject({
    code: z.string().meta({ description: 'Permanent code; docs/problems.md' }),
    path: z.array(z.union([z.string(), z.number()])),
    sentence: z.string(),
    todo: z.exactOptional(z.string()),
    weight: z.enum(['error', 'warning']),
    line: z.exactOptional(z.int()),
    column: z.exactOptional(z.int()),
  })
  .meta({ id: 'Problem', description: 'What is wrong, where, and what to do' }) satisfies z.ZodType<Problem>;

/** What the server answers when it says no: RFC 9457, with our problems. */
export interface ProblemDetails {
  /** The code of the first problem, as a reference relative to docs/problems.md: `problems#gig.past`. */
  readonly type: string;
  readonly title: string;
  readonly status: number;
  readonly detail?: string;
  readonly problems?: readonly Problem[];
}
export const problemDetailsSchema = z
  .strictObject({
    type: z.string(),
    title: z.string(),
    status: z.int(),
    detail: z.exactOptional(z.string()),
    problems: z.exactOptional(z.array(problemSchema)),
  })
  .meta({ id: 'ProblemDetails', description: 'RFC 9457 problem details' }) satisfies z.ZodType<ProblemDetails>;
