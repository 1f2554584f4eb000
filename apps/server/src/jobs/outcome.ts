import type { Problem } from '@twistwright/units';

declare const written: unique symbol;

/** A value that is copied from thread to thread. */
export interface Done<T> {
  readonly kind: 'value';
  readonly value: T;
}
/** JSON text of a T, written in the thread that made it, so that the thread of the requests need not. */
export interface DoneAsJson<T> {
  readonly kind: 'json';
  readonly json: string;
  readonly [written]?: T;
}
/** An answer that is no. */
export interface Refused {
  readonly kind: 'refused';
  readonly status: 404 | 409 | 422;
  readonly sentence: string;
  readonly problems: readonly Problem[];
}

export const done = <T>(value: T): Done<T> => ({ kind: 'value', value });
export const doneAsJson = <T>(value: T): DoneAsJson<T> => ({ kind: 'json', json: JSON.stringify(value) });
export const refused = (status: Refused['status'], sentence: string, problems: readonly Problem[] = []): Refused => ({
  kind: 'refused',
  status,
  sentence,
  problems,
});
