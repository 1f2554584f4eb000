import type { Business } from '@twistwright/books';
import type { Content } from 'pdfmake/interfaces.js';
import { encode } from 'uqr';

/**
 * Name and contact of a business as a vCard 4.0 (RFC 6350), lines folded at 75 octets.
 * @example vCardOf({ name: 'Six Turns', currency: 'GBP', zone: 'UTC' }).split('\r\n')[2] // -> 'FN:Six Turns'
 */
export function vCardOf({ name, town, contact = {} }: Business): string {
  const { person, phone, email, site, address } = contact;
  const lines = [
    'BEGIN:VCARD',
    'VERSION:4.0',
    `FN:${escaped(person ?? name)}`,
    ...(person === undefined ? ['KIND:org'] : []),
    `ORG:${escaped(name)}`,
    ...(phone === undefined ? [] : [telephone(phone)]),
    ...(email === undefined ? [] : [`EMAIL:${escaped(email)}`]),
    ...(site === undefined ? [] : [`URL:${absolute(site)}`]),
    ...(address === undefined && town === undefined
      ? []
      : [`ADR:;;${escaped(address ?? '')};${escaped(address === undefined ? (town ?? '') : '')};;;`]),
    'END:VCARD',
  ];
  return `${lines.map(folded).join('\r\n')}\r\n`;
}

/** Backslash, comma, semicolon and line break are escaped (RFC 6350, 3.4). */
const escaped = (text: string): string => text.replace(/[\\,;]/gu, '\\$&').replace(/\r?\n/gu, '\\n');
/** A number that can be dialled from anywhere, its "(0)" for callers at home left out, is a `tel:` address (RFC 3966); any other is a text. */
function telephone(phone: string): string {
  const digits = phone.replace('(0)', '').replace(/[\s().-]/gu, '');
  return /^\+\d{4,15}$/u.test(digits) ? `TEL;VALUE=uri:tel:${digits}` : `TEL:${escaped(phone)}`;
}
/** An address of a site with its scheme. */
export const absolute = (site: string): string => (/^[a-z][a-z0-9+.-]*:/iu.test(site) ? site : `https://${site}`);

/** Long lines are parted before the 76th octet, never within a letter; the next line begins with a space (RFC 6350, 3.2). */
function folded(line: string): string {
  let out = '';
  let octets = 0;
  for (const letter of line) {
    const size = new TextEncoder().encode(letter).length;
    if (octets + size > 75) {
      out += '\r\n ';
      octets = 1;
    }
    out += letter;
    octets += size;
  }
  return out;
}

/** Modules of light around a code without which no reader finds it (ISO/IEC 18004, 2015, clause 9.1). */
const quietZone = 4;

/** A text as QR code (ISO/IEC 18004), one black run of modules a stroke of the path, its quiet zone included. */
export function qrSvg(text: string, title: string): string {
  const { data, size } = encode(text, { ecc: 'L', border: quietZone });
  const path = data.flatMap((row, y) => runsOf(row).map(([x, length]) => `M${x} ${y}h${length}v1h-${length}z`)).join('');
  return `<svg xmlns="http://www.w3.org/2000/svg" viewBox="0 0 ${size} ${size}" role="img" aria-label="${title}" shape-rendering="crispEdges"><path fill="#fff" d="M0 0h${size}v${size}H0z"/><path fill="#000" d="${path}"/></svg>`;
}

/** Start and length of each row of black modules. */
function runsOf(row: readonly boolean[]): readonly (readonly [number, number])[] {
  const runs: [number, number][] = [];
  for (const [x, isBlack] of row.entries()) {
    const last = runs.at(-1);
    if (isBlack && last !== undefined && last[0] + last[1] === x) last[1]++;
    else if (isBlack) runs.push([x, 1]);
  }
  return runs;
}

/** The code on paper, `points` wide with its quiet zone. */
export const qrContent = (text: string, points: number): Content => ({ svg: qrSvg(text, ''), width: points });
