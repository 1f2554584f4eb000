import type { Problem } from '@twistwright/units';
import { isRecord } from './walk-schema.ts';

type Path = Problem['path'];

/** A value as it is quoted in a sentence. */
export function shown(value: unknown): string {
  if (Array.isArray(value)) return value.length === 0 ? 'an empty list' : 'a list';
  if (isRecord(value)) return 'a set of keys';
  if (typeof value === 'string') return value.length > 40 ? `the text "${value.slice(0, 37)}..."` : `"${value}"`;
  return value === null ? 'nothing' : String(value);
}

/** What one entry of a list of the book is called. */
const entryWords: Readonly<Record<string, string>> = {
  sizes: 'size',
  colours: 'colour',
  items: 'item',
  figures: 'figure',
  colourways: 'colourway',
  artists: 'artist',
  places: 'place',
  suppliers: 'supplier',
  offers: 'offer',
  clients: 'client',
  gigs: 'gig',
  needs: 'need',
  orders: 'order',
  moves: 'stock move',
  kits: 'kit',
  balloonTests: 'test',
};
/** Names the places of one value in words. */
export class PlaceNames {
  readonly #root: unknown;
  readonly #whole: string;
  /** `whole` is what the value itself is called: `the book`. */
  constructor(root: unknown, whole: string) {
    this.#root = root;
    this.#whole = whole;
  }

  /** The thing in which the last key of the path stands: `gig "harbour-day"`, `"where" of gig "harbour-day"`. */
  owner(path: Path): string {
    for (let length = path.length - 1; length > 0; length--) {
      const key = path[length - 1];
      if (typeof key !== 'number') continue;
      const inner = path.slice(length, -1).filter((part) => typeof part === 'string');
      return `${inner.length === 0 ? '' : `"${inner.join('.')}" of `}${this.#entry(path.slice(0, length), key)}`;
    }
    return path.length > 1 ? `"${path.slice(0, -1).join('.')}"` : this.#whole;
  }
  /** `"guests" of gig "harbour-day"`. */
  subject(path: Path): string {
    const key = path.at(-1);
    if (key === undefined) return this.#whole;
    if (typeof key === 'number') return this.#entry(path, key);
    return `"${key}"${path.length === 1 ? '' : ` of ${this.owner(path)}`}`;
  }
  #entry(path: Path, index: number): string {
    const list = String(path.at(-2));
    const word = entryWords[list];
    const entry = this.#valueAt(path);
    const id = isRecord(entry) ? (entry.id ?? entry.code) : undefined;
    if (word !== undefined) return `${word} ${id === undefined ? `number ${index + 1}` : shown(id)}`;
    return `entry ${index + 1} of "${list}"${path.length > 2 ? ` of ${this.owner(path.slice(0, -1))}` : ''}`;
  }
  #valueAt(path: Path): unknown {
    return path.reduce<unknown>(
      (here, key) => (typeof here === 'object' && here !== null ? (here as Record<PropertyKey, unknown>)[key] : undefined),
      this.#root,
    );
  }
}
