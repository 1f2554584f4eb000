import { type Book, type Item, type PrintOn, printOn } from '@twistwright/books';
import { paintOf } from '@twistwright/planner';
import { rubberOf } from '@twistwright/repertoire';

/** What a thing that is bought looks like, 40 by 18; its name stands beside it. A balloon as {@link balloonSwatch} has it, a tool in ink. */
export const itemSwatch = (book: Book, item: Item): string =>
  item.kind === 'balloon' ? balloonSwatch(item.size, paintOf(book, item.colour), item.print) : framed(toolBody(item.name));

/** A balloon in its shape, 40 by 18: thickness after its size code, what is printed on it. `paint` is the name of a colour or `#rrggbb`. */
export const balloonSwatch = (size: string, paint: string, print?: string): string => framed(balloonBody(size, paint, print));

/** Balloons of several colours out of one bag: the first three, half as large. */
export const mixedSwatch = (balloons: readonly { readonly size: string; readonly paint: string }[]): string =>
  framed(
    balloons
      .slice(0, 3)
      .map(
        ({ size, paint }, index) =>
          `<g transform="translate(${index * 10} ${index === 1 ? 9 : 0}) scale(0.5)">${balloonBody(size, paint, undefined)}</g>`,
      )
      .join(''),
  );

const framed = (body: string): string => `<svg xmlns="http://www.w3.org/2000/svg" width="40" height="18" viewBox="0 0 40 18">${body}</svg>`;

function balloonBody(size: string, paint: string, print: string | undefined): string {
  const rubber = rubberOf(paint) ?? { body: '#9da3a9', rim: '#555b61' };
  const skin = `fill="${rubber.body}" stroke="${rubber.rim}" stroke-width="1"`;
  const printed = print === undefined ? '' : `<g fill="#15171b" stroke="#fff" stroke-width="0.5">${prints[printOn(print)]}</g>`;
  switch (/^[a-z]+/u.exec(size)?.[0]) {
    case undefined: {
      const radius = Math.min(8, 2 + Number(size.charAt(0)) * 1.2);
      const knot = `<path d="M5 9L1.4 6.4V11.6Z" ${skin}/>`;
      return `${knot}<rect x="4.5" y="${9 - radius}" width="34" height="${2 * radius}" rx="${radius}" ${skin}/>${print === undefined ? '' : tubePrint}`;
    }
    case 'heart':
      return `<path d="M20 17C8 10 10.5 1 15 1C17.6 1 19.2 2.6 20 4.400C20.8 2.6 22.4 1 25 1C29.5 1 32 10 20 17Z" ${skin}/>${printed}`;
    case 'flower':
      return `${petals.map(([x, y]) => `<circle cx="${x}" cy="${y}" r="3.4" ${skin}/>`).join('')}<circle cx="20" cy="9" r="3" fill="${rubber.body}"/>`;
    case 'ring':
      return `<circle cx="20" cy="9" r="6" fill="none" stroke="${rubber.rim}" stroke-width="4.8"/><circle cx="20" cy="9" r="6" fill="none" stroke="${rubber.body}" stroke-width="3"/>`;
    default:
      return `<path d="M20 14L17.8 17.400H22.200Z" ${skin}/><circle cx="20" cy="8" r="7.2" ${skin}/>${printed}`;
  }
}
const petals = [
  [20, 4.2],
  [24.6, 7.5],
  [22.8, 12.9],
  [17.2, 12.9],
  [15.4, 7.5],
] as const;
/** What is printed, about the middle of a round one. */
const prints: Readonly<Record<PrintOn, string>> = {
  eyes: '<ellipse cx="17.6" cy="7.6" rx="1.3" ry="2.3"/><ellipse cx="22.4" cy="7.6" rx="1.3" ry="2.3"/>',
  face: '<ellipse cx="17.6" cy="5.9" rx="1.1" ry="1.6"/><ellipse cx="22.4" cy="5.9" rx="1.1" ry="1.6"/><path d="M16.500 9.500Q20 13.200 23.500 9.500" fill="none" stroke="#15171b" stroke-width="1.2"/>',
  dots: [
    [20, 3.6],
    [16, 6.2],
    [24, 6.2],
    [20, 8.4],
    [16.8, 11.4],
    [23.2, 11.4],
  ]
    .map(([x, y]) => `<circle cx="${x}" cy="${y}" r="1.3"/>`)
    .join(''),
};
/** Too thin for more: dots along it. */
const tubePrint = [10, 17, 24, 31]
  .map((x, index) => `<circle cx="${x}" cy="${index % 2 === 0 ? 8 : 10}" r="1.2" fill="#15171b" stroke="#fff" stroke-width="0.5"/>`)
  .join('');

function toolBody(name: string): string {
  const line = 'fill="none" stroke="#15171b" stroke-width="1.4"';
  if (/pump/iu.test(name))
    return `<path d="M5 9H12" ${line}/><rect x="12" y="4.5" width="14" height="9" rx="2" ${line}/><rect x="26" y="2.5" width="7" height="13" rx="1.5" fill="#15171b"/>`;
  if (/marker|pen\b/iu.test(name))
    return `<rect x="4" y="5.5" width="20" height="7" rx="1.5" fill="#15171b"/><path d="M24 6.500H29L35 9L29 11.500H24" ${line}/>`;
  if (/scissors/iu.test(name))
    return `<path d="M14 11.500L35 4M14 6.500L35 14" ${line}/><circle cx="10.5" cy="4.8" r="3" ${line}/><circle cx="10.5" cy="13.2" r="3" ${line}/>`;
  if (/stick|rod|cup/iu.test(name)) return `<path d="M4 13L32 5" ${line}/><circle cx="34" cy="4.5" r="2.5" fill="#15171b"/>`;
  return `<path d="M15 5V3.500Q15 2 16.5 2H23.500Q25 2 25 3.500V5" ${line}/><rect x="9" y="5" width="22" height="11.5" rx="1.5" ${line}/><path d="M9 9.500H31" ${line}/>`;
}
