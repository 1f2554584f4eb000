import type { Book, Gig } from '@twistwright/books';
import { comingGigs, type Forecast, joinSamples, lineModelOf } from '@twistwright/planner';
import { ok, type Result } from '@twistwright/units';
import { forecastOf, type PlanningDesk, samplesOf } from './view-of-gig.ts';

/** Changes of mind that are remembered beside the gigs as they are booked; a megabyte or two each. */
const mostBeside = 8;

/**
 * Gigs that were played: what is asked again is not played again, and more tries go on where the last ones stopped. So a page that is looked at anew, or
 * whose packing is ticked, says at once what it said before.
 */
export class PlayedLines {
  readonly #desk: PlanningDesk;
  /** By all that a gig gives to its line; the one used last stands last. */
  readonly #forecasts: Map<string, Forecast>;
  readonly #mostKept: number;

  /** A book that changes nothing in any line takes over what was played for the one before. */
  constructor(desk: PlanningDesk, before?: PlayedLines) {
    this.#desk = desk;
    this.#mostKept = comingGigs(desk.book, desk.today).length + mostBeside;
    this.#forecasts = before !== undefined && linesOf(before.#desk.book) === linesOf(desk.book) ? before.#forecasts : new Map();
  }

  /** At least so many tries of a gig, with the same luck as everywhere else for this seed. */
  forecast(gig: Gig, runs: number): Result<Forecast> {
    const key = keyOf(gig);
    const known = this.#forecasts.get(key);
    const found = known === undefined ? this.#play(gig, runs) : ok(this.#goOn(known, runs));
    if (!found.ok) return found;
    this.#forecasts.delete(key);
    this.#forecasts.set(key, found.value);
    const [oldest] = this.#forecasts.keys();
    if (this.#forecasts.size > this.#mostKept && oldest !== undefined) this.#forecasts.delete(oldest);
    return ok({ ...found.value, gig });
  }
  #play(gig: Gig, runs: number): Result<Forecast> {
    const model = lineModelOf(this.#desk.book, gig);
    return model.ok ? ok(forecastOf(gig, model.value, samplesOf(this.#desk, gig, model.value, runs))) : model;
  }
  #goOn(known: Forecast, runs: number): Forecast {
    const { gig, model, samples } = known;
    const more = runs - samples.runs;
    return more <= 0 ? known : forecastOf(gig, model, joinSamples([samples, samplesOf(this.#desk, gig, model, more, samples.runs)]));
  }
}

/** What the lines of a book are made of. */
const linesOf = (book: Book): string => JSON.stringify([book.figures, book.items, book.artists, book.settings, book.sizes]);

/** What is packed, agreed or noted changes nothing in a line. */
function keyOf({ packed: _packed, agreement: _agreement, notes: _notes, name: _name, client: _client, ...rest }: Gig): string {
  return JSON.stringify(rest);
}
