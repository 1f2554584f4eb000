import { clockOf, type LocalTime, minuteOf, type Spread } from '@twistwright/units';

/** "62" for counts, "1.4" below ten where a fraction says something. */
export const count = (value: number): string => String(Math.round(value));
export const oneDecimal = (value: number): string => String(Number(value.toFixed(1)));
/** "56 to 68", in whole numbers; "62" where both ends are the same. */
export function range(spread: Pick<Spread, 'p10' | 'p90'>, show: (value: number) => string = count): string {
  const [low, high] = [show(spread.p10), show(spread.p90)];
  return low === high ? low : `${low} to ${high}`;
}
/** "1 guest", "2 guests", "no guest". */
export function counted(value: number, one: string, many = `${one}s`): string {
  const whole = Math.round(value);
  return whole === 0 ? `no ${one}` : whole === 1 ? `1 ${one}` : `${whole} ${many}`;
}
/** "less than a minute", "25 minutes". */
export const minutes = (value: number): string => (Math.round(value) === 0 ? 'less than a minute' : counted(value, 'minute'));
/** Clock of a minute from the start of a gig. */
export const clockAt = (starts: LocalTime, minute: number): LocalTime => clockOf(minuteOf(starts) + minute);
/** A chance in words that people count in: "1 in 10", "9 in 10", "1 in 33", "never", "always". */
export function chanceInWords(chance: number): string {
  if (chance <= 0) return 'never';
  if (chance >= 1) return 'always';
  if (chance < 0.001) return 'less than 1 in 1000';
  if (chance < 0.095) return `1 in ${Math.round(1 / chance)}`;
  if (chance > 0.905) return `${Math.round(100 * chance)} in 100`;
  return `${Math.round(10 * chance)} in 10`;
}
/** A share of things that are counted, for "in … tries": "9 of 10", "97 of 100", "1 of 33", "no", "all". */
export function partInWords(share: number): string {
  if (share <= 0) return 'no';
  if (share >= 1) return 'all';
  if (share < 0.001) return 'fewer than 1 of 1000';
  if (share > 0.999) return 'more than 999 of 1000';
  if (share > 0.995) return `${Number((1000 * share).toFixed(0))} of 1000`;
  return chanceInWords(share).replace(' in ', ' of ');
}
/** "green", "green and white", "green, white and black". */
export function listed(words: readonly string[]): string {
  if (words.length < 2) return words[0] ?? '';
  return `${words.slice(0, -1).join(', ')} and ${words[words.length - 1]}`;
}
const numberWords = ['No', 'One', 'Two', 'Three', 'Four', 'Five', 'Six', 'Seven', 'Eight', 'Nine', 'Ten', 'Eleven', 'Twelve'] as const;
/** Number at the head of a sentence, in letters up to twelve. */
export const headNumber = (value: number): string => numberWords[value] ?? String(value);
