import type { Book } from '@twistwright/books';
import {
  type Charge,
  clockAt,
  count,
  counted,
  type ForecastSummary,
  type GigPlan,
  itemName,
  listed,
  type Needs,
  oneDecimal,
  type PackingPlan,
  partInWords,
  range,
  sayCharge,
  sayForecast,
  sayNeeds,
  shortItems,
} from '@twistwright/planner';
import { decimalOf, longDate, roundToMoney, type Spread, showMoney } from '@twistwright/units';
import type { Page } from './page.ts';

/** Name, day, time, place and hands of a gig. */
export function writeGigHead(page: Page, { gig }: GigPlan, book: Book): void {
  const artists = gig.artists.length === 0 ? 'nobody booked yet' : listed(gig.artists.map((id) => nameOfArtist(book, id)));
  page.say(gig.name);
  page.tell(
    `${longDate(gig.day)}, ${gig.starts} to ${gig.ends}${gig.where === undefined ? '' : `, ${gig.where.name}`}. ${gig.kind.charAt(0).toUpperCase()}${gig.kind.slice(1)}: ${artists}. (${gig.id})`,
  );
}
const nameOfArtist = (book: Book, id: string): string => book.artists.find((artist) => artist.id === id)?.name ?? id;
const nameOfFigure = (book: Book, id: string): string => book.figures.find((figure) => figure.id === id)?.name ?? id;

/** Sentences; with the book also every number. */
export function writeForecast(page: Page, plan: GigPlan, book?: Book): void {
  const { gig, forecast } = plan;
  const said = sayForecast(gig, forecast.summary);
  page.say(said.answer);
  for (const sentence of said.more) page.tell(sentence);
  if (book === undefined) return;
  page.gap();
  page.table(
    ['', '10th', 'middle', '90th', 'mean', 'error'],
    rowsOf(
      forecast.summary,
      (minute) => clockAt(gig.starts, minute),
      (id) => nameOfArtist(book, id),
    ),
  );
  page.tell(
    `Played ${counted(forecast.summary.runs, 'time')}: 1 in 10 was below the 10th, 1 in 10 above the 90th. "error" is the standard error of the mean, from playing only so often.`,
  );
  if (forecast.summary.figures.length > 0) {
    page.gap();
    page.table(
      ['figure', '10th', 'middle', '90th'],
      forecast.summary.figures.map(({ figure, made }) => [nameOfFigure(book, figure), count(made.p10), count(made.p50), count(made.p90)]),
    );
  }
}

/** One decimal, also where it is nought, so that numbers stand below one another. */
const tenths = (value: number): string => value.toFixed(1);

/** All rows of a forecast; a Monte-Carlo standard error of the mean in the last column. */
function rowsOf(
  summary: ForecastSummary,
  clock: (minute: number) => string,
  artistName: (id: string) => string,
): readonly (readonly string[])[] {
  const plain = (name: string, spread: Spread, show: (value: number) => string): readonly string[] => [
    name,
    show(spread.p10),
    show(spread.p50),
    show(spread.p90),
    tenths(spread.mean),
    spread.error.toFixed(3),
  ];
  const share = (name: string, spread: Spread): readonly string[] =>
    plain(
      name,
      {
        ...spread,
        p10: 100 * spread.p10,
        p50: 100 * spread.p50,
        p90: 100 * spread.p90,
        mean: 100 * spread.mean,
        error: 100 * spread.error,
      },
      count,
    );
  const time = (name: string, spread: Spread): readonly string[] => [
    name,
    clock(spread.p10),
    clock(spread.p50),
    clock(spread.p90),
    clock(spread.mean),
    spread.error.toFixed(3),
  ];
  return [
    plain('guests who came', summary.arrived, count),
    plain('served', summary.served, count),
    share('served, % of those who came', summary.shareServed),
    plain('turned away', summary.turnedAway, count),
    plain('did not join', summary.notJoined, count),
    plain('gave up', summary.gaveUp, count),
    plain('still waiting at the end', summary.unserved, count),
    plain('found nothing in stock', summary.disappointed, count),
    share('had to wait, %', summary.shareWaited),
    plain('wait of all who came, min', summary.meanWaitOfAll, tenths),
    plain('wait of those served, min', summary.meanWait, tenths),
    plain('last wait, min', summary.lastWait, tenths),
    plain('longest wait, min', summary.longestWait, tenths),
    share(`waited at most ${summary.promiseMinutes} min, %`, summary.shareWithin),
    plain('longest line', summary.longestLine, count),
    time('line closed at', summary.closedAt),
    time('last one done at', summary.finish),
    plain('popped', summary.pops, count),
    ...summary.busy.map(({ artist, share: part }) => share(`${artistName(artist)} making, % of the time`, part)),
  ];
}

