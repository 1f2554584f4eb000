import { emptyBook, type Place } from '@twistwright/books';
import { afterEach, expect, test, vi } from 'vitest';
import { readBook, sendChange } from './book-door.ts';
import type { Change } from './change.ts';

interface Asked {
  readonly request: string;
  readonly ifMatch: string | undefined;
  readonly answer: (tag: string) => void;
}
/** A server that answers when the test says so. */
function slowServer(): readonly Asked[] {
  const asked: Asked[] = [];
  vi.stubGlobal(
    'fetch',
    (path: string, { method, headers }: { readonly method: string; readonly headers: Readonly<Record<string, string>> }) => {
      const { promise, resolve } = Promise.withResolvers<Response>();
      const book = emptyBook({ name: 'Nine Knots', currency: 'GBP', zone: 'Europe/London' });
      asked.push({
        request: `${method} ${path}`,
        ifMatch: headers['if-match'],
        answer: (etag) => resolve(Response.json(book, { headers: { etag } })),
      });
      return promise;
    },
  );
  return asked;
}
afterEach(() => vi.unstubAllGlobals());

const named = (id: string, name: string): Change => ({ list: 'places', put: { id, name, kind: 'car' } satisfies Place });
/** Lets everything happen that waits for nothing but its turn. */
const settle = (): Promise<void> => new Promise((go) => setTimeout(go, 0));

test('changes of different things go out at once, a later change of one thing only after the earlier one', async () => {
  const asked = slowServer();
  const sent = [named('car', 'car'), named('van', 'van'), named('car', 'old car')].map((change) => sendChange(change));
  await settle();
  expect(asked.map(({ request }) => request)).toEqual(['PUT /api/places/car', 'PUT /api/places/van']);
  asked[0]?.answer('one');
  await settle();
  expect(asked.map(({ request }) => request)).toEqual(['PUT /api/places/car', 'PUT /api/places/van', 'PUT /api/places/car']);
  asked[1]?.answer('two');
  asked[2]?.answer('three');
  await Promise.all(sent);
});
test('a book that was asked for before a change and comes after it does not say how the book stands', async () => {
  const asked = slowServer();
  const reading = readBook();
  const sent = sendChange(named('car', 'car'));
  await settle();
  asked[1]?.answer('after');
  await sent;
  asked[0]?.answer('before');
  await reading;
  const next = sendChange(named('car', 'new car'));
  await settle();
  expect(asked[2]?.ifMatch).toBe('after');
  asked[2]?.answer('last');
  await next;
});
