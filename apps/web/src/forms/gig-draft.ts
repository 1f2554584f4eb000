import type { Agreement, Arrivals, Book, Gig, GigKind, MenuLine } from '@twistwright/books';
import { addDays, type LocalDate, type Money, minuteOf } from '@twistwright/units';
import { newId } from '../book/change.ts';
import { FieldReader, moneyText, numberText } from './field-reader.ts';

/** The texts of the gig form. */
export interface GigDraft {
  readonly name: string;
  readonly kind: GigKind;
  readonly day: string;
  readonly starts: string;
  readonly ends: string;
  readonly where: string;
  readonly miles: string;
  readonly driveMinutes: string;
  readonly guests: string;
  readonly arrivals: 'as it is' | 'evenly' | 'busiest in the middle' | 'all at the start';
  readonly artists: readonly string[];
  /** Asking share by figure, as text; missing: not on the menu. */
  readonly menu: Readonly<Record<string, string>>;
  /** Pieces made to order, by figure. */
  readonly order: Readonly<Record<string, string>>;
  readonly tables: string;
  readonly practiceFactor: string;
  readonly weather: '' | 'mild' | 'hot' | 'cold' | 'wet';
  readonly outdoors: boolean;
  readonly state: Agreement['state'];
  readonly fee: string;
  readonly deposit: string;
  readonly depositPaidOn: string;
  readonly notes: string;
}

export function gigDraftOf(book: Book, gig: Gig | undefined, today: LocalDate): GigDraft {
  const currency = book.business.currency;
  return {
    name: gig?.name ?? '',
    kind: gig?.kind ?? 'line',
    day: gig?.day ?? addDays(today, 14),
    starts: gig?.starts ?? '14:00',
    ends: gig?.ends ?? '16:00',
    where: gig?.where?.name ?? '',
    miles: numberText(gig?.where?.miles),
    driveMinutes: numberText(gig?.where?.driveMinutes),
    guests: numberText(gig?.classPlan?.learners ?? gig?.guests),
    arrivals: arrivalsChoice(gig),
    artists: gig?.artists ?? book.artists.slice(0, 1).map((artist) => artist.id),
    menu: Object.fromEntries((gig?.menu ?? []).map((line) => [line.figure, String(line.share)])),
    order: Object.fromEntries((gig?.order ?? []).map((line) => [line.figure, String(line.count)])),
    tables: numberText(gig?.tables?.tables ?? 12),
    practiceFactor: numberText(gig?.classPlan?.practiceFactor ?? 2),
    weather: gig?.weather ?? '',
    outdoors: gig?.outdoors ?? false,
    state: gig?.agreement?.state ?? 'asked',
    fee: moneyText(gig?.agreement?.fee, currency),
    deposit: moneyText(gig?.agreement?.deposit, currency),
    depositPaidOn: gig?.agreement?.depositPaidOn ?? '',
    notes: gig?.notes ?? '',
  };
}
const arrivalsChoice = (gig: Gig | undefined): GigDraft['arrivals'] => {
  if (gig?.arrivals?.kind === 'all at the start') return 'all at the start';
  return gig?.arrivals === undefined ? 'evenly' : 'as it is';
};

/** The gig that the form describes, and a sentence for every field that does not make sense. */
export function readGigDraft(
  book: Book,
  draft: GigDraft,
  known: Gig | undefined,
  today: LocalDate,
): { readonly gig: Gig | undefined; readonly read: FieldReader } {
  const read = new FieldReader();
  const name = read.text('name', draft.name, 'a name for the gig');
  const day = read.day('day', draft.day);
  const starts = read.clock('starts', draft.starts);
  const ends = read.clock('ends', draft.ends);
  if (starts !== undefined && ends !== undefined && minuteOf(ends) <= minuteOf(starts))
    read.refuse('ends', `${ends} is not after ${starts}. A gig past midnight ends at 24:00 and has overtime, or is two gigs.`);
  if (day !== undefined && known === undefined && day < today) read.refuse('day', `${day} is in the past. Choose a day from ${today} on.`);
  const miles = read.optionalNumber('miles', draft.miles, { example: '12', most: 5000 });
  const driveMinutes = read.optionalNumber('driveMinutes', draft.driveMinutes, { example: '25', most: 2880 });
  const guests =
    draft.kind === 'made to order'
      ? undefined
      : read.number('guests', draft.guests, { example: '60', least: 1, most: 100_000, whole: true });
  const menu = menuOf(read, draft, known);
  const agreement = agreementOf(book, read, draft, known);
  const details = detailsOf(read, draft, known, menu);
  if (!read.isFine || day === undefined || starts === undefined || ends === undefined) return { gig: undefined, read };
  const {
    guests: _guests,
    arrivals: _arrivals,
    weather: _weather,
    outdoors: _outdoors,
    notes: _notes,
    where,
    ...kept
  } = known ?? ({} as Partial<Gig>);
  const length = minuteOf(ends) - minuteOf(starts);
  const arrivals = draft.arrivals === 'as it is' ? known?.arrivals : arrivalsOf(draft.arrivals, length);
  const venue = venueOf(draft.where, where, miles, driveMinutes);
  const gig: Gig = {
    ...kept,
    id: known?.id ?? newId(name, book.gigs),
    name,
    kind: draft.kind,
    day,
    starts,
    ends,
    artists: draft.artists,
    menu,
    agreement,
    ...(venue === undefined ? {} : { where: venue }),
    ...(guests === undefined ? {} : { guests }),
    ...(arrivals === undefined || !takesArrivals(draft.kind) ? {} : { arrivals }),
    ...(draft.weather === '' ? {} : { weather: draft.weather }),
    ...(draft.outdoors ? { outdoors: true } : {}),
    ...(draft.notes.trim() === '' ? {} : { notes: draft.notes.trim() }),
    ...details,
  };
  return { gig, read };
}

