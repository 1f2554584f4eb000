import { type Book, emptyBook, type Gig } from '@twistwright/books';
import { gigAfter } from '@twistwright/planner';
import { date, money, time } from '@twistwright/units';
import { expect, test } from 'vitest';
import { chanceStops, changeBetween, dialsOf, nearestStop, rangeAround } from './change-of-mind.ts';
import { between, needNote, occasionOfGig, promiseSentence, surelyIn } from './gig-words.ts';
import { PlayedLines } from './played-lines.ts';
import { deskFor, type PlanningDesk, viewOfGig } from './view-of-gig.ts';

const today = date('2026-06-01');
const play = (desk: PlanningDesk, gig: Gig, runs: number) => new PlayedLines(desk).forecast(gig, runs);
const fair: Gig = {
  id: 'fair',
  name: 'Fair',
  kind: 'line',
  day: date('2026-06-13'),
  starts: time('13:00'),
  ends: time('16:00'),
  artists: ['joss'],
  guests: 60,
  arrivals: {
    kind: 'stream',
    profile: [
      { minute: 0, weight: 1 },
      { minute: 180, weight: 1 },
    ],
  },
  menu: [{ figure: 'sword', share: 1 }],
};
const book: Book = {
  ...emptyBook({ name: 'Nine Knots', currency: 'GBP', zone: 'Europe/London' }),
  colours: [{ id: 'red', name: 'red' }],
  items: [{ id: '260-red', kind: 'balloon', size: '260', colour: 'red' }],
  figures: [
    {
      id: 'sword',
      name: 'sword',
      recipe: 'balloon sword: 260 in blade\n',
      colourways: [{ id: 'red', name: 'red', fill: { blade: 'red' } }],
      minutes: { law: 'log-normal', median: 1.5, sigma: 0.3 },
    },
  ],
  artists: [{ id: 'joss', name: 'Joss', pace: 1 }],
  places: [{ id: 'home', name: 'shelf at home', kind: 'home' }],
  moves: [{ id: 'm', day: date('2026-05-01'), item: '260-red', kind: 'arrived', place: 'home', bags: 1, perBag: 50, bagPrice: money(500) }],
  gigs: [fair],
};

test('a page is the same for the same runs, however often it is asked', () => {
  const desk = deskFor(book, today);
  const view = (): string => {
    const played = play(desk, fair, 80);
    if (!played.ok) throw new Error(played.error[0]?.sentence);
    return JSON.stringify(viewOfGig(desk, played.value, [], 0.1, true));
  };
  expect(view()).toBe(view());
});
test('tries go on where they stopped, and what a line does not depend on plays nothing anew', () => {
  const samplesOf = (played: PlayedLines, gig: Gig, runs: number) => {
    const forecast = played.forecast(gig, runs);
    if (!forecast.ok) throw new Error(forecast.error[0]?.sentence);
    return forecast.value.samples;
  };
  const desk = deskFor(book, today);
  const played = new PlayedLines(desk);
  samplesOf(played, fair, 30);
  const all = samplesOf(played, fair, 90);
  expect(all).toEqual(samplesOf(new PlayedLines(desk), fair, 90));
  const packed: Gig = { ...fair, packed: ['260-red@apron'], agreement: { state: 'agreed' } };
  const ticked = new PlayedLines(deskFor({ ...book, gigs: [packed] }, today), played);
  expect(samplesOf(ticked, packed, 20)).toBe(all);
  expect(samplesOf(ticked, { ...packed, guests: 70 }, 20).runs).toBe(20);
  const slower = { ...book, artists: [{ id: 'joss', name: 'Joss', pace: 2 }] };
  expect(samplesOf(new PlayedLines(deskFor(slower, today), ticked), fair, 20)).not.toEqual(samplesOf(new PlayedLines(desk), fair, 20));
});
test('needs: a gig before takes from the same stock, and the shortage is that of both together', () => {
  const desk = deskFor(book, today);
  const played = play(desk, fair, 120);
  const earlier = play(desk, { ...fair, id: 'picnic', day: date('2026-06-10') }, 120);
  if (!played.ok || !earlier.ok) throw new Error('the gigs cannot be played');
  const alone = viewOfGig(desk, played.value, [], 0.1, true).needs[0];
  const both = viewOfGig(desk, played.value, [earlier.value], 0.1, true).needs[0];
  expect(alone).toMatchObject({ item: '260-red', before: 0, have: 50, onOrder: 0 });
  expect(both?.before).toBeGreaterThan(20);
  expect(both?.short ?? 0).toBeGreaterThan((alone?.short ?? 0) + 20);
  expect(both?.takes).toEqual(alone?.takes);
});
test('an order that comes in time counts, one that comes later does not', () => {
  const order = {
    id: 'o',
    supplier: 's',
    orderedOn: today,
    carriage: money(0),
    lines: [{ item: '260-red', bags: 1, count: 100, price: money(800) }],
  };
  const shortWith = (expectedOn: string): number => {
    const desk = deskFor({ ...book, orders: [{ ...order, expectedOn: date(expectedOn) }] }, today);
    const played = play(desk, fair, 120);
    if (!played.ok) throw new Error('the gig cannot be played');
    return viewOfGig(desk, played.value, [], 0.1, true).needs[0]?.short ?? -1;
  };
  expect(shortWith('2026-06-10')).toBe(0);
  expect(shortWith('2026-06-20')).toBeGreaterThan(0);
});
test('a gig that cannot be played is refused with sentences', () => {
  const refused = play(deskFor(book, today), { ...fair, menu: [] }, 10);
  expect(refused.ok ? [] : refused.error.map((problem) => problem.code)).toEqual(['gig.no-menu']);
});

