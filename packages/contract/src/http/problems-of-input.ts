import type { Problem } from '@twistwright/units';
import type { z } from 'zod';
import { problemsOfIssues } from '../book/problems-of-issues.ts';

/** What a schema has against a value, as sentences; empty if nothing. For the server's answer to a body, a path or a query. */
export function problemsOfInput(schema: z.ZodType, value: unknown): readonly Problem[] {
  const read = schema.safeParse(value);
  return read.success ? [] : problemsOfIssues(schema, value, read.error.issues);
}
