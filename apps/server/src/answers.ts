import { mediaTypes, type ProblemDetails, problemsOfInput, type Route, type RouteOutput, type RouteRequest } from '@twistwright/contract';
import type { Problem } from '@twistwright/units';
import type { Context, Hono } from 'hono';

/** The server says no: status, a sentence, the problems. Thrown by handlers, turned into an answer in one place. */
export class Refusal extends Error {
  readonly status: 404 | 409 | 412 | 413 | 422;
  readonly problems: readonly Problem[];
  constructor(status: Refusal['status'], sentence: string, problems: readonly Problem[] = []) {
    super(sentence);
    this.name = 'Refusal';
    this.status = status;
    this.problems = problems;
  }
}

export function problemAnswer(status: number, title: string, problems: readonly Problem[] = [], detail?: string): Response {
  const first = problems[0];
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

/** Puts a route of the contract on the app: what comes in is held against its schemas, what goes out is written in its form. */
export function answer<D extends Route>(
  app: Hono,
  route: D,
  handler: (request: RouteRequest<D>, context: Context) => Promise<Given<RouteOutput<D>>> | Given<RouteOutput<D>>,
): void {
  app.on(route.method.toUpperCase(), route.path, async (context) => {
    const given = {
      params: route.params === undefined ? undefined : context.req.param(),
      query: route.query === undefined ? undefined : context.req.query(),
      body: route.body === undefined ? undefined : await bodyOf(route, context),
    };
    const schemas = { params: route.params, query: route.query, body: route.body };
    const problems = (['params', 'query', 'body'] as const).flatMap((part) => {
      const schema = schemas[part];
      return schema === undefined
        ? []
        : problemsOfInput(schema, given[part]).map((problem) => ({ ...problem, path: [part, ...problem.path] }));
    });
    if (problems.length > 0) return problemAnswer(422, 'Not understood; nothing is stored', problems);
    const read = Object.fromEntries((['params', 'query', 'body'] as const).map((part) => [part, schemas[part]?.parse(given[part])]));
    const out = await handler(read as unknown as RouteRequest<D>, context);
    if (route.gives === 'text') return context.text(String(out), route.status ?? 200);
    if (route.gives === 'svg' || route.gives === 'html' || route.gives === 'csv')
      return context.body(String(out), route.status ?? 200, { 'content-type': mediaTypes[route.gives] });
    if (route.gives === 'pdf')
      return context.body(await (out as File).arrayBuffer(), route.status ?? 200, { 'content-type': mediaTypes.pdf });
    return context.json(out as object, route.status ?? 200);
  });
}

async function bodyOf(route: Route, context: Context): Promise<unknown> {
  const text = await context.req.text();
  if (route.takes === 'text') return text;
  try {
    return JSON.parse(text);
  } catch {
    throw new Refusal(422, 'The body is no JSON.');
  }
}
