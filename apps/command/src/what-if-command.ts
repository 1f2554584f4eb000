import { type Book, type Gig, planningSettingsOf } from '@twistwright/books';
import { clockAt, compareGigs, count, itemName, sayForecast, type WhatIf, type WhatIfSide } from '@twistwright/planner';
import { decimalOf, roundToMoney, type Spread } from '@twistwright/units';
import { type Arguments, commonFlags, outOfRange } from './arguments.ts';
import { openBook, refuse } from './open-book.ts';
import type { ExitCode, Outside } from './outside.ts';
import { type Page, pageFor } from './page.ts';
import type { Command } from './run-command.ts';

const weathers = ['mild', 'hot', 'cold', 'wet'] as const;

export const whatIfCommand: Command = {
  name: 'what-if',
  takes: 'BOOK --gig ID [--guests N] [--hours H] [--artists N] [--without FIGURE,...] [--weather W]',
  says: 'compare a change of mind with the gig as it stands; everybody keeps their luck',
  flags: [
    ...commonFlags,
    { name: 'gig', takes: 'text', says: 'the gig, by its id' },
    { name: 'guests', takes: 'number', says: 'so many guests instead' },
    { name: 'more-guests', takes: 'number', says: 'so many guests more (fewer if negative)' },
    { name: 'hours', takes: 'number', says: 'so long instead' },
    { name: 'artists', takes: 'number', says: 'so many artists instead' },
    { name: 'without', takes: 'text', says: 'figures taken off the menu, by id, comma between them' },
    { name: 'weather', takes: 'text', says: `one of ${weathers.join(', ')}` },
    { name: 'closing', takes: 'text', says: 'none, or minutes before the end, or "work ahead"' },
  ],
  words: [1, 1],
  run: async (args, outside) => {
    const [path = ''] = args.words;
    const id = args.text('gig');
    const wrong = outOfRange(args);
    if (wrong !== undefined) {
      outside.err(`${wrong}\n`);
      return 2;
    }
    const opened = await openBook(path, args.day('today'), outside);
    if (!opened.ok) return refuse(opened.problems, path, args, outside);
    const gig = opened.book.gigs.find((candidate) => candidate.id === id);
    if (gig === undefined) {
      outside.err(
        id === undefined
          ? 'Say which gig: --gig ID.\n'
          : `There is no gig "${id}" in the book; there are ${opened.book.gigs.map((known) => known.id).join(', ')}.\n`,
      );
      return id === undefined ? 2 : 1;
    }
    const change = changeOf(args, gig);
    if (typeof change === 'string') {
      outside.err(`${change}\n`);
      return 2;
    }
    return compare(opened.book, gig, change, path, args, outside);
  },
};

/** The change that the flags ask for, or a sentence about the flag that makes no sense. */
function changeOf(args: Arguments, gig: Gig): WhatIf | string {
  const change: { -readonly [K in keyof WhatIf]: WhatIf[K] } = {};
  const guests =
    args.number('guests') ?? (args.number('more-guests') === undefined ? undefined : (gig.guests ?? 0) + (args.number('more-guests') ?? 0));
  if (guests !== undefined) {
    if (guests < 0) return `There cannot be ${guests} guests: ${gig.guests ?? 0} are expected now.`;
    change.guests = guests;
  }
  const hours = args.number('hours');
  if (hours !== undefined) {
    if (!(hours > 0 && hours <= 24)) return `--hours takes more than 0 and at most 24, not ${hours}.`;
    change.hours = hours;
  }
  const artists = args.number('artists');
  if (artists !== undefined) {
    change.artists = artists;
  }
  const without = args
    .text('without')
    ?.split(',')
    .map((word) => word.trim());
  if (without !== undefined) {
    const unknown = without.filter((figure) => !gig.menu.some((line) => line.figure === figure));
    if (unknown.length > 0) return `Not on the menu: ${unknown.join(', ')}. On it: ${gig.menu.map((line) => line.figure).join(', ')}.`;
    change.figures = gig.menu.map((line) => line.figure).filter((figure) => !without.includes(figure));
    if (change.figures.length === 0) return 'Nothing would be left on the menu.';
  }
  const weather = args.text('weather');
  if (weather !== undefined) {
    const known = weathers.find((word) => word === weather);
    if (known === undefined) return `--weather is one of ${weathers.join(', ')}, not "${weather}".`;
    change.weather = known;
  }
  const closing = args.text('closing');
  if (closing !== undefined) {
    const minutes = Number(closing);
    if (closing === 'none') change.closing = { rule: 'none' };
    else if (closing === 'work ahead') change.closing = { rule: 'work ahead', keptBackMinutes: 5 };
    else if (Number.isFinite(minutes) && minutes >= 0) change.closing = { rule: 'fixed time', minutesBeforeEnd: minutes };
    else return `--closing takes none, "work ahead" or minutes before the end, not "${closing}".`;
  }
  if (Object.keys(change).length === 0) return 'Say what changes: --guests, --hours, --artists, --without, --weather or --closing.';
  return change;
}

