/** Words for sentences: numbers, lengths, labels. */
const numbers = ['no', 'one', 'two', 'three', 'four', 'five', 'six', 'seven', 'eight', 'nine', 'ten', 'eleven', 'twelve'] as const;

/** @example sayNumber(3) // -> 'three' */
export const sayNumber = (count: number): string => numbers[count] ?? String(count);

/** Inches to a tenth, which is as fine as a ruler in the hand. @example sayInches(2.54) // -> '2.5 in' */
export const sayInches = (inches: number): string => `${Number(inches.toFixed(1))} in`;

const irregular: Readonly<Record<string, string>> = { foot: 'feet', leaf: 'leaves', tooth: 'teeth', half: 'halves' };
/** What a figure has one of, though several bubbles make it. */
const single: ReadonlySet<string> = new Set(['head', 'body', 'mane', 'tail', 'nose', 'neck', 'face', 'belly', 'blade', 'guard', 'band']);

/**
 * An English label for several bubbles: its plural, but of what a figure has one of, the word itself. Labels in other alphabets stay as they
 * are.
 * @example plural('front foot') // -> 'front feet'
 */
export function plural(label: string): string {
  const word = /[a-z]+$/u.exec(label)?.[0];
  if (word === undefined || !/^[a-z ]+$/u.test(label)) return label;
  const stem = label.slice(0, label.length - word.length);
  if (single.has(word)) return label;
  const special = irregular[word];
  if (special !== undefined) return stem + special;
  if (/(?:s|x|ch|sh)$/u.test(word)) return `${stem}${word}es`;
  return /[^aeiou]y$/u.test(word) ? `${stem}${word.slice(0, -1)}ies` : `${stem}${word}s`;
}
