import { basename } from 'node:path';
import { type Book, type Colourway, countsByItem, stockOf } from '@twistwright/books';
import type { PaperSize } from '@twistwright/paper';
import {
  airOptionsOf,
  type FigureFacts,
  favouriteColourway,
  figureFacts,
  filterMakeable,
  finished,
  type MakeableFigure,
  type MakeableFilter,
  makeableFigures,
  paintsOf,
  usualFill,
} from '@twistwright/planner';
import {
  checkRecipe,
  learningOrder,
  pictureOfShape,
  readRecipe,
  recipeWords,
  rescale,
  shapeOf,
  stepsOf,
  writeRecipe,
} from '@twistwright/repertoire';
import type { LocalDate, Problem } from '@twistwright/units';
import type { Arguments, Flag } from './arguments.ts';
import { calibrateSize } from './figure-calibration.ts';
import { namesOfFill, writeFigure, writeFigureList, writeRecipeWords } from './figure-pages.ts';
import { figureBook, figureNamed, readColours } from './figure-source.ts';
import { problemText } from './open-book.ts';
import type { ExitCode, Outside } from './outside.ts';
import { pageFor } from './page.ts';
import type { Command } from './run-command.ts';

interface Deed {
  readonly takes: string;
  readonly says: string;
  /** Flags it understands; `book`, `json` and `today` go with all. */
  readonly flags: readonly string[];
  readonly words: number;
  readonly run: (asked: Asked) => Promise<ExitCode>;
}
export interface Asked {
  readonly args: Arguments;
  readonly outside: Outside;
  readonly book: Book;
  /** ID or FILE behind the deed, if any. */
  readonly name: string;
  readonly today: LocalDate;
}

const flags: readonly Flag[] = [
  { name: 'book', takes: 'text', says: 'look figures up in this book; without it, among the shipped ones' },
  { name: 'json', takes: 'nothing', says: 'print JSON instead of a page' },
  { name: 'today', takes: 'day', says: 'the day that stands on papers, YYYY-MM-DD' },
  { name: 'svg', takes: 'text', says: 'picture: the file to write, or - for the terminal' },
  { name: 'pdf', takes: 'text', says: 'card, board: the file to write' },
  { name: 'colourway', takes: 'text', says: 'show, picture, card: in this colourway, by its id' },
  { name: 'colours', takes: 'text', says: 'picture: colours by role, such as body=red,eyes=#ffffff' },
  { name: 'view', takes: 'text', says: 'picture: side, quarter, front, turned or top' },
  { name: 'step', takes: 'number', says: 'picture: the figure as it is after so many steps' },
  { name: 'paper', takes: 'text', says: 'card, board: A4, Letter, A3 or Tabloid' },
  { name: 'landscape', takes: 'nothing', says: 'board: wider than high' },
  { name: 'gig', takes: 'text', says: 'board: only the menu of this gig' },
  { name: 'from', takes: 'text', says: 'list: what can be made from this place, by its id' },
  { name: 'minutes', takes: 'number', says: 'list: in at most so many minutes' },
  { name: 'balloons', takes: 'text', says: 'list: with so many balloons, such as 2 or 1-3' },
  { name: 'makeable', takes: 'nothing', says: 'list: only what can be made' },
  { name: 'learning', takes: 'nothing', says: 'list: in an order in which each figure adds as little new as possible' },
  { name: 'rescale', takes: 'text', says: 'show: with other balloons, such as 260=160' },
  { name: 'maker', takes: 'text', says: 'calibrate: whose balloons they are' },
  { name: 'flat', takes: 'text', says: 'calibrate: flat inches from the knot of some balloons, such as 10.6,10.8' },
  { name: 'full', takes: 'text', says: 'calibrate: inches of balloons blown up fully' },
  { name: 'twists', takes: 'text', says: 'calibrate: bubbles, tail before and tail after in flat inches, such as 10,4,1.2' },
  { name: 'item', takes: 'text', says: 'calibrate: the item of the book that the bag was bought as, by its id' },
  { name: 'save', takes: 'nothing', says: 'calibrate: write the test into the book; without it nothing is changed' },
];
const everywhere = ['book', 'json', 'today'];

