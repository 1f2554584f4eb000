import { hashKey } from '@tanstack/react-query';
import type { Book, Business } from '@twistwright/books';
import type { api, ProblemDetails, RouteInput, RouteOutput } from '@twistwright/contract';
import type { Problem } from '@twistwright/units';
import { type Change, touched } from './change.ts';

/** The server understood the request and did not accept it; every reason is a sentence. */
export class NotAccepted extends Error {
  readonly problems: readonly Problem[];
  constructor(sentence: string, problems: readonly Problem[]) {
    super(sentence);
    this.name = 'NotAccepted';
    this.problems = problems;
  }
}

/** Somebody else has changed the same thing meanwhile. */
export class Overtaken extends NotAccepted {
  constructor() {
    super(
      'Somebody else has changed this since you opened it; nothing was stored. Load the page again to see theirs, or save once more to put yours in its place.',
      [],
    );
    this.name = 'Overtaken';
  }
}

/** The state of the book that this page has seen last, as the server names it, and how many own changes the server has answered. */
const seen: { tag?: string; changes: number } = { changes: 0 };
function note(answer: Response): Response {
  const tag = answer.headers.get('etag');
  if (tag !== null) seen.tag = tag;
  return answer;
}

/** The book, or undefined if there is none yet. */
export async function readBook(): Promise<Book | undefined> {
  const { changes } = seen;
  const answer = await ask('GET', '/api/book');
  // What was asked before an own change and comes after it tells of a state that is gone.
  if (changes === seen.changes) note(answer);
  if (answer.status === 404) return undefined;
  return (await accepted(answer)).json() as Promise<RouteOutput<typeof api.book.get>>;
}

/** A book file that somebody chose, or kept from before. */
export interface BookText {
  readonly name: string;
  readonly text: string;
}
/** Puts the book of a file in the place of the one there is; what it said in passing comes back. */
export async function replaceBook({ name, text }: BookText): Promise<readonly Problem[]> {
  const answer = await accepted(await ask('PUT', `/api/book?name=${encodeURIComponent(name)}`, text));
  return ((await answer.json()) as RouteOutput<typeof api.book.put>).problems;
}

export const bookFilePath = (form: 'yaml' | 'json'): string => `/api/book/file?form=${form}`;
/** The book as it is now, to be put back if need be. */
export async function keptBook(): Promise<BookText> {
  return { name: 'before.json', text: await (await accepted(await ask('GET', bookFilePath('json')))).text() };
}

/** Which column of a price list holds what, by its heading. */
export type PriceColumns = NonNullable<RouteInput<typeof api.prices>['body']['mapping']>;
export type PricesRead = RouteOutput<typeof api.prices>;
/** Reads a supplier's price list; with `apply` its prices are put into the book. */
export async function readPriceList(supplier: string, list: RouteInput<typeof api.prices>['body']): Promise<PricesRead> {
  return (await accepted(await ask('POST', `/api/suppliers/${encodeURIComponent(supplier)}/prices`, list))).json() as Promise<PricesRead>;
}

/** The invented business, its dates laid out from today. */
export const openDemo = async (): Promise<void> => void (await accepted(await ask('POST', '/api/start', { from: 'demo' })));
export const openEmpty = async (business: Business): Promise<void> =>
  void (await accepted(await ask('POST', '/api/start', { from: 'empty', business })));

/**
 * Sends one change of a book that stands as `before` on the page. Where the book has moved on since it was read here, what the change touches is looked at
 * again: if that is as it was, the change is made all the same; if somebody else has changed it, nothing is stored and a sentence says so.
 */
export async function sendChange(change: Change, before?: Book): Promise<void> {
  const thing = thingOf(change);
  const earlier = onTheWay.get(thing)?.catch(() => undefined) ?? Promise.resolve();
  const sent = earlier.then(() => sendUntilSure(change, before));
  onTheWay.set(thing, sent);
  try {
    await sent;
  } finally {
    if (onTheWay.get(thing) === sent) onTheWay.delete(thing);
  }
}
/** Own changes that the server has not answered yet, the last one of each thing: the later change of one thing is to be the later on the server too. */
const onTheWay = new Map<string, Promise<void>>();
const thingOf = (change: Change): string =>
  'list' in change
    ? `${change.list} ${'remove' in change ? change.remove : change.put.id}`
    : 'business' in change
      ? 'business'
      : 'settings';

async function sendUntilSure(change: Change, before: Book | undefined): Promise<void> {
  for (;;) {
    const answer = await askChange(change);
    if (answer.status !== 412 || before === undefined) {
      note(await accepted(answer));
      seen.changes++;
      return;
    }
    const now = await readBook();
    if (now === undefined || hashKey([touched(now, change)]) !== hashKey([touched(before, change)])) throw new Overtaken();
  }
}

/** Own changes of other things move the book on too, and are not to stand in one another's way. */
function askChange(change: Change): Promise<Response> {
  const headers = seen.tag === undefined || onTheWay.size > 1 ? {} : { 'if-match': seen.tag };
  if ('business' in change) return ask('PUT', '/api/business', change.business, headers);
  if ('settings' in change) return ask('PUT', '/api/settings', change.settings, headers);
  const id = 'remove' in change ? change.remove : change.put.id;
  const path = `/api/${change.list}/${encodeURIComponent(id)}`;
  return 'remove' in change ? ask('DELETE', path, undefined, headers) : ask('PUT', path, change.put, headers);
}

/**
 * Letters of a change that the browser still sends when its page is closed or left at once, so that nothing saved is lost. Browsers allow 64 kB for all
 * such requests on the way together and refuse what is beyond.
 */
const mostKeptAlive = 4000;

async function ask(method: string, path: string, body?: unknown, more: Readonly<Record<string, string>> = {}): Promise<Response> {
  const isText = typeof body === 'string';
  const text = body === undefined || isText ? body : JSON.stringify(body);
  try {
    return await fetch(path, {
      method,
      credentials: 'same-origin',
      keepalive: method !== 'GET' && (text ?? '').length <= mostKeptAlive,
      headers: { ...(body === undefined ? {} : { 'content-type': isText ? 'text/plain;charset=utf-8' : 'application/json' }), ...more },
      ...(text === undefined ? {} : { body: text }),
    });
  } catch (cause) {
    throw new Error('The book cannot be reached. Is Twistwright still running on this machine?', { cause });
  }
}

async function accepted(answer: Response): Promise<Response> {
  if (answer.ok) return answer;
  const isTold = answer.headers.get('content-type')?.includes('json') === true;
  const told = isTold ? ((await answer.json()) as Partial<ProblemDetails>) : {};
  throw new NotAccepted(told.detail ?? told.title ?? `The answer was ${answer.status}.`, told.problems ?? []);
}
