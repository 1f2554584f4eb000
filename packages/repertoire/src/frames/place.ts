/** A place or direction in space. */
export type Place = readonly [number, number, number];

export const plus = (a: Place, b: Place): Place => [a[0] + b[0], a[1] + b[1], a[2] + b[2]];
export const minus = (a: Place, b: Place): Place => [a[0] - b[0], a[1] - b[1], a[2] - b[2]];
export const times = (a: Place, factor: number): Place => [a[0] * factor, a[1] * factor, a[2] * factor];
export const dot = (a: Place, b: Place): number => a[0] * b[0] + a[1] * b[1] + a[2] * b[2];
export const cross = (a: Place, b: Place): Place => [a[1] * b[2] - a[2] * b[1], a[2] * b[0] - a[0] * b[2], a[0] * b[1] - a[1] * b[0]];
export const size = (a: Place): number => Math.sqrt(dot(a, a));
export const distance = (a: Place, b: Place): number => size(minus(a, b));
