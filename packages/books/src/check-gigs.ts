import { isZone, type LocalDate, minuteOf, type Problem, wallClock } from '@twistwright/units';
import type { Book } from './book.ts';
import { type Names, unknownName } from './check-names.ts';
import type { Figure } from './figure.ts';
import type { Gig, GigKind } from './gig.ts';
import { errorAt, warningAt } from './problem-codes.ts';

/** What is wrong with each gig by itself. */
export function checkGigs(book: Book, names: Names, today: LocalDate): readonly Problem[] {
  const figures = new Map(book.figures.map((figure) => [figure.id, figure]));
  const checks = [checkNames, checkDay, checkClock, checkCrowd, checkKind, checkMenu, checkBreaks];
  return book.gigs.flatMap((gig, index) => {
    const place: GigPlace = { book, gig, path: ['gigs', index], by: `Gig "${gig.id}"`, names, today, figures };
    return checks.flatMap((check) => check(place));
  });
}
interface GigPlace {
  readonly book: Book;
  readonly gig: Gig;
  readonly path: Problem['path'];
  readonly by: string;
  readonly names: Names;
  readonly today: LocalDate;
  readonly figures: ReadonlyMap<string, Figure>;
}

function checkNames({ gig, path, by, names, figures }: GigPlace): readonly Problem[] {
  const figure = (id: string | undefined, at: Problem['path']) => unknownName(names, 'figure', id, at, by);
  const pieces = (key: 'premade' | 'order') =>
    (gig[key] ?? []).flatMap((piece, at) => [
      ...figure(piece.figure, [...path, key, at, 'figure']),
      ...unknownColourway(figures.get(piece.figure), piece.colourway, [...path, key, at, 'colourway'], by),
    ]);
  return [
    ...unknownName(names, 'client', gig.client, [...path, 'client'], by),
    ...gig.artists.flatMap((artist, at) => unknownName(names, 'artist', artist, [...path, 'artists', at], by)),
    ...gig.artists.flatMap((artist, at) =>
      gig.artists.indexOf(artist) < at
        ? [errorAt('gig.artist-twice', [...path, 'artists', at], `${by} has the artist "${artist}" twice.`, 'Leave one of them out.')]
        : [],
    ),
    ...gig.menu.flatMap((line, at) => [
      ...figure(line.figure, [...path, 'menu', at, 'figure']),
      ...(line.colourways ?? []).flatMap((way, k) =>
        unknownColourway(figures.get(line.figure), way, [...path, 'menu', at, 'colourways', k], by),
      ),
    ]),
    ...pieces('premade'),
    ...pieces('order'),
    ...figure(gig.special?.figure, [...path, 'special', 'figure']),
    ...unknownColourway(figures.get(gig.special?.figure ?? ''), gig.special?.colourway, [...path, 'special', 'colourway'], by),
    ...(gig.classPlan?.lessons ?? []).flatMap((lesson, at) => figure(lesson.figure, [...path, 'classPlan', 'lessons', at, 'figure'])),
    ...(gig.breaks ?? []).flatMap((pause, at) => unknownName(names, 'artist', pause.artist, [...path, 'breaks', at, 'artist'], by)),
  ];
}
function unknownColourway(figure: Figure | undefined, way: string | undefined, path: Problem['path'], by: string): readonly Problem[] {
  if (figure === undefined || way === undefined || figure.colourways.some((known) => known.id === way)) return [];
  const known = figure.colourways.map((entry) => entry.id).join(', ');
  return [
    errorAt(
      'colourway.unknown',
      path,
      `${by} names the colourway "${way}", which figure "${figure.id}" does not have.`,
      known === '' ? `Figure "${figure.id}" has no colourway.` : `It has: ${known}.`,
    ),
  ];
}

function checkDay({ gig, path, by, today }: GigPlace): readonly Problem[] {
  const ends =
    minuteOf(gig.ends) > minuteOf(gig.starts)
      ? []
      : [
          errorAt(
            'gig.ends-first',
            [...path, 'ends'],
            `${by} starts at ${gig.starts} and ends at ${gig.ends}.`,
            'A gig past midnight ends at 24:00 and has overtime, or is two gigs.',
          ),
        ];
  const past =
    gig.day >= today
      ? []
      : [
          warningAt(
            'gig.past',
            [...path, 'day'],
            `${by} was on ${gig.day}, before ${today}; it is not planned.`,
            'Settle it, or put in its new day.',
          ),
        ];
  return [...ends, ...past];
}

function checkClock({ book, gig, path, by }: GigPlace): readonly Problem[] {
  const zone = gig.zone ?? book.business.zone;
  if (!isZone(zone))
    return gig.zone === undefined
      ? []
      : [
          errorAt(
            'zone.unknown',
            [...path, 'zone'],
            `${by} is in the time zone "${zone}", which is not known.`,
            'Write it like Europe/London.',
          ),
        ];
  return (['starts', 'ends'] as const).flatMap((key) => {
    const clock = wallClock(gig.day, gig[key], zone).kind;
    if (clock === 'plain') return [];
    const verb = key === 'starts' ? 'starts' : 'ends';
    return clock === 'gap'
      ? [
          errorAt(
            'gig.clock-gap',
            [...path, key],
            `${by} ${verb} at ${gig[key]} on ${gig.day}, a time that does not exist: clocks in ${zone} jump over it.`,
            'Agree on another time.',
          ),
        ]
      : [
          warningAt(
            'gig.clock-twice',
            [...path, key],
            `${by} ${verb} at ${gig[key]} on ${gig.day}, a time that comes twice: clocks in ${zone} go back over it. The first one is taken.`,
          ),
        ];
  });
}

