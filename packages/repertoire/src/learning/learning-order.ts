import type { Recipe } from '../recipe.ts';
import { shippedSizes } from '../sizes/shipped-sizes.ts';
import type { Size } from '../sizes/size.ts';
import { type Technique, techniquesOf } from './techniques.ts';

export interface Lesson {
  readonly id: string;
  /** Techniques that no figure before it needed. */
  readonly adds: readonly Technique[];
  /** All its techniques. */
  readonly uses: readonly Technique[];
}

interface Learnable {
  readonly id: string;
  readonly recipe: Recipe;
  /** 1 easy to 5 hard; 3 if it is not known. */
  readonly difficulty?: number;
  /** Breaks ties after difficulty. */
  readonly minutes?: number;
}

/**
 * An order in which each figure adds as little new as possible (greedy): a technique that hands do not know yet counts one, and so does each
 * step by which it is harder than the hardest figure before it. Ties go to the easier, the quicker, and then the first in the alphabet of ids.
 * `known` are techniques that hands have already.
 * @example learningOrder([{ id: 'a', recipe: { pieces: [], finishing: [] } }]) // -> [{ id: 'a', adds: [], uses: [] }]
 */
export function learningOrder(
  figures: readonly Learnable[],
  known: readonly Technique[] = [],
  sizes: readonly Size[] = shippedSizes,
): readonly Lesson[] {
  const left = new Set(figures.map((figure) => ({ figure, uses: techniquesOf(figure.recipe, sizes) })));
  const hands = new Set(known);
  const lessons: Lesson[] = [];
  let hardest = easiest;
  while (left.size > 0) {
    const ranked = [...left].map((item) => {
      const adds = item.uses.filter((technique) => !hands.has(technique));
      return { item, adds, news: adds.length + Math.max(0, difficultyOf(item.figure) - hardest) };
    });
    const next = ranked.reduce((best, other) => (isBefore(other, best) ? other : best));
    left.delete(next.item);
    hardest = Math.max(hardest, difficultyOf(next.item.figure));
    for (const technique of next.adds) hands.add(technique);
    lessons.push({ id: next.item.figure.id, adds: next.adds, uses: next.item.uses });
  }
  return lessons;
}

const easiest = 1;
const difficultyOf = (figure: Learnable): number => figure.difficulty ?? 3;

interface Ranked {
  readonly item: { readonly figure: Learnable };
  readonly news: number;
}

function isBefore(a: Ranked, b: Ranked): boolean {
  const [one, other] = [a.item.figure, b.item.figure];
  const by =
    a.news - b.news || difficultyOf(one) - difficultyOf(other) || (one.minutes ?? 0) - (other.minutes ?? 0) || (one.id < other.id ? -1 : 1);
  return by < 0;
}