const deeds: Readonly<Record<string, Deed>> = {
  show: { takes: 'ID|FILE', says: 'recipe, air and tail, steps, minutes', flags: ['colourway', 'rescale'], words: 1, run: show },
  check: { takes: 'FILE', says: 'what is wrong with a recipe, with line and column', flags: [], words: 1, run: check },
  picture: {
    takes: 'ID|FILE --svg OUT',
    says: 'the figure as SVG',
    flags: ['svg', 'colourway', 'colours', 'view', 'step'],
    words: 1,
    run: picture,
  },
  card: { takes: 'ID|FILE --pdf OUT', says: 'a card to make it by', flags: ['pdf', 'colourway', 'paper'], words: 1, run: card },
  board: { takes: '--pdf OUT [--gig ID]', says: 'the menu board', flags: ['pdf', 'gig', 'paper', 'landscape'], words: 0, run: board },
  list: {
    takes: '',
    says: 'all figures, and what can be made',
    flags: ['from', 'minutes', 'balloons', 'makeable', 'learning'],
    words: 0,
    run: list,
  },
  words: { takes: '', says: 'the words of the notation, each with its meaning and a line with it', flags: [], words: 0, run: words },
  calibrate: {
    takes: 'SIZE [--flat ... --full ... --twists ... --save]',
    says: 'what two-minute tests, those of the book and one more, say of the balloons of a maker',
    flags: ['maker', 'flat', 'full', 'twists', 'item', 'save'],
    words: 1,
    run: calibrateSize,
  },
};

export const figureCommand: Command = {
  name: 'figure',
  takes: `DEED [ID|FILE] ...\n${Object.entries(deeds)
    .map(([name, deed]) => `    ${`${name} ${deed.takes}`.padEnd(30)} ${deed.says}`)
    .join('\n')}`,
  says: 'show, check, draw and print figures: recipe, picture, card, menu board',
  flags,
  words: [1, 2],
  run: async (args, outside) => {
    const [word = '', name = ''] = args.words;
    const deed = deeds[word];
    const wrong =
      deed === undefined ? `There is no "figure ${word}"; there are ${Object.keys(deeds).join(', ')}.` : misuse(word, deed, args);
    if (wrong !== undefined || deed === undefined) {
      outside.err(`${wrong}\n`);
      return 2;
    }
    const opened = await figureBook(args, outside);
    if (!opened.ok) return tellProblems(opened.problems, opened.file, args, outside);
    return deed.run({ args, outside, book: opened.book, name, today: args.day('today') ?? outside.today(opened.book.business.zone) });
  },
};

function misuse(word: string, deed: Deed, args: Arguments): string | undefined {
  if (args.words.length - 1 !== deed.words) return `Write: twistwright figure ${word} ${deed.takes}`.trimEnd();
  const lost = flags.find(({ name }) => args.has(name) && !everywhere.includes(name) && !deed.flags.includes(name));
  if (lost !== undefined) return `--${lost.name} does not go with "figure ${word}".`;
  const paper = args.text('paper');
  if (paper !== undefined && paperNamed(paper) === undefined) return `--paper takes ${paperSizes.join(', ')}, not "${paper}".`;
  if (deed.flags.includes('pdf') && args.text('pdf') === undefined) return 'Say where to write it: --pdf FILE.';
  if (deed.flags.includes('svg') && args.text('svg') === undefined && !args.has('json')) return 'Say where to write it: --svg FILE.';
  return undefined;
}
/** Their names only: the room that makes papers is entered when one is made, since it takes a while to open. */
const paperSizes: readonly PaperSize[] = ['A4', 'Letter', 'A3', 'Tabloid'];
export const paperNamed = (text: string): PaperSize | undefined => paperSizes.find((size) => size.toLowerCase() === text.toLowerCase());

