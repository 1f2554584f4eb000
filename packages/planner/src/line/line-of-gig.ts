import {
  type Artist,
  type Book,
  balloonFor,
  balloonsByLook,
  errorAt,
  type Figure,
  type FullLineSettings,
  type Gig,
  lineSettingsOf,
  type MenuLine,
  planningSettingsOf,
  sizesOf,
  type TimeLaw,
} from '@twistwright/books';
import { minutesOf, piecesOf, type Recipe, readRecipe } from '@twistwright/repertoire';
import { fail, minuteOf, ok, type Result } from '@twistwright/units';
import { meanOf } from './expected-minutes.ts';
import type {
  Arrivals,
  Duration,
  IfShort,
  LineArtist,
  LineColourway,
  LineFigure,
  LineItem,
  LineModel,
  RateKnot,
  Urn,
  Wish,
} from './line-model.ts';

/** Spread of making times where only a middle is known: common practice, no published source. */
const usualSigma = 0.3;
/** Half of those who come back want a repair, half another figure; common practice, no published source. */
const repairPart = 0.5;
/** How quickly what was seen is forgotten: each thing handed out weighs this part of what the one before it weighs. */
const copycatKeeps = 0.7;
/** At strength 1 and in the long run, what was seen adds a third to the asking weights (the trade's reserve of one third on colours that catch on). */
const copycatAdded = 0.1;
/** Heat makes more balloons pop; common practice, no published source. */
const popFactors = { mild: 1, hot: 1.5, cold: 1.25, wet: 1 } as const;

/** Who works at a gig for which nobody is booked yet. */
const somebody: Artist = { id: 'nobody booked', name: 'nobody booked', pace: 1 };

/**
 * The gig as a line model: its figures with the items of the book that they take, its habits (shipped for its kind, the business's, its own), its
 * artists (one at the usual pace where nobody is booked). Stock is unlimited; `withStock` sets a limit. Colourways that take a balloon which
 * is no item of the book are left out, as are figures without any colourway left and figures that none of the artists makes. Fails when
 * nothing on the menu is left.
 */
export function lineModelOf(book: Book, gig: Gig): Result<LineModel> {
  const settings = lineSettingsOf(book, gig);
  const artists = gig.artists.length === 0 ? [somebody] : gig.artists.flatMap((id) => book.artists.filter((artist) => artist.id === id));
  if (artists.length === 0)
    return fail([errorAt('gig.no-artist', ['gigs', gig.id, 'artists'], `"${gig.name}" has no artist.`, 'Say who works there.')]);
  const stage = new Stage(book, settings);
  const menu = menuOf(gig);
  const figures = menu.flatMap((line) => {
    const figure = book.figures.find((candidate) => candidate.id === line.figure);
    if (figure === undefined || !artists.some((artist) => artist.figures === undefined || artist.figures.includes(figure.id))) return [];
    const made = stage.figure(figure, line, gig);
    return made === undefined ? [] : [made];
  });
  if (figures.length === 0 || !figures.some((figure) => figure.share > 0))
    return fail([
      errorAt(
        'gig.no-menu',
        ['gigs', gig.id, 'menu'],
        `Nothing on the menu of "${gig.name}" can be made: no figure has both an artist and its balloons.`,
        'Put a figure on the menu whose balloons are items of the book.',
      ),
    ]);
  const end = minuteOf(gig.ends) - minuteOf(gig.starts);
  const index = new Map(figures.map((figure, i) => [figure.id, i]));
  const preMade = (gig.premade ?? []).flatMap(({ figure, colourway, count }) => {
    const at = index.get(figure);
    const way = at === undefined ? -1 : (figures[at]?.colourways.findIndex((candidate) => candidate.id === colourway) ?? -1);
    return at === undefined || way < 0 ? [] : [{ figure: at, colourway: way, count }];
  });
  const joins = settings.joining;
  return ok({
    end,
    overtimeMinutes: settings.overtimeMinutes,
    arrivals: arrivalsOf(gig, settings, end, figures, index),
    partySizes: settings.partySizes,
    hiddenShare: settings.hiddenShare,
    ...(joins.scale === undefined ? {} : { joining: { free: joins.free, scale: joins.scale } }),
    ...(joins.room === undefined ? {} : { room: joins.room }),
    patience: gig.kind === 'tables' && gig.tables !== undefined ? durationOf(gig.tables.foodAfter) : patienceOf(settings.patience),
    serving: gig.kind === 'tables' ? 'tables' : settings.oneLine || artists.length === 1 ? 'shared line' : 'own lines',
    ...(gig.kind === 'tables' && gig.tables !== undefined
      ? {
          tables: {
            walking: durationOf(gig.tables.walking),
            count: gig.tables.tables,
            stayingMinutes: meanOf(durationOf(gig.tables.leaveAfter)),
          },
        }
      : {}),
    artists: artists.map((artist) => artistOf(artist, gig, settings, end)),
    closing: closingOf(settings, end),
    choosing: durationOf(settings.choosing),
    colourChoosing: { kind: 'fixed', minutes: settings.colourChoosingMinutes },
    handingOver: durationOf(settings.handingOver),
    items: stage.items,
    figures,
    copycat: { figures: urn(settings.copycat.figures), colours: urn(settings.copycat.colours) },
    ifShort: ifShort[settings.outOfStock],
    pops: 'each piece',
    weather: { makingFactor: settings.weatherFactor, popFactor: popFactors[gig.weather ?? 'mild'] },
    ...(settings.helper?.pumps === undefined ? {} : { helper: { makingFactor: settings.helper.pumps, drawsFaces: false } }),
    ...(preMade.length === 0 ? {} : { preMade }),
    ...(settings.repeatShare > 0
      ? {
          returns: {
            repeatChance: settings.mostEach > 1 ? settings.repeatShare * (1 - repairPart) : 0,
            repeatAfter: { kind: 'exponential' as const, mean: 20 },
            repairChance: settings.repeatShare * repairPart,
            repairAfter: { kind: 'exponential' as const, mean: 15 },
            oneEach: settings.mostEach <= 1,
          },
        }
      : {}),
    warmUpMinutes: settings.warmUpMinutes,
    promiseMinutes: planningSettingsOf(book).promise.waitMinutes,
  });
}

