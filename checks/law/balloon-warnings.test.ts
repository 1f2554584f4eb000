// United States: Child Safety Protection Act, 15 U.S.C. 1278(b)(2)(A); 16 CFR 1500.19(b)(2); wording as in EDItEUR ONIX code list 143, value 02.
// European Union and United Kingdom: EN 71-1 (clause 7.3 from memory), wording as quoted from the Commission's clarification of October 2011.
import { cautions, prescribedWording } from '@twistwright/books';
import { expect, test } from 'vitest';

test('the American wording stands to the letter', () => {
  expect(prescribedWording('US')?.text).toBe(
    'WARNING: CHOKING HAZARD--Children under 8 yrs. can choke or suffocate on uninflated or broken balloons.\nAdult supervision required.\nKeep uninflated balloons from children.\nDiscard broken balloons at once.',
  );
});
test('the European wording stands to the letter, in the United Kingdom too', () => {
  const text =
    'Warning! Children under eight years can choke or suffocate on uninflated or broken balloons. Adult supervision required. Keep uninflated balloons from children. Discard broken balloons at once.';
  expect([prescribedWording('GB')?.text, prescribedWording('DE')?.text]).toEqual([text, text]);
});
test('elsewhere nothing is asserted, and the plain cautions stand', () => {
  expect([prescribedWording('JP'), prescribedWording(undefined)]).toEqual([undefined, undefined]);
  const all = cautions.map((caution) => caution.text).join(' ');
  for (const word of ['under eight', 'under three', 'latex', 'pump', 'power lines', 'outdoors']) expect(all).toContain(word);
});
