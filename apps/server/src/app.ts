import { serveStatic } from '@hono/node-server/serve-static';
import { api, openApi, routesOf } from '@twistwright/contract';
import type { Store } from '@twistwright/store';
import type { LocalDate } from '@twistwright/units';
import { Hono } from 'hono';
import { compress } from 'hono/compress';
import { secureHeaders } from 'hono/secure-headers';
import { answer, JsonText, NotModified, problemAnswer, Refusal, refusalAnswer } from './answers.ts';
import { bookRoutes } from './book-routes.ts';
import { calibrationRoutes } from './calibration-routes.ts';
import { collectionRoutes } from './collection-routes.ts';
import type { Jobs } from './jobs/open-jobs.ts';
import { NotDone } from './jobs/thread-pool.ts';
import type { BookShelf } from './keep-book.ts';
import { kitRoutes } from './kit-routes.ts';
import { planRoutes } from './plan-routes.ts';
import { repertoireRoutes } from './repertoire-routes.ts';
import { sameOrigin } from './same-origin.ts';

/** What the app asks of the outside. */
export interface Ports {
  readonly store: Store;
  readonly shelf: BookShelf;
  readonly storeKind: 'sqlite' | 'postgresql';
  /** Everything that takes longer than a moment. */
  readonly jobs: Jobs;
  /** Today on the wall calendar of a zone. */
  readonly today: (zone: string) => LocalDate;
  /** A line for the log; called with bugs only. */
  readonly log: (message: string) => void;
  readonly allowedHosts: readonly string[];
  readonly webFolder: string;
  readonly demoFolder: string;
  readonly version: string;
}

export function makeApp(ports: Ports): Hono {
  const app = new Hono();
  app.onError((error, context) => {
    if (error instanceof Refusal) return refusalAnswer(error);
    if (error instanceof NotModified) return context.body(null, 304);
    if (error instanceof NotDone) return new Response(null, { status: clientGone });
    ports.log(error.stack ?? error.message);
    return problemAnswer(500, 'This is a mistake of ours; nothing was stored.');
  });
  app.use(compress());
  app.use(
    secureHeaders({
      contentSecurityPolicy: {
        defaultSrc: ["'self'"],
        scriptSrc: ["'self'", "'wasm-unsafe-eval'"],
        styleSrc: ["'self'", "'unsafe-inline'"],
        imgSrc: ["'self'", 'data:', 'blob:'],
        workerSrc: ["'self'", 'blob:'],
        connectSrc: ["'self'"],
      },
    }),
  );
  app.use(sameOrigin(ports.allowedHosts));
  bookRoutes(app, ports);
  collectionRoutes(app, ports);
  planRoutes(app, ports);
  kitRoutes(app, ports);
  repertoireRoutes(app, ports);
  calibrationRoutes(app, ports);
  descriptionRoute(app, ports);
  otherMethods(app);
  app.all('/api/*', (context) => problemAnswer(404, `There is nothing at ${context.req.path}.`));
  app.use('*', async (context, next) => {
    await next();
    context.header('cache-control', context.req.path.startsWith('/assets/') ? 'public, max-age=31536000, immutable' : 'no-cache');
  });
  app.use('*', serveStatic({ root: ports.webFolder }));
  app.get('*', serveStatic({ root: ports.webFolder, path: 'index.html' }));
  return app;
}

/** Nobody reads an answer to a caller who has hung up; the number is the one that servers write into their logs for it. */
const clientGone = 499;

/** Written once: it takes a tenth of a second, and never changes while the server runs. */
function descriptionRoute(app: Hono, { version }: Pick<Ports, 'version'>): void {
  const kept: { text?: string } = {};
  answer(app, api.openapi, () => {
    kept.text ??= JSON.stringify(openApi(api, { title: 'Twistwright', version, description }));
    return new JsonText(kept.text);
  });
}
const description =
  'Plans for a balloon entertainer. Money is whole minor units of the currency of the business; days are YYYY-MM-DD and times HH:MM on the wall clock of its zone; lengths are inches, flat and inflated on two rulers. Whatever is refused is a problem document (RFC 9457) whose `problems` say where, what and what to do.';

/** A path that is there, asked in a way that is not: 405, with the ways that are. */
function otherMethods(app: Hono): void {
  const methods = new Map<string, string[]>();
  for (const [, { path, method }] of routesOf(api)) methods.set(path, [...(methods.get(path) ?? []), method.toUpperCase()]);
  for (const [path, known] of methods) {
    const allow = [...known, ...(known.includes('GET') ? ['HEAD'] : []), 'OPTIONS'].join(', ');
    app.options(path, (context) => context.body(null, 204, { allow }));
    app.all(path, (context) => {
      const refused = problemAnswer(405, `${context.req.method} is not understood at ${context.req.path}; it takes ${allow}.`);
      refused.headers.set('allow', allow);
      return refused;
    });
  }
}