/** The same gig with so many pieces of each item, by item id; items that are not named have none. */
export const withStock = (model: LineModel, counts: ReadonlyMap<string, number>): LineModel => ({
  ...model,
  items: model.items.map((item) => ({ ...item, stock: counts.get(item.id) ?? 0 })),
});

export const durationOf = (law: TimeLaw): Duration => {
  switch (law.law) {
    case 'log-normal':
      return { kind: 'log-normal', median: law.median, sigma: law.sigma };
    case 'gamma':
      return { kind: 'gamma', mean: law.mean, shape: law.shape };
    case 'exponential':
      return { kind: 'exponential', mean: law.mean };
    case 'fixed':
      return { kind: 'fixed', minutes: law.minutes };
  }
};
const patienceOf = (patience: FullLineSettings['patience']): LineModel['patience'] =>
  patience.law === 'endless' ? { kind: 'endless' } : durationOf(patience);
const urn = (strength: number): Urn => ({ added: strength * copycatAdded, keeps: copycatKeeps });

const ifShort: Readonly<Record<FullLineSettings['outOfStock'], IfShort>> = {
  'other colour, then other figure': { otherColour: 0.8, otherFigure: 0.7, search: 'by share' },
  'other colour': { otherColour: 0.8, otherFigure: 0, search: 'by share' },
  'next figure in order': { otherColour: 0, otherFigure: 1, search: 'next in order' },
  disappointed: { otherColour: 0, otherFigure: 0, search: 'by share' },
};

function closingOf(settings: FullLineSettings, end: number): LineModel['closing'] {
  const rule = settings.closing;
  if (rule.rule === 'none') return { kind: 'none' };
  if (rule.rule === 'fixed time') return { kind: 'fixed', minute: Math.max(0, end - rule.minutesBeforeEnd) };
  return {
    kind: 'work ahead',
    keptBackMinutes: rule.keptBackMinutes,
    ...(rule.minutesPerHead === undefined ? {} : { minutesEach: rule.minutesPerHead }),
  };
}

function artistOf(artist: Artist, gig: Gig, settings: FullLineSettings, end: number): LineArtist {
  const everyHour =
    settings.breakPerHourMinutes > 0
      ? Array.from({ length: Math.max(0, Math.ceil(end / 60) - 1) }, (_, hour) => ({
          minute: (hour + 1) * 60,
          minutes: settings.breakPerHourMinutes,
        }))
      : [];
  const own = (gig.breaks ?? [])
    .filter((pause) => pause.artist === undefined || pause.artist === artist.id)
    .map(({ atMinute, minutes }) => ({ minute: atMinute, minutes }));
  const breaks = [...everyHour, ...own].sort((a, b) => a.minute - b.minute);
  return {
    id: artist.id,
    pace: artist.pace,
    ...(breaks.length === 0 ? {} : { breaks }),
    ...(settings.fatiguePerHour > 0 ? { fatigue: { perHour: settings.fatiguePerHour, freshMinutes: 60 } } : {}),
  };
}

