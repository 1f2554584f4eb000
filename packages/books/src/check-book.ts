import { isZone, type LocalDate, type Problem } from '@twistwright/units';
import type { Book } from './book.ts';
import { checkBalloonTests } from './check-balloon-tests.ts';
import { checkClashes } from './check-clashes.ts';
import { checkFigures } from './check-figures.ts';
import { checkGigs } from './check-gigs.ts';
import { checkKits } from './check-kits.ts';
import { checkIds, type Names, namesOf, unknownName } from './check-names.ts';
import { checkReach } from './check-reach.ts';
import { checkSupply } from './check-supply.ts';
import { errorAt } from './problem-codes.ts';

export interface CheckOptions {
  /** The day that counts as today. */
  readonly today: LocalDate;
}

/**
 * Everything that is wrong with a book whose form is right: names that lead nowhere, recipes that cannot be made, gigs that cannot take
 * place, dates that do not fit. Errors stop a plan; warnings are said beside it. Empty if there is nothing to say.
 * @example checkBook(emptyBook({ name: 'Six Turns', currency: 'GBP', zone: 'Europe/London' }), { today: date('2026-06-01') }) // -> []
 */
export function checkBook(book: Book, { today }: CheckOptions): readonly Problem[] {
  const names = namesOf(book);
  const figures = checkFigures(book, names);
  return [
    ...checkIds(book),
    ...checkBusiness(book),
    ...figures.problems,
    ...checkPeople(book, names),
    ...checkSupply(book, names, today),
    ...checkKits(book, names),
    ...checkBalloonTests(book, names, today),
    ...checkGigs(book, names, today),
    ...checkClashes(book, today),
    ...checkReach(book, figures.pieces, today),
  ];
}

function checkBusiness(book: Book): readonly Problem[] {
  const { zone } = book.business;
  const sizes = book.settings?.line?.partySizes;
  return [
    ...(isZone(zone)
      ? []
      : [errorAt('zone.unknown', ['business', 'zone'], `The time zone "${zone}" is not known.`, 'Write it like Europe/London.')]),
    ...(sizes?.every((share) => share === 0)
      ? [errorAt('shares.zero', ['settings', 'line', 'partySizes'], 'The shares of party sizes sum to nought.', 'Give one a share.')]
      : []),
  ];
}

function checkPeople(book: Book, names: Names): readonly Problem[] {
  const artists = book.artists.flatMap((artist, index) =>
    (artist.figures ?? []).flatMap((figure, at) =>
      unknownName(names, 'figure', figure, ['artists', index, 'figures', at], `Artist "${artist.id}"`),
    ),
  );
  const tools = (book.settings?.tools ?? []).flatMap((tool, index) => [
    ...unknownName(names, 'item', tool.item, ['settings', 'tools', index, 'item'], 'The list of tools'),
    ...unknownName(names, 'place', tool.place, ['settings', 'tools', index, 'place'], 'The list of tools'),
  ]);
  return [...artists, ...tools];
}
