/** A caution for the public. */
export interface Caution {
  readonly about: 'choking' | 'latex' | 'inflating' | 'heat and wires' | 'litter' | 'sword-like figures';
  readonly text: string;
}
/** Wording that a law or standard prescribes for balloons that are sold, quoted to the letter. */
export interface PrescribedWording {
  readonly text: string;
  readonly citation: string;
  /** Where it is law. */
  readonly where: string;
}

/** Shown wherever a gig, figure, card, menu board, first kit or invoice is for the public. Our own words; local rules, the venue and insurers come first. */
export const cautions: readonly Caution[] = [
  {
    about: 'choking',
    text: 'Uninflated or broken balloons can choke children under eight. Nothing loose for children under three. Pick up pieces at once. An adult keeps an eye on it.',
  },
  { about: 'latex', text: 'Made of natural rubber latex: ask about allergy first.' },
  { about: 'inflating', text: 'Inflate with a pump, not with the mouth, and away from faces.' },
  { about: 'heat and wires', text: 'Keep away from hot lamps, fryers and power lines.' },
  { about: 'litter', text: 'Never let balloons go outdoors; put what is left in the bin.' },
];
/** Added where a figure is like a sword. */
export const swordCaution: Caution = { about: 'sword-like figures', text: 'Sword-like figures only where the host allows them.' };
/** Stands beside every prescribed wording and every figure about tax, mileage or insurance. */
export const deference = 'Local rules, the venue, insurers and tax advisers decide; this is not advice.';

const european: PrescribedWording = {
  text: 'Warning! Children under eight years can choke or suffocate on uninflated or broken balloons. Adult supervision required. Keep uninflated balloons from children. Discard broken balloons at once.',
  citation: 'EN 71-1, clause 7.3, as the European Commission clarified it in October 2011',
  where: 'European Union and United Kingdom, on packs of latex balloons',
};
const american: PrescribedWording = {
  text: 'WARNING: CHOKING HAZARD--Children under 8 yrs. can choke or suffocate on uninflated or broken balloons.\nAdult supervision required.\nKeep uninflated balloons from children.\nDiscard broken balloons at once.',
  citation: '16 CFR 1500.19(b)(2); 15 U.S.C. 1278',
  where: 'United States, on packs and advertisements of latex balloons',
};
const europeanCountries = new Set(
  'AT BE BG CY CZ DE DK EE ES FI FR GB GR HR HU IE IS IT LI LT LU LV MT NL NO PL PT RO SE SI SK XI'.split(' '),
);

/**
 * Wording that the law of a country prescribes on packs of balloons; undefined where none is known to us. Whether it binds a figure that is handed to a
 * guest is a legal question that this does not answer.
 * @param country ISO 3166 alphabetic code
 */
export function prescribedWording(country: string | undefined): PrescribedWording | undefined {
  if (country === 'US') return american;
  return country !== undefined && europeanCountries.has(country) ? european : undefined;
}
