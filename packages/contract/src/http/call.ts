import type { z } from 'zod';
import { mediaTypes, type Route, type RouteInput, type RouteOutput } from './route.ts';

/** The server said no. `detail` is what it said, a {@link ProblemDetails} if it was the server itself. */
export class ApiError extends Error {
  readonly status: number;
  readonly detail: unknown;
  constructor(status: number, detail: unknown) {
    super(`the server answered ${status}: ${JSON.stringify(detail)?.slice(0, 400)}`);
    this.name = 'ApiError';
    this.status = status;
    this.detail = detail;
  }
}
export interface CallOptions {
  /** Such as `http://127.0.0.1:4100`; default the page's own server. */
  readonly base?: string;
  readonly headers?: Readonly<Record<string, string>>;
  readonly fetch?: (url: string, init: RequestInit) => Promise<Response>;
  readonly signal?: AbortSignal;
}

/**
 * Asks the server. Throws {@link ApiError} when it says no.
 * @example await call(api.gigs.get, { params: { id: 'harbour-day' } }) // a Gig
 */
export async function call<P extends z.ZodType, Q extends z.ZodType, B extends z.ZodType, R extends z.ZodType>(
  route: Route<P, Q, B, R>,
  input: RouteInput<Route<P, Q, B, R>>,
  options: CallOptions = {},
): Promise<RouteOutput<Route<P, Q, B, R>>> {
  const { params, query, body } = input as {
    params?: Readonly<Record<string, string>>;
    query?: Readonly<Record<string, unknown>>;
    body?: unknown;
  };
  const answer = await (options.fetch ?? fetch)((options.base ?? '') + pathOf(route.path, params) + queryOf(query), {
    method: route.method.toUpperCase(),
    credentials: 'same-origin',
    headers: { ...(body === undefined ? {} : { 'content-type': contentType(route) }), ...options.headers },
    ...(body === undefined ? {} : { body: route.takes === 'text' ? String(body) : JSON.stringify(body) }),
    ...(options.signal === undefined ? {} : { signal: options.signal }),
  });
  if (!answer.ok) throw new ApiError(answer.status, await detailOf(answer));
  return (await readAnswer(route, answer)) as RouteOutput<Route<P, Q, B, R>>;
}

async function readAnswer({ gives = 'json' }: Route, answer: Response): Promise<unknown> {
  if (gives === 'json') return answer.json();
  return gives === 'pdf' ? new File([await answer.blob()], 'paper.pdf', { type: mediaTypes.pdf }) : answer.text();
}
const contentType = (route: Route): string => mediaTypes[route.takes ?? 'json'];
const pathOf = (path: string, params: Readonly<Record<string, string>> = {}): string =>
  path.replace(/:(\w+)/g, (_, key: string) => encodeURIComponent(params[key] ?? ''));
function queryOf(query: Readonly<Record<string, unknown>> = {}): string {
  const given = Object.entries(query).filter(([, value]) => value !== undefined);
  return given.length === 0 ? '' : `?${new URLSearchParams(given.map(([key, value]) => [key, String(value)]))}`;
}
async function detailOf(answer: Response): Promise<unknown> {
  const text = await answer.text();
  try {
    return JSON.parse(text);
  } catch {
    return text; // whatever stands between us and the server answers in its own form
  }
}