test('dials that were not moved change nothing; each moved dial is one change', () => {
  const booked = dialsOf(book, fair, 0.1);
  expect(changeBetween(booked, booked)).toEqual({});
  expect(changeBetween(booked, { ...booked, chance: 0.5 })).toEqual({});
  const moved = changeBetween(booked, {
    ...booked,
    guests: 90,
    hours: 2.5,
    artists: 2,
    closing: { rule: 'none' },
    weather: 'hot',
    figures: [],
  });
  expect(moved).toEqual({ guests: 90, hours: 2.5, artists: 2, closing: { rule: 'none' }, weather: 'hot', figures: [] });
  const after = gigAfter(book, fair, moved);
  expect(dialsOf(book, after, 0.1)).toMatchObject({ guests: 90, hours: 2.5, weather: 'hot' });
});
test('a slider has room on both sides of what is booked and never leaves it out', () => {
  for (const value of [1, 7, 60, 150, 2000]) {
    const { min, max } = rangeAround(value, { least: 5, step: 5 });
    expect(min).toBeLessThanOrEqual(Math.max(5, value));
    expect(max).toBeGreaterThanOrEqual(value);
    expect(max - min).toBeGreaterThanOrEqual(20);
  }
});
test('the chance slider stops at the nearest chance', () => {
  expect(chanceStops[nearestStop(0.1)]).toBe(0.1);
  expect(chanceStops[nearestStop(0.12)]).toBe(0.1);
  expect(chanceStops[nearestStop(0.9)]).toBe(0.6);
});
test('words: spreads, tries, needs', () => {
  expect(between({ p10: 55.6, p90: 68.2 })).toBe('56 to 68');
  expect(between({ p10: 3, p90: 3.2 })).toBe('3');
  expect(surelyIn(0.1, 'afternoon')).toBe('9 afternoons of 10');
  expect(surelyIn(0.02, 'evening')).toBe('49 evenings of 50');
  expect(occasionOfGig(fair)).toBe('afternoon');
  const need = { item: '260-red', takes: { p10: 13, p50: 18, p90: 23, mean: 18 }, before: 6, enough: 26, have: 14, onOrder: 100, short: 0 };
  expect(needNote(need)).toBe('takes 18 (13 to 23); you have 14 and 100 on order; 6 go before');
});
test('a promise that is kept, broken, or kept by more artists', () => {
  const spread = (mean: number) => ({ p10: mean, p50: mean, p90: mean, mean, error: 0 });
  const forecast = { shareWithin: spread(0.82), shareServed: spread(0.71), promiseMinutes: 20 } as Parameters<typeof promiseSentence>[0];
  const promise = { shareWithin: 0.9, shareServed: 0.9 };
  expect(promiseSentence(forecast, { shareWithin: 0.8, shareServed: 0.7 }, undefined)).toContain('your promise is kept.');
  expect(promiseSentence(forecast, promise, 2)).toMatch(/you promise 90 in 100 and 90 in 100\. It takes two artists\.$/);
  expect(promiseSentence(forecast, promise, 0)).toMatch(/More artists alone do not keep it\.$/);
});
