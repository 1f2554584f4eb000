import type { LineModel } from '@twistwright/planner';

/** Recipe lines of figure i (from 0): it has 2 + i mod 4, line k takes 1 + (i + 2k) mod 3 of item (7i + 11k) mod 40. */
const linesOf = (i: number) =>
  Array.from({ length: 2 + (i % 4) }, (_, k) => ({ item: (7 * i + 11 * k) % 40, count: 1 + ((i + 2 * k) % 3) }));
const shares = [14, 9, 12, 10, 8, 11, 7, 9, 6, 6, 5, 3];
const medians = [0.7, 0.9, 1, 1.2, 1.4, 1.6, 1.8, 2.1, 2.4, 2.8, 3.4, 4.5];
const stock = [
  30, 20, 40, 30, 10, 20, 40, 80, 10, 30, 10, 70, 30, 50, 70, 10, 30, 20, 20, 10, 20, 20, 10, 30, 30, 80, 10, 20, 30, 40, 30, 40, 50, 10,
  30, 60, 20, 20, 10, 20,
];

/**
 * The reference afternoon: one line, two artists, three hours, twelve figures of forty items. `reference.cpp` beside it is the same in
 * C++, written apart; both must count the same guests in every run.
 */
export const referenceModel: LineModel = {
  end: 180,
  arrivals: {
    kind: 'stream',
    knots: [
      { minute: 0, perMinute: 0.2 },
      { minute: 20, perMinute: 0.4 },
      { minute: 60, perMinute: 0.5 },
      { minute: 90, perMinute: 0.3 },
      { minute: 120, perMinute: 0.45 },
      { minute: 160, perMinute: 0.3 },
      { minute: 180, perMinute: 0.05 },
    ],
  },
  partySizes: [0.3, 0.35, 0.2, 0.1, 0.05],
  joining: { free: 4, scale: 10 },
  patience: { kind: 'log-normal', median: 30, sigma: 0.5 },
  serving: 'shared line',
  artists: [
    { id: 'first', pace: 1 },
    { id: 'second', pace: 1 },
  ],
  closing: { kind: 'work ahead', minutesEach: 2, keptBackMinutes: 0 },
  choosing: { kind: 'fixed', minutes: 0.3 },
  items: stock.map((count, j) => ({ id: `item ${j}`, stock: count, popChance: 0.04 })),
  figures: shares.map((share, i) => ({
    id: `figure ${i}`,
    share,
    making: { kind: 'log-normal', median: medians[i] ?? 1, sigma: 0.2 + 0.02 * i },
    colourways: [{ id: 'only', share: 1, colour: 0, lines: linesOf(i) }],
  })),
  ifShort: { otherColour: 1, otherFigure: 1, search: 'next in order' },
  pops: 'each line',
  draws: 'two streams',
};
