import type { LineModel } from '@twistwright/planner';

const kinds = [
  { share: 18, median: 0.7, pieces: [2] },
  { share: 15, median: 0.9, pieces: [1] },
  { share: 14, median: 1.1, pieces: [1, 1] },
  { share: 12, median: 1.3, pieces: [1, 1, 1] },
  { share: 11, median: 1.5, pieces: [2, 1] },
  { share: 9, median: 1.9, pieces: [1, 1, 1] },
  { share: 8, median: 2.4, pieces: [2, 1, 1] },
  { share: 6, median: 3, pieces: [3, 2, 1] },
];

/**
 * An afternoon as most are, with every habit that the shipped settings have: two artists who tire and take a break, children who bring others along and
 * ask for what they have just seen, colours to choose, balloons that pop, some who come back. About 90 guests in two hours.
 */
export const typicalGig: LineModel = {
  end: 120,
  arrivals: {
    kind: 'stream',
    knots: [
      { minute: 0, perMinute: 0.25 },
      { minute: 20, perMinute: 0.45 },
      { minute: 80, perMinute: 0.45 },
      { minute: 120, perMinute: 0.1 },
    ],
  },
  partySizes: [0.3, 0.4, 0.2, 0.1],
  hiddenShare: 0.15,
  joining: { free: 6, scale: 12 },
  patience: { kind: 'log-normal', median: 30, sigma: 0.5 },
  serving: 'shared line',
  artists: [1, 1.2].map((pace, i) => ({
    id: `artist ${i + 1}`,
    pace,
    breaks: [{ minute: 60, minutes: 10 }],
    fatigue: { perHour: 0.05, freshMinutes: 60 },
  })),
  closing: { kind: 'work ahead', keptBackMinutes: 5 },
  choosing: { kind: 'log-normal', median: 0.25, sigma: 0.4 },
  colourChoosing: { kind: 'fixed', minutes: 0.1 },
  handingOver: { kind: 'fixed', minutes: 0.12 },
  items: Array.from({ length: 24 }, (_, i) => ({ id: `item ${i}`, popChance: 0.04 })),
  figures: kinds.map(({ share, median, pieces }, f) => ({
    id: `figure ${f}`,
    share,
    making: { kind: 'log-normal', median, sigma: 0.3 },
    redoMinutes: 0.4,
    colourways: [0, 1, 2].map((colour) => ({
      id: `colour ${colour}`,
      share: 3 - colour,
      colour,
      lines: pieces.map((count, k) => ({ item: (3 * f + colour + 8 * k) % 24, count })),
    })),
  })),
  copycat: { figures: { added: 0.05, keeps: 0.7 }, colours: { added: 0.05, keeps: 0.7 } },
  ifShort: { otherColour: 0.8, otherFigure: 0.7, search: 'by share' },
  pops: 'each piece',
  returns: {
    repeatChance: 0.05,
    repeatAfter: { kind: 'exponential', mean: 20 },
    repairChance: 0.05,
    repairAfter: { kind: 'exponential', mean: 15 },
    oneEach: false,
  },
};
