import { type Book, nameOfItem } from '@twistwright/books';
import type { ItemNeed, Needs } from '../needs/index.ts';
import { headNumber, listed, partInWords } from './numbers.ts';
import type { Said } from './say-forecast.ts';

export const itemName = (book: Book, id: string): string => {
  const item = book.items.find((candidate) => candidate.id === id);
  return item === undefined ? id : nameOfItem(item, book.colours);
};

/** Items that are short of what is jointly enough, worst first by the share that is missing. */
export const shortItems = (needs: Needs): readonly ItemNeed[] =>
  needs.items.filter((item) => item.short > 0).sort((a, b) => b.short / b.wanted - a.short / a.wanted || (a.item < b.item ? -1 : 1));

const nowInWords = (chance: number): string =>
  chance <= 0 ? 'With what there is, something runs out in every one.' : `With what there is, that holds in ${partInWords(chance)}.`;

export function sayNeeds(book: Book, needs: Needs): Said {
  const short = shortItems(needs);
  if (short.length === 0)
    return {
      answer: 'Nothing is short.',
      more: [`With what is in store and on order nothing asked for runs out in ${partInWords(needs.chanceNow)} tries.`],
    };
  const names = short.map((item) => itemName(book, item.item));
  const shown = names.length <= 4 ? listed(names) : `${names.slice(0, 3).join(', ')} and ${names.length - 3} more`;
  const take = short.slice(0, 3).map((item, i) => `${item.short} × ${names[i]}`);
  const more = short.length - take.length;
  const missing = more === 0 ? listed(take) : `${take.join(', ')} and ${more} more`;
  return {
    answer: `${headNumber(short.length)} ${short.length === 1 ? 'item' : 'items'} would run short: ${shown}.`,
    more: [`Missing, so that nothing asked for runs out in ${partInWords(needs.chance)} tries: ${missing}. ${nowInWords(needs.chanceNow)}`],
  };
}
