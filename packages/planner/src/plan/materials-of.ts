import type { PieceCost } from '../charge/index.ts';
import type { Forecast } from './forecast-gig.ts';

/** What the balloons and extras of each run cost, minor units; items without a known cost count as nothing. */
export function materialsOf({ model, samples }: Forecast, costs: ReadonlyMap<string, PieceCost>): Float64Array {
  const price = model.items.map((item) => costs.get(item.id)?.cost ?? 0);
  const width = price.length;
  return Float64Array.from({ length: samples.runs }, (_, r) =>
    price.reduce((sum, cost, i) => sum + cost * (samples.items[r * width + i] ?? 0), 0),
  );
}