/** The menu, with what else the gig makes although nobody asks for it: the special piece, the order, the lessons, what is premade. */
function menuOf(gig: Gig): readonly MenuLine[] {
  const named = [
    ...(gig.special === undefined ? [] : [gig.special.figure]),
    ...(gig.order ?? []).map((line) => line.figure),
    ...(gig.classPlan?.lessons ?? []).map((lesson) => lesson.figure),
    ...(gig.premade ?? []).map((line) => line.figure),
  ];
  const share = gig.kind === 'made to order' || gig.kind === 'class' ? 1 : 0;
  const more = [...new Set(named)].filter((figure) => !gig.menu.some((line) => line.figure === figure));
  return [...gig.menu, ...more.map((figure) => ({ figure, share }))];
}

/** Parties in the usual shape of an afternoon: a quick start, a full middle, few at the end. Common practice, no published source. */
const usualProfile = (end: number) =>
  [
    [0, 0.6],
    [0.15, 1],
    [0.65, 1],
    [1, 0.25],
  ].map(([part = 0, weight = 0]) => ({ minute: part * end, weight }));

function arrivalsOf(
  gig: Gig,
  settings: FullLineSettings,
  end: number,
  figures: readonly LineFigure[],
  index: ReadonlyMap<string, number>,
): Arrivals {
  const guests = gig.guests ?? 0;
  if (gig.kind === 'class' && gig.classPlan !== undefined) {
    const lessons = gig.classPlan.lessons.map((lesson) => index.get(lesson.figure)).filter((at): at is number => at !== undefined);
    return { kind: 'class', learners: gig.classPlan.learners, figures: lessons, tries: gig.classPlan.practiceFactor, slowness: 1 };
  }
  if (gig.kind === 'made to order' && gig.order !== undefined) {
    const wishes = gig.order.flatMap(({ figure, colourway, count }) => {
      const wish = wishOf(figures, index, figure, colourway);
      return wish === undefined ? [] : Array.from({ length: count }, () => ({ minute: 0, guests: [wish] }));
    });
    return { kind: 'list', parties: wishes };
  }
  if (gig.kind === 'strolling' && gig.strolling !== undefined)
    return { kind: 'found', walking: durationOf(gig.strolling.walking), ...(gig.guests === undefined ? {} : { guests }) };
  const profile = gig.arrivals?.kind === 'stream' ? gig.arrivals.profile : undefined;
  const atStart = gig.arrivals?.kind === 'all at the start' || (gig.arrivals === undefined && gig.kind === 'party');
  if (gig.kind === 'party' && gig.special !== undefined && atStart) {
    const special = wishOf(figures, index, gig.special.figure, gig.special.colourway);
    const rest = Array.from({ length: Math.max(0, Math.round(guests) - 1) }, () => ({ minute: 0, guests: [{}] }));
    return { kind: 'list', parties: special === undefined ? rest : [{ minute: 0, guests: [special] }, ...rest] };
  }
  if (atStart) return { kind: 'at start', guests };
  return { kind: 'stream', knots: knotsOf(profile ?? usualProfile(end), gig.guests, settings.partySizes) };
}

/** Rates in parties a minute; with a number of guests the weights are only a shape, scaled so that so many guests are expected. */
function knotsOf(
  profile: readonly { readonly minute: number; readonly weight: number }[],
  guests: number | undefined,
  partySizes: readonly number[],
): readonly RateKnot[] {
  if (guests === undefined) return profile.map(({ minute, weight }) => ({ minute, perMinute: weight }));
  const total = partySizes.reduce((sum, weight) => sum + weight, 0);
  const meanParty = partySizes.reduce((sum, weight, size) => sum + weight * (size + 1), 0) / total;
  const area = profile.slice(1).reduce((sum, knot, i) => {
    const before = profile[i] ?? knot;
    return sum + ((before.weight + knot.weight) / 2) * (knot.minute - before.minute);
  }, 0);
  const scale = area > 0 ? guests / meanParty / area : 0;
  return profile.map(({ minute, weight }) => ({ minute, perMinute: weight * scale }));
}

function wishOf(
  figures: readonly LineFigure[],
  index: ReadonlyMap<string, number>,
  figure: string,
  colourway: string | undefined,
): Wish | undefined {
  const at = index.get(figure);
  if (at === undefined) return undefined;
  const way = figures[at]?.colourways.findIndex((candidate) => candidate.id === colourway) ?? -1;
  return way < 0 ? { figure: at } : { figure: at, colourway: way };
}

