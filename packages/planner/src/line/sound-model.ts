import { meanOf } from './expected-minutes.ts';
import type { Duration, LineModel } from './line-model.ts';

/** More guests than this in one run are no gig; the check keeps a slip of the pen from hanging the machine. */
const mostGuests = 1_000_000;

/**
 * Throws with the place and the value where a model cannot be played: a number that is not finite, negative or out of its range, an index
 * that points nowhere, a menu without a figure. A book's mistakes are reported as sentences before a model is made of it; what gets here
 * is a mistake of the program.
 */
export function assertSound(model: LineModel): void {
  const must = (holds: boolean, place: string, value: unknown): void => {
    if (!holds) throw new RangeError(`line model: ${place} cannot be ${String(value)}`);
  };
  const amount = (value: number, place: string): void => must(Number.isFinite(value) && value >= 0, place, value);
  const chance = (value: number, place: string): void => must(value >= 0 && value <= 1, place, value);
  const duration = (time: Duration | undefined, place: string): void => {
    if (time === undefined) return;
    amount(meanOf(time), place);
    if (time.kind === 'gamma') must(time.shape > 0 && Number.isFinite(time.shape), `${place}.shape`, time.shape);
    if (time.kind === 'log-normal') must(time.median > 0 && time.sigma >= 0 && time.sigma < 10, place, `${time.median}, ${time.sigma}`);
  };
  must(Number.isFinite(model.end) && model.end > 0, 'end', model.end);
  amount(model.overtimeMinutes ?? 0, 'overtimeMinutes');
  amount(model.hiddenShare ?? 0, 'hiddenShare');
  amount(model.warmUpMinutes ?? 0, 'warmUpMinutes');
  must(model.artists.length > 0 && model.artists.length <= 1000, 'number of artists', model.artists.length);
  for (const [a, artist] of model.artists.entries()) {
    must(Number.isFinite(artist.pace) && artist.pace > 0, `artists[${a}].pace`, artist.pace);
    amount(artist.from ?? 0, `artists[${a}].from`);
    for (const pause of artist.breaks ?? []) amount(pause.minute + pause.minutes, `artists[${a}].breaks`);
    amount(artist.fatigue?.perHour ?? 0, `artists[${a}].fatigue`);
  }
  if (model.patience.kind !== 'endless') duration(model.patience, 'patience');
  duration(model.choosing, 'choosing');
  duration(model.colourChoosing, 'colourChoosing');
  duration(model.handingOver, 'handingOver');
  if (model.joining !== undefined) {
    amount(model.joining.free, 'joining.free');
    must(model.joining.scale > 0, 'joining.scale', model.joining.scale);
  }
  if (model.room !== undefined) must(Number.isInteger(model.room) && model.room > 0, 'room', model.room);
  const sizes = model.partySizes ?? [1];
  must(sizes.every((weight) => weight >= 0) && sizes.reduce((a, b) => a + b, 0) > 0, 'partySizes', sizes.join(', '));
  must(model.figures.length > 0 && model.figures.some((figure) => figure.share > 0), 'figures', 'without a share');
  for (const [f, figure] of model.figures.entries()) {
    amount(figure.share, `figures[${f}].share`);
    duration(figure.making, `figures[${f}].making`);
    amount(figure.redoMinutes ?? 0, `figures[${f}].redoMinutes`);
    amount(figure.drawingMinutes ?? 0, `figures[${f}].drawingMinutes`);
    must(figure.colourways.length > 0, `figures[${f}].colourways`, 'none');
    for (const way of figure.colourways) {
      amount(way.share, `figures[${f}] colourway ${way.id} share`);
      must(Number.isInteger(way.colour) && way.colour >= 0 && way.colour < 65_536, `colourway ${way.id} colour`, way.colour);
      for (const { item, count } of way.lines)
        must(
          model.items[item] !== undefined && Number.isInteger(count) && count > 0,
          `colourway ${way.id} line`,
          `${count} of item ${item}`,
        );
    }
  }
  for (const [i, item] of model.items.entries()) {
    chance(item.popChance, `items[${i}].popChance`);
    if (item.stock !== undefined) must(Number.isSafeInteger(item.stock) && item.stock < 2 ** 30, `items[${i}].stock`, item.stock);
  }
  chance(model.ifShort.otherColour, 'ifShort.otherColour');
  chance(model.ifShort.otherFigure, 'ifShort.otherFigure');
  for (const urn of [model.copycat?.figures, model.copycat?.colours])
    if (urn !== undefined) {
      amount(urn.added, 'copycat.added');
      chance(urn.keeps, 'copycat.keeps');
    }
  arrivalsSound(model, must, duration);
}

function arrivalsSound(
  model: LineModel,
  must: (holds: boolean, place: string, value: unknown) => void,
  duration: (time: Duration | undefined, place: string) => void,
): void {
  const arrivals = model.arrivals;
  const isFigure = (figure: number): boolean => model.figures[figure] !== undefined;
  switch (arrivals.kind) {
    case 'stream': {
      const knots = arrivals.knots;
      must(knots.length > 1, 'arrivals.knots', knots.length);
      let guests = 0;
      for (const [k, knot] of knots.entries()) {
        const before = knots[k - 1] ?? knot;
        must(Number.isFinite(knot.minute) && knot.minute >= before.minute && knot.minute >= 0, `knots[${k}].minute`, knot.minute);
        must(Number.isFinite(knot.perMinute) && knot.perMinute >= 0, `knots[${k}].perMinute`, knot.perMinute);
        guests += ((knot.perMinute + before.perMinute) / 2) * (knot.minute - before.minute);
      }
      must(guests <= mostGuests, 'expected parties', guests);
      if (arrivals.shape !== undefined) must(arrivals.shape > 0 && Number.isFinite(arrivals.shape), 'arrivals.shape', arrivals.shape);
      return;
    }
    case 'at start':
      must(Number.isFinite(arrivals.guests) && arrivals.guests >= 0 && arrivals.guests <= mostGuests, 'guests', arrivals.guests);
      return;
    case 'list':
      must(
        arrivals.parties.every(
          (party) => party.minute >= 0 && party.guests.every(({ figure }) => figure === undefined || isFigure(figure)),
        ),
        'listed parties',
        'before the start or for a figure that is not there',
      );
      return;
    case 'found':
      duration(arrivals.walking, 'walking');
      must(meanOf(arrivals.walking) >= 0.01, 'walking', meanOf(arrivals.walking));
      return;
    case 'class':
      must(Number.isInteger(arrivals.learners) && arrivals.learners >= 0 && arrivals.learners <= mostGuests, 'learners', arrivals.learners);
      must(arrivals.tries >= 0 && arrivals.tries <= 1000 && arrivals.slowness > 0, 'tries and slowness', arrivals.tries);
      must(arrivals.figures.every(isFigure), 'class figures', arrivals.figures.join(', '));
  }
}