function compare(book: Book, gig: Gig, change: WhatIf, path: string, args: Arguments, outside: Outside): ExitCode {
  const settings = planningSettingsOf(book);
  const options = { seed: args.number('seed') ?? settings.seed, runs: args.number('runs') ?? settings.runs };
  const compared = compareGigs(book, gig, change, options);
  if (!compared.ok) return refuse(compared.error, path, args, outside);
  const { before, after } = compared.value;
  if (args.has('json')) {
    const plain = ({ takes, ...side }: WhatIfSide) => ({ ...side, takes: Object.fromEntries(takes) });
    outside.out(`${JSON.stringify({ ...options, change, before: plain(before), after: plain(after) }, undefined, 2)}\n`);
    return 0;
  }
  const page = pageFor(outside.isTerminal);
  write(page, book, before, after);
  outside.out(page.text());
  return 0;
}

function write(page: Page, book: Book, before: WhatIfSide, after: WhatIfSide): void {
  const { currency } = book.business;
  const money = (amount: number): string => decimalOf(roundToMoney(amount), currency);
  page.say(before.gig.name);
  page.tell(`As it stands: ${sayForecast(before.gig, before.forecast).answer}`);
  page.tell(`After the change: ${sayForecast(after.gig, after.forecast).answer}`);
  page.gap();
  const spread = (of: Spread, show: (value: number) => string): string => `${show(of.p50)} (${show(of.p10)} to ${show(of.p90)})`;
  const row = (name: string, of: (side: WhatIfSide) => string): readonly string[] => [name, of(before), of(after)];
  page.table(
    ['', 'as it stands', 'after the change'],
    [
      row('guests who come', (side) => spread(side.forecast.arrived, count)),
      row('served', (side) => spread(side.forecast.served, count)),
      row('last wait, min', (side) => spread(side.forecast.lastWait, count)),
      row('longest line', (side) => spread(side.forecast.longestLine, count)),
      row('turned away', (side) => spread(side.forecast.turnedAway, count)),
      row('did not join', (side) => spread(side.forecast.notJoined, count)),
      row('gave up', (side) => spread(side.forecast.gaveUp, count)),
      row('still waiting at the end', (side) => spread(side.forecast.unserved, count)),
      row('last one done at', (side) => spread(side.forecast.finish, (minute) => clockAt(side.gig.starts, minute))),
      row(`quote, ${currency}`, (side) => money(side.quote)),
      row(`true hour earns, ${currency}`, (side) => spread(side.hourly, money)),
    ],
  );
  page.tell('In brackets: 10th to 90th of 100 afternoons. Everybody who comes either way has the same luck on both sides.');
  const items = [...new Set([...before.takes.keys(), ...after.takes.keys()])];
  const moved = items
    .map((item) => ({ item, was: before.takes.get(item)?.enough ?? 0, is: after.takes.get(item)?.enough ?? 0 }))
    .filter(({ was, is }) => was !== is)
    .sort((a, b) => Math.abs(b.is - b.was) - Math.abs(a.is - a.was))
    .slice(0, mostItems);
  if (moved.length === 0) return;
  page.gap();
  page.tell('Balloons to take, where they change most:');
  page.table(
    ['what', 'as it stands', 'after', 'difference'],
    moved.map(({ item, was, is }) => [itemName(book, item), was, is, `${is > was ? '+' : ''}${is - was}`]),
  );
}
const mostItems = 12;