function tellProblems(problems: readonly Problem[], file: string, args: Arguments, outside: Outside): 1 {
  if (args.has('json')) outside.out(`${JSON.stringify({ problems }, undefined, 2)}\n`);
  else for (const problem of problems) outside.err(`${problemText(problem, file)}\n`);
  return 1;
}

interface Found {
  readonly facts: FigureFacts;
  /** The colourway that was asked for, else the favourite one, else a colour for every role. */
  readonly way: Colourway;
}

async function find({ args, outside, book, name }: Asked): Promise<Found | ExitCode> {
  const figure = await figureNamed(name, book, outside);
  if (figure === undefined) {
    outside.err(`There is no figure "${name}"${nearest(name, book)}, and no file of that name.\n`);
    return 1;
  }
  const asked = args.text('colourway');
  const way = asked === undefined ? favouriteColourway(figure) : figure.colourways.find((entry) => entry.id === asked);
  if (way === undefined && asked !== undefined) {
    outside.err(`"${figure.id}" has no colourway "${asked}"; it has ${figure.colourways.map(({ id }) => id).join(', ') || 'none'}.\n`);
    return 1;
  }
  const facts = figureFacts(book, figure, { way });
  if (!facts.ok) return tellProblems(facts.error, name, args, outside);
  return { facts: facts.value, way: way ?? { id: 'usual', name: 'Usual', fill: usualFill(facts.value.roles) } };
}
const nearest = (name: string, book: Book): string => {
  const like = book.figures.filter(({ id }) => id.includes(name.toLowerCase()) || name.toLowerCase().includes(id)).map(({ id }) => id);
  return like.length === 0 ? '' : ` (perhaps ${like.slice(0, 3).join(', ')})`;
};

async function show(asked: Asked): Promise<ExitCode> {
  const { args, outside, book } = asked;
  const found = await find(asked);
  if (typeof found === 'number') return found;
  const { way } = found;
  const facts = rescaled(found.facts, way, asked);
  if (typeof facts === 'number') return facts;
  const steps = stepsOf(facts.recipe, { ...airOptionsOf(book, way), colours: namesOfFill(book, way) });
  if (args.has('json')) {
    outside.out(`${JSON.stringify({ ...facts, colourway: way, steps }, undefined, 2)}\n`);
    return 0;
  }
  const page = pageFor(outside.isTerminal);
  writeFigure(page, book, facts, way, steps);
  outside.out(page.text());
  return 0;
}

/** The same figure with other balloons, if that is asked for. */
function rescaled(facts: FigureFacts, way: Colourway, { args, outside, book, name }: Asked): FigureFacts | ExitCode {
  const wish = args.text('rescale');
  if (wish === undefined) return facts;
  const [from = '', to = '', more] = wish.split('=');
  if (from === '' || to === '' || more !== undefined) {
    outside.err(`--rescale takes two size codes such as 260=160, not "${wish}".\n`);
    return 2;
  }
  const recipe = rescale(facts.recipe, from, to, airOptionsOf(book).sizes);
  if (!recipe.ok) return tellProblems(recipe.error, name, args, outside);
  const { minutes: _minutes, ...figure } = facts.figure;
  const again = figureFacts(book, { ...figure, recipe: writeRecipe(recipe.value) }, { way });
  return again.ok ? again.value : tellProblems(again.error, name, args, outside);
}

async function check({ args, outside, book, name }: Asked): Promise<ExitCode> {
  const figure = await figureNamed(name, book, outside);
  if (figure === undefined) {
    outside.err(`${name} cannot be read, and no figure has that id.\n`);
    return 1;
  }
  const problems = checkRecipe(figure.recipe ?? '', airOptionsOf(book, favouriteColourway(figure)));
  if (args.has('json')) outside.out(`${JSON.stringify({ problems }, undefined, 2)}\n`);
  else if (problems.length === 0) {
    const read = readRecipe(figure.recipe ?? '');
    outside.out(`The recipe is in order${read.ok && read.value.pieces.length === 0 ? ', and takes no balloon' : ''}.\n`);
  } else outside.out(`${problems.map((problem) => problemText(problem, basename(name))).join('\n')}\n`);
  return problems.some((problem) => problem.weight === 'error') ? 1 : 0;
}

