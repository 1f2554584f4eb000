const words = ['no', 'one', 'two', 'three', 'four', 'five', 'six', 'seven', 'eight', 'nine', 'ten', 'eleven', 'twelve'];

/**
 * A count in words up to twelve, in digits above.
 * @example inWords(3) // -> 'three'
 */
export const inWords = (count: number): string => words[count] ?? String(count);

/**
 * A count with its noun.
 * @example counted(1, 'gig') // -> 'one gig'
 * @example counted(13, 'gig') // -> '13 gigs'
 */
export const counted = (count: number, noun: string, nouns = `${noun}s`): string => `${inWords(count)} ${count === 1 ? noun : nouns}`;

/** The first letter made a capital. */
export const sentence = (text: string): string => text.charAt(0).toUpperCase() + text.slice(1);

/**
 * Names in a row.
 * @example listed(['green', 'white', 'black']) // -> 'green, white and black'
 */
export const listed = (names: readonly string[]): string =>
  names.length < 2 ? names.join('') : `${names.slice(0, -1).join(', ')} and ${names.at(-1)}`;

/**
 * A chance as people say it.
 * @example chanceInWords(0.1) // -> '1 in 10'
 */
export function chanceInWords(chance: number): string {
  if (chance <= 0.0005) return 'less than 1 in 1,000';
  if (chance >= 0.9995) return 'certain';
  for (const whole of [2, 3, 4, 5, 6, 8, 10, 12, 15, 20, 25, 30, 40, 50, 75, 100]) {
    const part = chance * whole;
    if (Math.abs(part - Math.round(part)) < 0.03 * part && Math.round(part) >= 1 && (Math.round(part) === 1 || whole <= 10))
      return `${Math.round(part)} in ${whole}`;
  }
  return chance < 0.02 ? `1 in ${Math.round(1 / chance)}` : `${Math.round(chance * 100)} in 100`;
}

/** What one try of a gig is called. */
export function occasionOf(startMinute: number, endMinute: number): 'morning' | 'afternoon' | 'evening' {
  const middle = (startMinute + endMinute) / 2;
  return middle < 12 * 60 ? 'morning' : middle < 17.5 * 60 ? 'afternoon' : 'evening';
}

/**
 * A day of the month as it is said.
 * @example ordinal(13) // -> '13th'
 */
export function ordinal(day: number): string {
  const teen = day % 100 >= 11 && day % 100 <= 13;
  const ending = teen ? 'th' : (['th', 'st', 'nd', 'rd'][day % 10] ?? 'th');
  return `${day}${ending}`;
}
