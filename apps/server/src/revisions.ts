import type { Context } from 'hono';
import { NotModified, Refusal } from './answers.ts';

/**
 * The revision that a writer has seen, from `If-Match`. Undefined where there is no such header, or it is `*`. The mark of a packed answer
 * (`W/"12"`) counts like the plain one: it names the same state of the book. Refuses what is no revision, since it can match none.
 */
export function seenRevision(context: Context): number | undefined {
  const header = context.req.header('if-match')?.trim();
  if (header === undefined || header === '*') return undefined;
  const match = /^(?:W\/)?"?(\d{1,15})"?$/.exec(header);
  if (match === null)
    throw new Refusal(412, `If-Match says ${header}, which is no revision of the book: send the ETag of an answer, such as "12".`);
  return Number(match[1]);
}

/** Says which revision of the book an answer is of. */
export const tellRevision = (context: Context, revision: number): void => context.header('etag', `"${revision}"`);

/** Says which state an answer is of; ends the request with 304 where the caller has that answer already. */
export function tellState(context: Context, ...state: readonly (string | number)[]): void {
  const tag = state.map((part) => String(part).replace(/[^\w.:-]/g, '_')).join('-');
  const held = (context.req.header('if-none-match') ?? '').split(',').map((one) => one.trim().replace(/^W\//, ''));
  context.header('etag', `"${tag}"`);
  context.header('cache-control', 'no-cache');
  if (held.includes(`"${tag}"`) || held.includes('*')) throw new NotModified();
}
