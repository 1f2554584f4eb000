import {
  mediaTypes,
  type ProblemDetails,
  type Route,
  type RouteOutput,
  type RouteRequest,
  readInput,
  usualMostBytes,
} from '@twistwright/contract';
import type { Problem } from '@twistwright/units';
import type { Context, Hono } from 'hono';
import { bodyLimit } from 'hono/body-limit';

/** The server says no: status, a sentence, the problems. Thrown by handlers, turned into an answer in one place. */
export class Refusal extends Error {
  readonly status: 404 | 409 | 412 | 413 | 415 | 422 | 503 | 504;
  readonly problems: readonly Problem[];
  /** Seconds after which it may go better. */
  readonly retryAfter: number | undefined;
  constructor(status: Refusal['status'], sentence: string, problems: readonly Problem[] = [], retryAfter?: number) {
    super(sentence);
    this.name = 'Refusal';
    this.status = status;
    this.problems = problems;
    this.retryAfter = retryAfter;
  }
}

/** JSON that was written elsewhere, of what a route gives. */
export class JsonText<T> {
  readonly text: string;
  /** Names T; never there. */
  declare readonly of?: T;
  constructor(text: string) {
    this.text = text;
  }
}

/** Nothing to send: what the caller has still holds. */
export class NotModified extends Error {}

export function refusalAnswer({ status, message, problems, retryAfter }: Refusal): Response {
  const answer = problemAnswer(status, message, problems);
  if (retryAfter !== undefined) answer.headers.set('retry-after', String(retryAfter));
  return answer;
}

export function problemAnswer(status: number, title: string, problems: readonly Problem[] = [], detail?: string): Response {
  const first = problems.find(({ weight }) => weight === 'error') ?? problems[0];
  const body: ProblemDetails = {
    type: first === undefined ? 'about:blank' : `problems#${first.code}`,
    title,
    status,
    ...(detail === undefined && first === undefined ? {} : { detail: detail ?? first?.sentence ?? title }),
    ...(problems.length === 0 ? {} : { problems }),
  };
  return new Response(JSON.stringify(body), { status, headers: { 'content-type': 'application/problem+json' } });
}

/** What a handler gives back: nothing of it is changed any more. */
type Given<T> = T extends readonly (infer E)[] ? readonly Given<E>[] : T extends object ? { readonly [K in keyof T]: Given<T[K]> } : T;
type Handled<D extends Route> = Given<RouteOutput<D>> | JsonText<Given<RouteOutput<D>>>;

/** Puts a route of the contract on the app: what comes in is held against its schemas, what goes out is written in its form. */
export function answer<D extends Route>(
  app: Hono,
  route: D,
  handler: (request: RouteRequest<D>, context: Context) => Promise<Handled<D>> | Handled<D>,
): void {
  const mostBytes = route.mostBytes ?? usualMostBytes;
  const limit = bodyLimit({
    maxSize: mostBytes,
    onError: () => problemAnswer(413, `The body is too large: ${mostBytes / 1e6} MB is the most that is read here. Nothing is stored.`),
  });
  app.on(route.method.toUpperCase(), route.path, limit, async (context) => {
    const given = {
      params: route.params === undefined ? undefined : context.req.param(),
      query: route.query === undefined ? undefined : context.req.query(),
      body: route.body === undefined ? undefined : await bodyOf(route, context),
    };
    const read: Record<string, unknown> = {};
    const problems: Problem[] = [];
    for (const part of ['params', 'query', 'body'] as const) {
      const schema = route[part];
      if (schema === undefined) continue;
      const parsed = readInput(schema, given[part]);
      if (parsed.ok) read[part] = parsed.value;
      else problems.push(...parsed.error.map((one) => ({ ...one, path: [part, ...one.path] })));
    }
    if (problems.length > 0) return problemAnswer(422, 'Not understood; nothing is stored', problems);
    return written(route, await handler(read as unknown as RouteRequest<D>, context), context);
  });
}

async function written(route: Route, out: unknown, context: Context): Promise<Response> {
  const { status = 200, gives = 'json' } = route;
  const typed = { 'content-type': mediaTypes[gives] };
  if (gives === 'pdf') return context.body(await (out as File).arrayBuffer(), status, typed);
  if (gives !== 'json') return context.body(String(out), status, typed);
  return context.body(out instanceof JsonText ? out.text : JSON.stringify(out), status, typed);
}

/** What a body may call itself: JSON, or the text of a file; a body that says nothing is taken for what is wanted. */
const understood = {
  json: /^application\/(?:[\w.+-]+\+)?json$/,
  text: /^(?:text\/[\w.+-]+|application\/(?:yaml|json|[\w.+-]+\+(?:json|yaml)))$/,
} as const;

async function bodyOf(route: Route, context: Context): Promise<unknown> {
  const takes = route.takes === 'text' ? 'text' : 'json';
  const type = context.req.header('content-type')?.split(';')[0]?.trim().toLowerCase();
  if (type !== undefined && type !== '' && !understood[takes].test(type))
    throw new Refusal(
      415,
      `The body is "${type}"; here it has to be ${takes === 'json' ? 'application/json' : 'text/plain, application/yaml or application/json'}.`,
    );
  const encoding = context.req.header('content-encoding') ?? 'identity';
  if (encoding.toLowerCase() !== 'identity')
    throw new Refusal(415, `The body is packed as "${encoding}"; send it as it is, without content-encoding.`);
  const text = textOf(await context.req.arrayBuffer());
  if (takes === 'text') return text;
  if (text.trim() === '') throw new Refusal(422, 'The body is empty; it has to be JSON.');
  try {
    return JSON.parse(text);
  } catch (error) {
    throw new Refusal(422, `The body is no JSON: ${error instanceof Error ? error.message : String(error)}.`);
  }
}

function textOf(bytes: ArrayBuffer): string {
  try {
    return new TextDecoder('utf-8', { fatal: true }).decode(bytes);
  } catch {
    throw new Refusal(422, 'The body is not written in UTF-8.');
  }
}

export const pdfFile = (bytes: Uint8Array, name: string): File =>
  new File([bytes as Uint8Array<ArrayBuffer>], name, { type: 'application/pdf' });