export const takesArrivals = (kind: GigKind): boolean => kind === 'line' || kind === 'tables' || kind === 'party';

function venueOf(name: string, known: Gig['where'], miles: number | undefined, driveMinutes: number | undefined): Gig['where'] {
  if (name.trim() === '' && miles === undefined && driveMinutes === undefined) return undefined;
  return {
    name: name.trim() === '' ? 'the venue' : name.trim(),
    ...(known?.address === undefined ? {} : { address: known.address }),
    ...(miles === undefined ? {} : { miles }),
    ...(driveMinutes === undefined ? {} : { driveMinutes }),
  };
}

function arrivalsOf(choice: Exclude<GigDraft['arrivals'], 'as it is'>, length: number): Arrivals {
  if (choice === 'all at the start') return { kind: 'all at the start' };
  const weights = choice === 'evenly' ? [1, 1, 1] : [0.6, 1.6, 0.4];
  return { kind: 'stream', profile: weights.map((weight, index) => ({ minute: (index * length) / 2, weight })) };
}

function menuOf(read: FieldReader, draft: GigDraft, known: Gig | undefined): readonly MenuLine[] {
  const lines = Object.entries(draft.menu).map(([figure, text]): MenuLine => {
    const share = read.number(`menu.${figure}`, text, { example: '2', least: 0.01, most: 1000 });
    const before = known?.menu.find((line) => line.figure === figure);
    return { figure, share, ...(before?.colourways === undefined ? {} : { colourways: before.colourways }) };
  });
  if (lines.length === 0 && draft.kind !== 'made to order') read.refuse('menu', 'Put at least one figure on the menu.');
  return lines;
}

function agreementOf(book: Book, read: FieldReader, draft: GigDraft, known: Gig | undefined): Agreement {
  const currency = book.business.currency;
  const amounts: { fee?: Money; deposit?: Money } = {};
  const fee = read.optionalMoney('fee', draft.fee, currency);
  const deposit = read.optionalMoney('deposit', draft.deposit, currency);
  if (fee !== undefined) amounts.fee = fee;
  if (deposit !== undefined) amounts.deposit = deposit;
  const paidOn = draft.depositPaidOn === '' ? undefined : read.day('depositPaidOn', draft.depositPaidOn);
  const { fee: _fee, deposit: _deposit, depositPaidOn: _paid, ...kept } = known?.agreement ?? {};
  return { ...kept, state: draft.state, ...amounts, ...(paidOn === undefined ? {} : { depositPaidOn: paidOn }) };
}

/** What only some kinds of gig have. */
function detailsOf(read: FieldReader, draft: GigDraft, known: Gig | undefined, menu: readonly MenuLine[]): Partial<Gig> {
  if (draft.kind === 'tables') {
    const tables = read.number('tables', draft.tables, { example: '12', least: 1, most: 2000, whole: true });
    const shipped = {
      foodAfter: { law: 'gamma', mean: 18, shape: 9 },
      leaveAfter: { law: 'log-normal', median: 40, sigma: 0.3 },
      walking: { law: 'fixed', minutes: 0.6 },
    } as const;
    return { tables: { ...shipped, ...known?.tables, tables } };
  }
  if (draft.kind === 'strolling') return { strolling: known?.strolling ?? { walking: { law: 'log-normal', median: 1, sigma: 0.4 } } };
  if (draft.kind === 'class') {
    const practiceFactor = read.number('practiceFactor', draft.practiceFactor, { example: '2', least: 1, most: 20 });
    const learners = Number(draft.guests) || 0;
    const lessons = known?.classPlan?.lessons ?? menu.map((line) => ({ figure: line.figure, minutes: 25 }));
    return { classPlan: { learners, practiceFactor, lessons } };
  }
  if (draft.kind !== 'made to order') return {};
  const order = Object.entries(draft.order).flatMap(([figure, text]) => {
    const count = read.optionalNumber(`order.${figure}`, text, { example: '10', least: 1, whole: true });
    const before = known?.order?.find((line) => line.figure === figure);
    return count === undefined ? [] : [{ figure, colourway: before?.colourway ?? '', count }];
  });
  if (order.length === 0) read.refuse('order', 'Write how many of at least one figure are ordered.');
  return { order };
}
