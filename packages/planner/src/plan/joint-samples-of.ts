import type { JointSamples } from '../needs/index.ts';
import type { Forecast } from './forecast-gig.ts';

/** What the gigs take, jointly and item by item: run r of every gig belongs to one future. All forecasts have the same number of runs. */
export function jointSamplesOf(forecasts: readonly Forecast[]): JointSamples {
  const runs = forecasts[0]?.samples.runs ?? 1;
  const items = [...new Set(forecasts.flatMap((forecast) => forecast.model.items.map((item) => item.id)))];
  const index = new Map(items.map((item, i) => [item, i]));
  const perGig = forecasts.map(({ gig, model, samples }) => {
    if (samples.runs !== runs) throw new RangeError(`${gig.id} was played ${samples.runs} times, the others ${runs} times`);
    const used = new Int32Array(runs * items.length);
    const width = model.items.length;
    for (const [i, item] of model.items.entries()) {
      const to = index.get(item.id) ?? 0;
      for (let r = 0; r < runs; r++) used[r * items.length + to] = samples.items[r * width + i] ?? 0;
    }
    return { gig: gig.id, day: gig.day, used };
  });
  return { items, runs, perGig };
}
