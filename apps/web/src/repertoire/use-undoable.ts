import { useState } from 'react';

/** A value with its past and its undone future. */
export interface Undoable<T> {
  readonly value: T;
  /** With the same `kind` as the change before, both are undone together: letters of one word. */
  readonly set: (value: T, kind?: string) => void;
  readonly undo: (() => void) | undefined;
  readonly redo: (() => void) | undefined;
}
interface History<T> {
  readonly past: readonly T[];
  readonly value: T;
  readonly future: readonly T[];
  readonly kind: string | undefined;
}
const mostKept = 200;

export const begun = <T>(value: T): History<T> => ({ past: [], value, future: [], kind: undefined });
export function changed<T>(history: History<T>, value: T, kind: string | undefined): History<T> {
  const isSame = kind !== undefined && kind === history.kind;
  return { past: isSame ? history.past : [...history.past, history.value].slice(-mostKept), value, future: [], kind };
}
export function undone<T>({ past, value, future }: History<T>): History<T> {
  const before = past.at(-1);
  if (before === undefined) return { past, value, future, kind: undefined };
  return { past: past.slice(0, -1), value: before, future: [value, ...future], kind: undefined };
}
export function redone<T>({ past, value, future }: History<T>): History<T> {
  const [next] = future;
  if (next === undefined) return { past, value, future, kind: undefined };
  return { past: [...past, value], value: next, future: future.slice(1), kind: undefined };
}

export function useUndoable<T>(first: () => T): Undoable<T> {
  const [history, setHistory] = useState(() => begun(first()));
  return {
    value: history.value,
    set: (value, kind) => setHistory((now) => changed(now, value, kind)),
    undo: history.past.length === 0 ? undefined : () => setHistory(undone),
    redo: history.future.length === 0 ? undefined : () => setHistory(redone),
  };
}
