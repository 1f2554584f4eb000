import type { Book, Business } from '@twistwright/books';
import type { api, ProblemDetails, RouteInput, RouteOutput } from '@twistwright/contract';
import type { Problem } from '@twistwright/units';
import type { Change } from './change.ts';

/** The server understood the request and did not accept it; every reason is a sentence. */
export class NotAccepted extends Error {
  readonly problems: readonly Problem[];
  constructor(sentence: string, problems: readonly Problem[]) {
    super(sentence);
    this.name = 'NotAccepted';
    this.problems = problems;
  }
}

/** The book, or undefined if there is none yet. */
export async function readBook(): Promise<Book | undefined> {
  const answer = await ask('GET', '/api/book');
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

export async function sendChange(change: Change): Promise<void> {
  if ('business' in change) return void (await accepted(await ask('PUT', '/api/business', change.business)));
  if ('settings' in change) return void (await accepted(await ask('PUT', '/api/settings', change.settings)));
  const id = 'remove' in change ? change.remove : change.put.id;
  const path = `/api/${change.list}/${encodeURIComponent(id)}`;
  await accepted('remove' in change ? await ask('DELETE', path) : await ask('PUT', path, change.put));
}

async function ask(method: string, path: string, body?: unknown): Promise<Response> {
  const isText = typeof body === 'string';
  try {
    return await fetch(path, {
      method,
      credentials: 'same-origin',
      ...(body === undefined
        ? {}
        : {
            headers: { 'content-type': isText ? 'text/plain;charset=utf-8' : 'application/json' },
            body: isText ? body : JSON.stringify(body),
          }),
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
