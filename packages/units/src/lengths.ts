/** Centimetres in an inch, exact since 1959. */
export const cmPerInch = 2.54;
/** Litres in a cubic inch, exact: 2.54^3 / 1000. */
export const litresPerCubicInch = 0.016387064;
export const toCm = (inches: number): number => inches * cmPerInch;
export const toLitres = (cubicInches: number): number => cubicInches * litresPerCubicInch;
/** "4 in" or "10.2 cm"; at most one decimal. */
export function showLength(inches: number, ruler: 'in' | 'cm' = 'in'): string {
  const size = ruler === 'cm' ? toCm(inches) : inches;
  return `${Number(size.toFixed(1))} ${ruler}`;
}
