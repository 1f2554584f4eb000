import type { z } from 'zod';

export type Method = 'get' | 'post' | 'put' | 'delete';
/**
 * What travels: JSON by schema; the text of a book file or price list, which the server reads itself to say line and column; a picture as SVG
 * text; a paper as a PDF file (its schema is `z.file()`); a page as HTML; a list as CSV.
 */
export type Media = 'json' | 'text' | 'svg' | 'pdf' | 'html' | 'csv';
/** What each is called on the wire. */
export const mediaTypes: Readonly<Record<Media, string>> = {
  json: 'application/json',
  text: 'text/plain;charset=utf-8',
  svg: 'image/svg+xml',
  pdf: 'application/pdf',
  html: 'text/html;charset=utf-8',
  csv: 'text/csv;charset=utf-8',
};
type None = z.ZodUndefined;
/** Most bytes of a body where a route says nothing else. */
export const usualMostBytes = 1_000_000;
/** Why a request that is understood may still be answered with no. */
export type Refusing = 404 | 409;

/** One thing that can be asked of the server: what goes in, what comes out. Server, typed client and OpenAPI are all made from it. */
export interface Route<
  P extends z.ZodType = z.ZodType,
  Q extends z.ZodType = z.ZodType,
  B extends z.ZodType = z.ZodType,
  R extends z.ZodType = z.ZodType,
> {
  readonly method: Method;
  /** Path with parameters as `:id`. */
  readonly path: string;
  /** One line. */
  readonly summary: string;
  /** What the summary has no room for: units, defaults, what happens at the edges. */
  readonly description?: string;
  readonly params?: P;
  readonly query?: Q;
  readonly body?: B;
  /** Default `json`. With `text` the body is text and `body` its schema is a string's. */
  readonly takes?: Media;
  readonly response: R;
  /** Default `json`. */
  readonly gives?: Media;
  readonly status?: 200 | 201;
  /** Most bytes of the body; {@link usualMostBytes} if missing. */
  readonly mostBytes?: number;
  readonly refuses?: readonly Refusing[];
  /** Worked out in a thread of its own: may be answered with 503 (all are busy) or 504 (takes too long). */
  readonly heavy?: true;
  /** How it stands to the revision of the book: `reads` gives its ETag, `writes` moves it on and heeds If-Match. */
  readonly book?: 'reads' | 'writes';
  /** A request that works on the demo. */
  readonly example?: Example<P, Q, B>;
}
/** What is handed in, part by part. */
interface Example<P extends z.ZodType, Q extends z.ZodType, B extends z.ZodType> {
  readonly params?: NoInfer<z.input<P>>;
  readonly query?: NoInfer<z.input<Q>>;
  readonly body?: NoInfer<z.input<B>>;
}
/** Names a route; gives its types to everything that is made from it. */
export const route = <P extends z.ZodType = None, Q extends z.ZodType = None, B extends z.ZodType = None, R extends z.ZodType = None>(
  definition: Route<P, Q, B, R>,
): Route<P, Q, B, R> => definition;

/** The same value, only to be read: what the domain's types are. */
type Readable<T> = T extends string | number | boolean | null | undefined
  ? T
  : T extends readonly (infer E)[]
    ? readonly Readable<E>[]
    : { readonly [K in keyof T]: Readable<T[K]> };
type Part<K extends string, S extends z.ZodType> = S extends None ? unknown : { readonly [k in K]: Readable<z.input<S>> };
/** What the client hands in. */
export type RouteInput<D> =
  D extends Route<infer P, infer Q, infer B, z.ZodType> ? Part<'params', P> & Part<'query', Q> & Part<'body', B> : never;
/** What the handler gets. */
export type RouteRequest<D> =
  D extends Route<infer P, infer Q, infer B, z.ZodType>
    ? { readonly params: z.output<P>; readonly query: z.output<Q>; readonly body: z.output<B> }
    : never;
/** What comes back. */
export type RouteOutput<D> = D extends Route<z.ZodType, z.ZodType, z.ZodType, infer R> ? z.output<R> : never;

/** Routes, or groups of routes, by name. */
export interface Routes {
  readonly [name: string]: Route | Routes;
}
const isRoute = (entry: Route | Routes): entry is Route => typeof entry.method === 'string';
/** All routes with their operation ids: `gigs.put`. */
export function routesOf(routes: Routes, before = ''): readonly (readonly [operation: string, route: Route])[] {
  return Object.entries(routes).flatMap(([name, entry]) =>
    isRoute(entry) ? [[before + name, entry] as const] : routesOf(entry, `${before}${name}.`),
  );
}