/** Collects the items that the figures of a gig take, and numbers them. */
class Stage {
  readonly items: LineItem[] = [];
  readonly #book: Book;
  readonly #settings: FullLineSettings;
  readonly #balloons: ReadonlyMap<string, string>;
  readonly #index = new Map<string, number>();
  readonly #colours = new Map<string, number>();
  constructor(book: Book, settings: FullLineSettings) {
    this.#book = book;
    this.#settings = settings;
    this.#balloons = balloonsByLook(book);
  }

  figure(figure: Figure, line: MenuLine, gig: Gig): LineFigure | undefined {
    const recipe = recipeOf(figure, this.#book);
    if (recipe === undefined) return undefined;
    const colourways = figure.colourways
      .filter((way) => line.colourways === undefined || line.colourways.includes(way.id))
      .flatMap((way): readonly LineColourway[] => {
        const lines = this.#linesOf(recipe, way, figure);
        return lines === undefined ? [] : [{ id: way.id, share: way.share ?? 1, colour: this.#colourOf(recipe, way), lines }];
      });
    const plain: readonly LineColourway[] =
      recipe.pieces.length === 0 && figure.colourways.length === 0
        ? [{ id: 'plain', share: 1, colour: 0, lines: this.#extras(figure) }]
        : [];
    const ways = [...colourways, ...plain];
    if (ways.length === 0) return undefined;
    const lesson = gig.classPlan?.lessons.find((candidate) => candidate.figure === figure.id);
    const making = lesson === undefined ? makingOf(figure, recipe, this.#book) : ({ kind: 'fixed', minutes: lesson.minutes } as const);
    const pieces = recipe.pieces.reduce((sum, piece) => sum + piece.count, 0);
    const drawing = (figure.extras ?? []).reduce((sum, extra) => sum + (extra.minutes ?? 0), 0) * (this.#settings.helper?.draws ?? 1);
    return {
      id: figure.id,
      share: line.share,
      making,
      ...(drawing > 0 ? { drawingMinutes: drawing } : {}),
      redoMinutes: pieces === 0 ? 0 : meanOf(making) / pieces,
      colourways: ways,
    };
  }

  #linesOf(recipe: Recipe, way: Figure['colourways'][number], figure: Figure): LineColourway['lines'] | undefined {
    const counts = new Map<string, number>();
    for (const piece of piecesOf(recipe)) {
      const item = balloonFor(piece, way, this.#balloons)?.item;
      if (item === undefined) return undefined;
      counts.set(item, (counts.get(item) ?? 0) + piece.count);
    }
    return [...[...counts].map(([item, count]) => ({ item: this.#item(item), count })), ...this.#extras(figure)];
  }
  #extras(figure: Figure): LineColourway['lines'] {
    return (figure.extras ?? [])
      .filter((extra) => extra.count > 0 && this.#book.items.some((item) => item.id === extra.item)) // 0: used, not used up
      .map((extra) => ({ item: this.#item(extra.item), count: extra.count }));
  }
  /** The colour that guests see: that of the first piece. */
  #colourOf(recipe: Recipe, way: Figure['colourways'][number]): number {
    const colour = way.fill[recipe.pieces[0]?.role ?? ''] ?? way.id;
    const known = this.#colours.get(colour);
    if (known !== undefined) return known;
    this.#colours.set(colour, this.#colours.size);
    return this.#colours.size - 1;
  }
  #item(id: string): number {
    const known = this.#index.get(id);
    if (known !== undefined) return known;
    const item = this.#book.items.find((candidate) => candidate.id === id);
    const popChance = item?.kind === 'balloon' ? (item.chanceOfPop ?? this.#settings.chanceOfPop) : 0;
    this.items.push({ id, popChance });
    this.#index.set(id, this.items.length - 1);
    return this.items.length - 1;
  }
}

const none: Recipe = { pieces: [], finishing: [] };
function recipeOf(figure: Figure, book: Book): Recipe | undefined {
  if (figure.recipe === undefined) return none;
  const read = readRecipe(figure.recipe, sizesOf(book));
  return read.ok ? read.value : undefined;
}
function makingOf(figure: Figure, recipe: Recipe, book: Book): Duration {
  if (figure.minutes !== undefined) return durationOf(figure.minutes);
  return { kind: 'log-normal', median: Math.max(0.05, minutesOf(recipe, sizesOf(book)).minutes), sigma: usualSigma };
}
