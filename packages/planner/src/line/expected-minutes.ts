import { exp } from '@twistwright/units';
import type { Duration, LineFigure, LineModel } from './line-model.ts';

/** The mean of a duration in minutes; 0 for an absent one. A log-normal has mean median x exp(sigma^2 / 2). */
export function meanOf(duration: Duration | undefined): number {
  if (duration === undefined) return 0;
  switch (duration.kind) {
    case 'fixed':
      return duration.minutes;
    case 'exponential':
    case 'gamma':
      return duration.mean;
    case 'log-normal':
      return duration.median * exp((duration.sigma * duration.sigma) / 2);
  }
}

/** Expected minutes of one artist for one figure, fresh: choosing, making with pace, weather, helper and pops, drawing, handing over. */
export function expectedMinutesFor(model: LineModel, figure: LineFigure, pace: number): number {
  const factor = pace * (model.weather?.makingFactor ?? 1) * (model.helper?.makingFactor ?? 1);
  const drawing = model.helper?.drawsFaces === true ? 0 : (figure.drawingMinutes ?? 0);
  const colours = figure.colourways.length > 1 ? meanOf(model.colourChoosing) : 0;
  const redo = (figure.redoMinutes ?? 0) * expectedPops(model, figure);
  return meanOf(model.choosing) + colours + (meanOf(figure.making) + redo) * factor + drawing + meanOf(model.handingOver);
}
/** Expected pops in making the figure once, over its colourways. */
function expectedPops(model: LineModel, figure: LineFigure): number {
  const shares = figure.colourways.reduce((sum, colourway) => sum + colourway.share, 0);
  let pops = 0;
  for (const colourway of figure.colourways)
    for (const line of colourway.lines) {
      const chance = Math.min(0.99, (model.items[line.item]?.popChance ?? 0) * (model.weather?.popFactor ?? 1));
      const each = model.pops === 'each piece' ? chance / (1 - chance) : chance;
      pops += (shares > 0 ? colourway.share / shares : 1 / figure.colourways.length) * line.count * each;
    }
  return pops;
}

/**
 * Expected minutes per guest, over the menu by asking shares and over the artists: what "minutes each" means where a rule of thumb needs
 * it. 0 for an empty menu.
 */
export function expectedMinutesEach(model: LineModel): number {
  const offered = model.figures.filter((figure) => figure.offered !== false);
  const shares = offered.reduce((sum, figure) => sum + figure.share, 0);
  const pace = model.artists.reduce((sum, artist) => sum + artist.pace, 0) / Math.max(1, model.artists.length);
  return shares === 0 ? 0 : offered.reduce((sum, figure) => sum + (figure.share / shares) * expectedMinutesFor(model, figure, pace), 0);
}