function checkCrowd({ gig, path, by }: GigPlace): readonly Problem[] {
  const stream = gig.arrivals?.kind === 'stream' ? gig.arrivals.profile : undefined;
  const countedElsewhere = gig.kind === 'made to order' || gig.kind === 'class';
  const noGuests = gig.guests === undefined && stream === undefined && !countedElsewhere;
  const disorder = (stream ?? []).findIndex((knot, index) => knot.minute < (stream?.[index - 1]?.minute ?? 0));
  const weightless = stream?.every((knot) => knot.weight === 0);
  const sizes = gig.line?.partySizes;
  return [
    ...(noGuests
      ? [
          errorAt(
            'gig.no-guests',
            path,
            `${by} does not say how many guests are expected.`,
            'Add "guests", or "arrivals" with a profile of parties per minute.',
          ),
        ]
      : []),
    ...(disorder < 0
      ? []
      : [
          errorAt(
            'gig.arrivals',
            [...path, 'arrivals', 'profile', disorder, 'minute'],
            `${by} has arrivals at minute ${stream?.[disorder]?.minute} after those at minute ${stream?.[disorder - 1]?.minute}.`,
            'Put the profile in order of time.',
          ),
        ]),
    ...(weightless
      ? [
          errorAt(
            'shares.zero',
            [...path, 'arrivals', 'profile'],
            `The arrivals of gig "${gig.id}" are nought all the time.`,
            'Give a weight.',
          ),
        ]
      : []),
    ...(sizes?.every((share) => share === 0)
      ? [
          errorAt(
            'shares.zero',
            [...path, 'line', 'partySizes'],
            `The shares of party sizes of gig "${gig.id}" sum to nought.`,
            'Give one a share.',
          ),
        ]
      : []),
  ];
}

/** What a kind of gig cannot do without. */
const neededBy: Partial<Record<GigKind, { readonly key: 'tables' | 'order' | 'classPlan'; readonly what: string }>> = {
  tables: { key: 'tables', what: 'how many tables there are and how long food takes' },
  'made to order': { key: 'order', what: 'what is ordered' },
  class: { key: 'classPlan', what: 'who learns what' },
};
function checkKind({ gig, path, by }: GigPlace): readonly Problem[] {
  const needed = neededBy[gig.kind];
  if (needed === undefined || gig[needed.key] !== undefined) return [];
  return [errorAt('gig.kind', path, `${by} is of the kind "${gig.kind}" and does not say ${needed.what}.`, `Add "${needed.key}".`)];
}

function checkMenu({ book, gig, path, by }: GigPlace): readonly Problem[] {
  const problems: Problem[] = [];
  const needsMenu = gig.kind !== 'made to order' && gig.kind !== 'class';
  if (gig.menu.length === 0 && needsMenu)
    problems.push(errorAt('gig.no-menu', [...path, 'menu'], `${by} has nothing on its menu.`, 'Add the figures that are offered.'));
  if (gig.menu.length > 0 && gig.menu.every((line) => line.share === 0))
    problems.push(
      errorAt('shares.zero', [...path, 'menu'], `The shares of the menu of gig "${gig.id}" sum to nought.`, 'Give a figure a share.'),
    );
  if (gig.artists.length === 0)
    problems.push(
      warningAt('gig.no-artist', [...path, 'artists'], `${by} has no artist; it is planned with one at the usual pace.`, 'Book one.'),
    );
  const hands = gig.artists.flatMap((id) => book.artists.filter((artist) => artist.id === id));
  if (hands.length > 0 && hands.every((artist) => artist.figures !== undefined))
    for (const [index, line] of gig.menu.entries())
      if (!hands.some((artist) => artist.figures?.includes(line.figure)))
        problems.push(
          warningAt(
            'menu.no-hands',
            [...path, 'menu', index, 'figure'],
            `${by} offers "${line.figure}", which none of its artists makes.`,
            'Take it off the menu, or book somebody who makes it.',
          ),
        );
  return problems;
}

function checkBreaks({ gig, path, by }: GigPlace): readonly Problem[] {
  const length = minuteOf(gig.ends) - minuteOf(gig.starts);
  return (gig.breaks ?? []).flatMap((pause, index) =>
    pause.atMinute < length
      ? []
      : [
          warningAt(
            'gig.break',
            [...path, 'breaks', index, 'atMinute'],
            `${by} has a break ${pause.atMinute} minutes after its start, when it is over.`,
            'Breaks are counted in minutes from the start.',
          ),
        ],
  );
}
