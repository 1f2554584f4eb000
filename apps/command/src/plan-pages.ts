import type { Book } from '@twistwright/books';
import {
  type Charge,
  chanceInWords,
  clockAt,
  count,
  type ForecastSummary,
  type GigPlan,
  itemName,
  type Needs,
  oneDecimal,
  type PackingPlan,
  range,
  sayCharge,
  sayForecast,
  sayNeeds,
  shortItems,
} from '@twistwright/planner';
import { decimalOf, longDate, roundToMoney, type Spread } from '@twistwright/units';
import type { Page } from './page.ts';

/** Name, day, time, place and hands of a gig. */
export function writeGigHead(page: Page, { gig }: GigPlan, book: Book): void {
  const artists = gig.artists.map((id) => book.artists.find((artist) => artist.id === id)?.name ?? id).join(' and ');
  page.say(gig.name);
  page.tell(
    `${longDate(gig.day)}, ${gig.starts} to ${gig.ends}${gig.where === undefined ? '' : `, ${gig.where.name}`}. ${gig.kind}, ${artists}. (${gig.id})`,
  );
}

export function writeForecast(page: Page, plan: GigPlan, full: boolean): void {
  const { gig, forecast } = plan;
  const said = sayForecast(gig, forecast.summary);
  page.say(said.answer);
  for (const sentence of said.more) page.tell(sentence);
  if (!full) return;
  page.gap();
  page.table(
    ['', '10th', 'middle', '90th', 'mean', '+/-'],
    rowsOf(forecast.summary, (minute) => clockAt(gig.starts, minute)),
  );
  if (forecast.summary.figures.length > 0) {
    page.gap();
    page.table(
      ['Figure', '10th', 'middle', '90th'],
      forecast.summary.figures.map(({ figure, made }) => [figure, count(made.p10), count(made.p50), count(made.p90)]),
    );
  }
}

/** All rows of a forecast; a Monte-Carlo standard error of the mean in the last column. */
function rowsOf(summary: ForecastSummary, clock: (minute: number) => string): readonly (readonly string[])[] {
  const plain = (name: string, spread: Spread, show: (value: number) => string): readonly string[] => [
    name,
    show(spread.p10),
    show(spread.p50),
    show(spread.p90),
    oneDecimal(spread.mean),
    spread.error.toPrecision(2),
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
    `${spread.error.toPrecision(2)} min`,
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
    plain('mean wait, min', summary.meanWait, oneDecimal),
    plain('last wait, min', summary.lastWait, oneDecimal),
    plain('longest wait, min', summary.longestWait, oneDecimal),
    share(`waited at most ${summary.promiseMinutes} min, %`, summary.shareWithin),
    plain('longest line', summary.longestLine, count),
    time('line closed at', summary.closedAt),
    time('last one done at', summary.finish),
    plain('popped', summary.pops, count),
    ...summary.busy.map(({ artist, share: part }) => share(`${artist} making, % of the time`, part)),
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
    ['Item', 'mean', '50 %', '90 %', '95 %', 'enough', 'have', 'on order', 'short', 'because of'],
    rows.map((item) => [
      itemName(book, item.item),
      oneDecimal(item.mean),
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
    `"enough" is for all items together: nothing asked for runs out in ${chanceInWords(needs.chance)} futures (${needs.runs} were played).`,
  );
}

export function writePacking(page: Page, book: Book, packing: PackingPlan): void {
  const missing = packing.missing.length;
  page.say(
    missing === 0
      ? `Everything to pack is there: ${packing.total} lines.`
      : `${missing} of ${packing.total} lines to pack are not complete.`,
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
    page.tell(`Leave at home: ${packing.leaveAtHome.map((line) => `${line.count} ${line.name}`).join(', ')}.`);
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
    ['What', 'how', currency],
    [
      ...charge.lines.map((line) => [line.what, line.how, amount(line.amount)]),
      ...(charge.tax === undefined ? [] : [[charge.tax.name, `${charge.tax.basisPoints / 100} %`, amount(charge.tax.amount)]]),
    ],
    { foot: ['Quote', '', amount(charge.quote)] },
  );
  page.gap();
  const { floor } = charge;
  page.table(
    ['What it costs', 'how', currency],
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
  page.tell(
    `${charge.deposit === undefined ? '' : `Deposit ${amount(charge.deposit.amount)}${charge.deposit.paidOn === undefined ? ', not paid' : `, paid on ${charge.deposit.paidOn}`}. `}Balance ${amount(charge.balance.amount)} due on ${charge.balance.dueOn}.`,
  );
}