const viewNames = ['side', 'quarter', 'front', 'turned', 'top'] as const;

async function picture(asked: Asked): Promise<ExitCode> {
  const { args, outside, book } = asked;
  const view = viewNames.find((name) => name === args.text('view'));
  if (view === undefined && args.has('view')) {
    outside.err(`--view takes ${viewNames.join(', ')}, not "${args.text('view')}".\n`);
    return 2;
  }
  const found = await find(asked);
  if (typeof found === 'number') return found;
  const { facts, way } = found;
  const colours = args.text('colours') === undefined ? undefined : readColours(args.text('colours') ?? '', facts.roles, book);
  if (colours !== undefined && !colours.ok) {
    outside.err(`${colours.error}\n`);
    return 2;
  }
  const steps = stepsOf(facts.recipe, airOptionsOf(book, way));
  const wanted = args.number('step');
  const step = wanted === undefined ? undefined : steps.find(({ number }) => number === wanted);
  if (wanted !== undefined && step === undefined) {
    outside.err(`"${facts.figure.name}" has steps 1 to ${steps.length}, not ${wanted}.\n`);
    return 2;
  }
  const fill = { ...way.fill, ...colours?.value };
  const svg = pictureOfShape(shapeOf(finished(facts.recipe, way), airOptionsOf(book).sizes), facts.recipe.finishing, paintsOf(book, fill), {
    title: facts.figure.name,
    ...(view === undefined ? {} : { view }),
    ...(step === undefined ? {} : { upToMove: step.deeds }),
  });
  const out = args.text('svg');
  if (args.has('json')) outside.out(`${JSON.stringify({ figure: facts.figure.id, fill, svg }, undefined, 2)}\n`);
  else if (out === '-') outside.out(`${svg}\n`);
  if (out !== undefined && out !== '-') {
    await outside.writeFile(out, svg);
    if (!args.has('json')) outside.out(`${facts.figure.name} is drawn in ${out}.\n`);
  }
  return 0;
}

async function card(asked: Asked): Promise<ExitCode> {
  const { args, outside, book, today } = asked;
  const found = await find(asked);
  if (typeof found === 'number') return found;
  const out = args.text('pdf') ?? '';
  const size = paperNamed(args.text('paper') ?? '');
  const { recipeCardPdf } = await import('@twistwright/paper');
  await outside.writeFile(out, await recipeCardPdf(book, found.facts, found.way, { made: today, ...(size === undefined ? {} : { size }) }));
  return written(args, outside, out, `The card of ${found.facts.figure.name.toLowerCase()} is in ${out}.`);
}

async function board({ args, outside, book, today }: Asked): Promise<ExitCode> {
  const gigId = args.text('gig');
  const gig = gigId === undefined ? undefined : book.gigs.find((entry) => entry.id === gigId);
  if (gigId !== undefined && gig === undefined) {
    outside.err(`There is no gig "${gigId}" in the book.\n`);
    return 1;
  }
  const out = args.text('pdf') ?? '';
  const size = paperNamed(args.text('paper') ?? '');
  const { menuBoardPdf } = await import('@twistwright/paper');
  const made = await menuBoardPdf(book, {
    made: today,
    landscape: args.has('landscape'),
    ...(gig === undefined ? {} : { gig }),
    ...(size === undefined ? {} : { size }),
  });
  if (!made.ok) return tellProblems(made.error, args.text('book') ?? 'figures', args, outside);
  for (const problem of made.value.leftOut) outside.err(`${problemText(problem, args.text('book') ?? 'figures')}\n`);
  await outside.writeFile(out, made.value.pdf);
  return written(args, outside, out, `The menu board with ${made.value.figures} figures is in ${out}.`);
}

