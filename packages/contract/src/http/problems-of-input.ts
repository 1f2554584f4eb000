import { fail, ok, type Problem, type Result } from '@twistwright/units';
import type { z } from 'zod';
import { problemsOfIssues } from '../book/problems-of-issues.ts';

/** A value as a schema reads it, or what the schema has against it, as sentences. For the server's answer to a body, a path or a query. */
export function readInput<S extends z.ZodType>(schema: S, value: unknown): Result<z.output<S>> {
  const read = schema.safeParse(value);
  return read.success ? ok(read.data) : fail(problemsOfIssues(schema, value, read.error.issues));
}

/** What a schema has against a value, as sentences; empty if nothing. */
export function problemsOfInput(schema: z.ZodType, value: unknown): readonly Problem[] {
  const read = readInput(schema, value);
  return read.ok ? [] : read.error;
}
