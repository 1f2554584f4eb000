import { expect, test } from 'vitest';
import { vCardOf } from './contact-card.ts';

const business = { name: 'Six Turns', currency: 'GBP', zone: 'UTC' } as const;

// RFC 6350, vCard Format Specification (August 2011): 3.2 folding, 3.4 escapes, 6.2.1 FN, 6.1.4 KIND, 6.4.1 TEL, 6.3.1 ADR.
test('version, name, kind and end stand where RFC 6350 wants them', () => {
  expect(vCardOf(business)).toBe('BEGIN:VCARD\r\nVERSION:4.0\r\nFN:Six Turns\r\nKIND:org\r\nORG:Six Turns\r\nEND:VCARD\r\n');
});
test('comma, semicolon, backslash and line break are escaped; an address has seven parts', () => {
  const card = vCardOf({ ...business, contact: { person: 'A; B, C\\', address: '1 High St,\nTown' } });
  expect(card).toContain('FN:A\\; B\\, C\\\\\r\n');
  expect(card).toContain('ADR:;;1 High St\\,\\nTown;;;;\r\n');
});
test('a number with its country is an address to dial, another one is text; a site gets its scheme', () => {
  expect(vCardOf({ ...business, contact: { phone: '+44 (0)1632 960014' } })).toContain('TEL;VALUE=uri:tel:+441632960014\r\n');
  expect(vCardOf({ ...business, contact: { phone: '01632 960014', site: 'a.example' } })).toContain(
    'TEL:01632 960014\r\nURL:https://a.example',
  );
});
test('no line is longer than 75 octets, and unfolding gives the name back', () => {
  const name = 'Ünïcödé ballööns '.repeat(12).trim();
  const card = vCardOf({ ...business, name });
  for (const line of card.split('\r\n')) expect(new TextEncoder().encode(line).length).toBeLessThanOrEqual(75);
  expect(card.replaceAll('\r\n ', '')).toContain(`ORG:${name}\r\n`);
});