function written(args: Arguments, outside: Outside, file: string, sentence: string): 0 {
  outside.out(args.has('json') ? `${JSON.stringify({ written: file })}\n` : `${sentence}\n`);
  return 0;
}

async function list({ args, outside, book, today }: Asked): Promise<ExitCode> {
  const place = args.text('from');
  const known = book.places.find((entry) => entry.id === place);
  if (place !== undefined && known === undefined) {
    outside.err(`There is no place "${place}" in the book; there are ${book.places.map(({ id }) => id).join(', ') || 'none'}.\n`);
    return 1;
  }
  const filter = readFilter(args);
  if (typeof filter === 'string') {
    outside.err(`${filter}\n`);
    return 2;
  }
  const stock = stockOf(book.moves, today);
  const lines = place === undefined ? stock.lines : stock.lines.filter((line) => line.place === place);
  const all = makeableFigures(book, countsByItem({ ...stock, lines }));
  const matching = filterMakeable(all, filter);
  const shown = args.has('learning') ? inLearningOrder(matching) : matching;
  if (args.has('json')) {
    outside.out(
      `${JSON.stringify({ figures: shown.map((entry) => ({ ...entry, facts: entry.facts === undefined ? undefined : shortFacts(entry.facts) })) }, undefined, 2)}\n`,
    );
    return 0;
  }
  const page = pageFor(outside.isTerminal);
  writeFigureList(page, book, all, shown, known === undefined ? 'there' : `in the ${known.name.toLowerCase()}`);
  outside.out(page.text());
  return 0;
}
/** Easiest first, each adding as little new as possible; figures that cannot be read come last. */
function inLearningOrder(figures: readonly MakeableFigure[]): readonly MakeableFigure[] {
  const lessons = learningOrder(
    figures.flatMap(({ figure, facts }) =>
      facts === undefined
        ? []
        : [
            {
              id: figure.id,
              recipe: facts.recipe,
              minutes: facts.minutes.p50,
              ...(figure.difficulty === undefined ? {} : { difficulty: figure.difficulty }),
            },
          ],
    ),
  );
  const place = new Map(lessons.map((lesson, index) => [lesson.id, index]));
  return figures.toSorted((a, b) => (place.get(a.figure.id) ?? figures.length) - (place.get(b.figure.id) ?? figures.length));
}

const shortFacts = ({ minutes, balloons, bubbles, techniques, air }: FigureFacts) => ({
  minutes,
  balloons,
  bubbles,
  techniques,
  verdict: air.verdict,
  litres: air.litres,
});

async function words({ args, outside }: Asked): Promise<ExitCode> {
  if (args.has('json')) {
    outside.out(`${JSON.stringify({ words: recipeWords }, undefined, 2)}\n`);
    return 0;
  }
  const page = pageFor(outside.isTerminal);
  writeRecipeWords(page);
  outside.out(page.text());
  return 0;
}

function readFilter(args: Arguments): MakeableFilter | string {
  const minutes = args.number('minutes');
  if (minutes !== undefined && !(minutes > 0)) return `--minutes takes a number above 0, not ${minutes}.`;
  const balloons = args.text('balloons');
  const range = balloons === undefined ? undefined : /^(\d{1,4})(?:-(\d{1,4}))?$/u.exec(balloons);
  if (range === null) return `--balloons takes a number or two with a dash, such as 1-3, not "${balloons}".`;
  const least = Number(range?.[1]);
  const most = Number(range?.[2] ?? range?.[1]);
  if (range !== undefined && least > most) return `--balloons takes the smaller number first, such as ${most}-${least}.`;
  return {
    makeable: args.has('makeable'),
    ...(minutes === undefined ? {} : { mostMinutes: minutes }),
    ...(range === undefined ? {} : { leastBalloons: least, mostBalloons: most }),
  };
}
