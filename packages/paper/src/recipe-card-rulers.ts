import type { PieceAir } from '@twistwright/repertoire';
import { showLength } from '@twistwright/units';

/** PDF points in an inch of paper. */
export const pointsPerInch = 72;
/** Points in a centimetre of paper. */
const pointsPerCm = pointsPerInch / 2.54;
/** How long the rulers are: what fits between the margins of A4 and Letter. */
export const rulerInches = 7;
/** The line to measure before the rulers are trusted. */
export const checkInches = 5;

const ink = '#15171b';
const soft = '#595d63';
const font = 'font-family="sans"';

/** A length to be held against a ruler, and what it is. */
export interface Measure {
  readonly inches: number;
  readonly names: readonly string[];
}

/** Tails to leave, shortest first; equal ones together. */
export function tailsOf(pieces: readonly PieceAir[]): readonly Measure[] {
  return together(pieces.filter((piece) => piece.tailInches > 0.04).map((piece) => ({ inches: piece.tailInches, name: piece.name })));
}

/** Every length together with all its names. Lengths that differ by less than a twentieth of an inch are one. */
export function together(lengths: readonly { readonly inches: number; readonly name: string }[]): readonly Measure[] {
  const found: { inches: number; names: string[] }[] = [];
  for (const { inches, name } of lengths.toSorted((a, b) => a.inches - b.inches)) {
    const last = found.at(-1);
    if (last === undefined || inches - last.inches > 0.05) found.push({ inches, names: [name] });
    else if (!last.names.includes(name)) last.names.push(name);
  }
  return found;
}

/** A ruler at true size with measures above it as bars, one a line; as SVG whose units are points. */
export function rulerSvg(
  measures: readonly Measure[],
  look: 'flat' | 'inflated',
  unit: 'in' | 'cm',
): { readonly svg: string; readonly height: number } {
  const shown = measures.filter(({ inches }) => inches <= rulerInches);
  const row = look === 'flat' ? 17 : 16;
  const top = shown.length * row + 3;
  const height = top + 25;
  const width = rulerInches * pointsPerInch;
  const bars = shown.map((measure, index) => bar(measure, index * row, row, look, unit)).join('');
  return { svg: wrapped(`${bars}${scale(top, unit)}`, width, height), height };
}

/** Width of a letter of the labels on the whole, points. */
const pointsPerLetter = 4.5;

/** As many names as there is room for. */
function fitting(names: readonly string[], size: string, room: number): string {
  for (let count = names.length; count > 0; count--) {
    const more = names.length - count;
    const text = `${size}: ${names.slice(0, count).join(', ')}${more > 0 ? ` and ${more} more` : ''}`;
    if (text.length * pointsPerLetter <= room) return text;
  }
  return size;
}

function bar({ inches, names }: Measure, y: number, row: number, look: 'flat' | 'inflated', unit: 'in' | 'cm'): string {
  const end = inches * pointsPerInch;
  const width = rulerInches * pointsPerInch;
  const isFlat = look === 'flat';
  const words = fitting(names, showLength(inches, unit), isFlat ? width : Math.max(end - 16, width - end - 8));
  const middle = isFlat ? y + row - 4 : y + row / 2;
  const radius = isFlat ? 2.2 : row / 2 - 1.5;
  const isInside = isFlat || end - 16 > words.length * pointsPerLetter;
  const x = isInside ? (isFlat ? 0 : 8) : end + 6;
  return (
    `<rect x="0.4" y="${middle - radius}" width="${Math.max(1, end - 0.8)}" height="${2 * radius}" rx="${Math.min(radius, end / 2)}" fill="${isFlat ? '#b9bcb6' : '#ffffff'}" stroke="${ink}" stroke-width="0.8"/>` +
    `<path d="M${end} ${isFlat ? middle - 4 : y + 1}V${y + row}" stroke="${ink}" stroke-width="1.4"/>` +
    `<text x="${x}" y="${isFlat ? y + 8 : middle + 3}" font-size="8.5" ${font} fill="${ink}">${escaped(words)}</text>`
  );
}

function scale(y: number, unit: 'in' | 'cm'): string {
  const width = rulerInches * pointsPerInch;
  const step = unit === 'in' ? pointsPerInch / 8 : pointsPerCm / 2;
  const perUnit = unit === 'in' ? 8 : 2;
  let text = `<path d="M0 ${y}H${width}" stroke="${ink}" stroke-width="1.2"/>`;
  for (let k = 0; k * step <= width + 1e-6; k++) {
    const long = k % perUnit === 0 ? 11 : k % (perUnit / 2) === 0 ? 7 : 4;
    const x = (k * step).toFixed(3);
    text += `<path d="M${x} ${y}V${y + long}" stroke="${ink}" stroke-width="${long === 11 ? 1 : 0.5}"/>`;
    if (long === 11) {
      const anchor = k === 0 ? 'start' : k * step > width - 6 ? 'end' : 'middle';
      text += `<text x="${x}" y="${y + 20}" font-size="8" ${font} fill="${soft}" text-anchor="${anchor}">${k / perUnit}${k === 0 ? ` ${unit}` : ''}</text>`;
    }
  }
  return text;
}

/** A line of exactly `checkInches`, with stops at both ends. */
export function checkLineSvg(): string {
  const end = checkInches * pointsPerInch;
  return wrapped(`<path d="M0 6H${end}M0 1V11M${end} 1V11" fill="none" stroke="${ink}" stroke-width="1.2"/>`, end, 12);
}

const wrapped = (inner: string, width: number, height: number): string =>
  `<svg xmlns="http://www.w3.org/2000/svg" width="${width}" height="${height}" viewBox="0 0 ${width} ${height}">${inner}</svg>`;
const escaped = (text: string): string => text.replace(/&/gu, '&amp;').replace(/</gu, '&lt;').replace(/>/gu, '&gt;');

/** "Longer than this ruler: 8 in (fork), 10.1 in (saddle)." Empty when nothing is. */
export function beyondRuler(measures: readonly Measure[], unit: 'in' | 'cm'): string {
  const long = measures
    .filter(({ inches }) => inches > rulerInches)
    .map(({ inches, names }) => `${showLength(inches, unit)} (${names.slice(0, 3).join(', ')})`);
  return long.length === 0 ? '' : ` Longer than this ruler: ${long.join(', ')}.`;
}
