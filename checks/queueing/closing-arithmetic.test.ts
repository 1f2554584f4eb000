/**
 * Common practice, no published source: people who can still be served = minutes left / minutes each. With two minutes each and thirty waiting the line
 * closes one hour before the end; with a menu of 45 seconds the same hour serves eighty; minutes kept back count as gone; a second artist doubles it.
 */
import { type ClosingCardRow, closingCard } from '@twistwright/planner';
import { expect, test } from 'vitest';
import { gigWith } from './textbook-queue.ts';

const gig = (minutesEach: number, servers = 1) =>
  gigWith(
    { servers, service: { kind: 'fixed', minutes: minutesEach }, minutes: 180, warmUp: 0 },
    { kind: 'stream', knots: [{ minute: 0, perMinute: 1 }, { minute: 180, perMinute: 1 }] }, // biome-ignore format: short
  );
const at = (card: readonly ClosingCardRow[], minute: number): number => card.find((row) => row.minute === minute)?.mayWait ?? Number.NaN;
const options = { seed: 1, runs: 50, chance: 0.9 };

test('two minutes each and thirty waiting: one hour before the end', () => {
  const card = closingCard(gig(2), options);
  expect(at(card, 120)).toBe(30);
  expect(at(card, 125)).toBe(27);
  expect(at(card, 180)).toBe(0);
  expect(card).toHaveLength(37);
});
test('45 seconds each: eighty; two artists: sixty; five minutes kept back: two or three fewer', () => {
  expect(at(closingCard(gig(0.75), options), 120)).toBe(80);
  expect(at(closingCard(gig(2, 2), options), 120)).toBe(60);
  expect(at(closingCard(gig(2), { ...options, keptBackMinutes: 5 }), 120)).toBe(27);
});