export function writeNeeds(page: Page, book: Book, needs: Needs, full: boolean): void {
  const said = sayNeeds(book, needs);
  page.say(said.answer);
  for (const sentence of said.more) page.tell(sentence);
  const rows = full ? needs.items.filter((item) => item.p95 > 0) : shortItems(needs);
  if (rows.length === 0) return;
  page.gap();
  page.table(
    ['item', 'mean', '50 %', '90 %', '95 %', 'enough', 'have', 'on order', 'short', 'because of'],
    rows.map((item) => [
      itemName(book, item.item),
      tenths(item.mean),
      count(item.p50),
      count(item.p90),
      count(item.p95),
      item.wanted,
      item.have,
      item.onOrder,
      item.short,
      item.causes
        .slice(0, 3)
        .map((cause) => `${cause.gig ?? cause.reason ?? 'by hand'} ${Math.round(100 * cause.share)} %`)
        .join(', '),
    ]),
  );
  page.tell(
    `"enough" is for all items together: nothing asked for runs out in ${partInWords(needs.chance)} tries (${needs.runs} were played).`,
  );
}

export function writePacking(page: Page, book: Book, packing: PackingPlan): void {
  const missing = packing.missing.length;
  page.say(
    missing === 0
      ? `Everything to pack is there: ${counted(packing.total, 'line')}.`
      : `${missing} of ${counted(packing.total, 'line')} to pack ${missing === 1 ? 'is' : 'are'} not complete.`,
  );
  const placeName = (id: string): string => book.places.find((place) => place.id === id)?.name ?? id;
  for (const place of packing.places) {
    page.gap();
    page.tell(`Into the ${place.name.toLowerCase()}:`);
    page.table(
      ['', 'count', 'what', 'from'],
      place.lines.map((line) => [
        line.ticked ? '[x]' : '[ ]',
        line.count,
        line.name,
        [
          ...line.from.map((part) => `${part.count} ${part.already ? 'there already' : `from ${placeName(part.place).toLowerCase()}`}`),
          ...(line.missing > 0 ? [`${line.missing} missing${line.onOrder > 0 ? ` (${line.onOrder} on order)` : ''}`] : []),
        ].join(', '),
      ]),
    );
  }
  if (packing.leaveAtHome.length > 0) {
    page.gap();
    const counts = new Map<string, number>();
    for (const line of packing.leaveAtHome) counts.set(line.name, (counts.get(line.name) ?? 0) + line.count);
    page.tell(`Leave at home: ${[...counts].map(([name, pieces]) => `${pieces} × ${name}`).join('; ')}.`);
  }
}

export function writeCharge(page: Page, book: Book, charge: Charge): void {
  const { currency } = book.business;
  const amount = (minorUnits: number): string => decimalOf(roundToMoney(minorUnits), currency);
  const said = sayCharge(charge, currency);
  page.say(said.answer);
  for (const sentence of said.more) page.tell(sentence);
  page.gap();
  page.table(
    ['what', 'how', currency],
    [
      ...charge.lines.map((line) => [line.what, line.how, amount(line.amount)]),
      ...(charge.tax === undefined ? [] : [[charge.tax.name, `${charge.tax.basisPoints / 100} %`, amount(charge.tax.amount)]]),
    ],
    { foot: ['quote', '', amount(charge.quote)] },
  );
  page.gap();
  const { floor } = charge;
  page.table(
    ['what it costs', 'how', currency],
    [
      ['Balloons and extras', `10th to 90th: ${range(floor.materials, amount)}`, amount(floor.materials.p50)],
      [
        'Miles',
        `${oneDecimal(floor.milesDriven)} miles${floor.mileSource === undefined ? '' : ` (${floor.mileSource})`}`,
        amount(floor.miles),
      ],
      ['Share of fixed costs', '', amount(floor.fixedShare)],
      ['Kept for tax', 'ask your accountant', amount(floor.taxReserve.p50)],
      [
        'Hours',
        `${oneDecimal(floor.minutes.total / 60)} h: ${oneDecimal(floor.minutes.atGig / 60)} there, ${oneDecimal((floor.minutes.driving + floor.minutes.settingUp) / 60)} driving and setting up, ${oneDecimal(floor.minutes.preparing / 60)} preparing`,
        '',
      ],
    ],
  );
  page.gap();
  const { deposit, balance } = charge;
  const paid = deposit?.paidOn === undefined ? 'not paid yet' : `paid on ${longDate(deposit.paidOn)}`;
  page.tell(
    `${deposit === undefined ? '' : `Deposit ${showMoney(deposit.amount, currency)}, ${paid}. `}Balance ${showMoney(balance.amount, currency)}, due on ${longDate(balance.dueOn)}.${charge.overtimePerQuarter === undefined ? '' : ` Overtime: ${showMoney(charge.overtimePerQuarter, currency)} for every 15 minutes begun.`}`,
  );
}
