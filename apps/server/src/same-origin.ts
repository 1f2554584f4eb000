import type { MiddlewareHandler } from 'hono';

const loopback = new Set(['localhost', '127.0.0.1', '[::1]']);

/** Host name of a `Host` header or an origin, without the port. */
export function hostNameOf(value: string): string | undefined {
  try {
    return new URL(value.includes('://') ? value : `http://${value}`).hostname;
  } catch {
    return undefined; // not an address, so not one of ours
  }
}

/**
 * Answers only calls to a name of ours, and changes only from pages of ours. A foreign name that resolves to this machine (DNS rebinding) and a foreign
 * page that posts here are both refused with 403.
 */
export function sameOrigin(allowed: readonly string[]): MiddlewareHandler {
  const ours = new Set([...loopback, ...allowed]);
  return async (c, next) => {
    const host = hostNameOf(c.req.header('host') ?? '');
    if (host === undefined || !ours.has(host))
      return refuse(c.req.path, `This server does not answer to the name ${c.req.header('host') ?? '(none)'}.`);
    const origin = c.req.header('origin');
    const changes = c.req.method !== 'GET' && c.req.method !== 'HEAD';
    const site = c.req.header('sec-fetch-site');
    if (changes && origin !== undefined && new URL(c.req.url).host !== hostWithPort(origin))
      return refuse(c.req.path, `A page of ${origin} may not change anything here.`);
    if (changes && (site === 'cross-site' || site === 'same-site'))
      return refuse(c.req.path, 'A page of another site may not change anything here.');
    return next();
  };
}

function hostWithPort(origin: string): string | undefined {
  try {
    return new URL(origin).host;
  } catch {
    return undefined; // "null" and the like: not a page of ours
  }
}

const refuse = (path: string, detail: string): Response =>
  new Response(JSON.stringify({ type: 'about:blank', title: 'Not from here', status: 403, detail, instance: path }), {
    status: 403,
    headers: { 'content-type': 'application/problem+json' },
  });
