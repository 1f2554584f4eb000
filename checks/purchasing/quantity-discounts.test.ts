/**
 * All-units quantity discounts. B. Render, R. Stair, Quantitative Analysis for Management, Wohl's Discount Stores (inputs from a page that
 * quotes the exercise; 1000 at 24725 from memory and computed); a worked exercise with five price steps (inputs and answer from a page);
 * L. V. Snyder, Z.-J. M. Shen, Fundamentals of Supply Chain Theory, 2nd ed. 2019, Pr. 3.12a, and the example in the documentation of stockpyl.
 *
 * Yearly cost of ordering Q at a time: D c(Q) + K D / Q + i c(Q) Q / 2. The price of a unit is taken from our all-units price steps, and
 * every whole Q is tried.
 */
import { priceAt } from '@twistwright/planner';
import { describe, expect, it } from 'vitest';

const cases = [
  {
    name: "Wohl's",
    demand: 5000,
    setUp: 49,
    rate: 0.2,
    steps: [
      [1, 5],
      [1000, 4.8],
      [2000, 4.75],
    ],
    quantity: 1000,
    cost: 24725,
    at: [[2000, 24822.5]],
  },
  {
    name: 'five price steps',
    demand: 800,
    setUp: 60,
    rate: 0.3,
    steps: [
      [1, 53],
      [50, 51.5],
      [100, 49.5],
      [200, 48],
      [500, 47],
    ],
    quantity: 200,
    cost: 40080,
    at: [
      [100, 40822.5],
      [500, 41221],
    ],
  },
  {
    name: 'Snyder and Shen Pr. 3.12a',
    demand: 182_500,
    setUp: 2250,
    rate: 0.25,
    steps: [
      [1, 1490],
      [1200, 1220],
      [2400, 1100],
    ],
    quantity: 2400,
    cost: 201251093.75,
    at: [],
  },
  {
    name: 'stockpyl',
    demand: 1000,
    setUp: 200,
    rate: 0.2,
    steps: [
      [1, 500],
      [200, 475],
      [500, 450],
    ],
    quantity: 500,
    cost: 472900,
    at: [],
  },
] as const;

describe('all-units price steps', () => {
  it.each(cases)('$name: order $quantity', ({ demand, setUp, rate, steps, quantity, cost, at }) => {
    const prices = steps.map(([fromBags, price]) => ({ fromBags, price }));
    const yearly = (q: number): number => {
      const price = priceAt(prices, q);
      return demand * price + (setUp * demand) / q + (rate * price * q) / 2;
    };
    let best = 1;
    for (let q = 2; q <= 6000; q++) if (yearly(q) < yearly(best)) best = q;
    expect(best).toBe(quantity);
    expect(yearly(best)).toBeCloseTo(cost, 6);
    for (const [q, known] of at) expect(yearly(q)).toBeCloseTo(known, 6);
  });
});
