import { type Book, type ClosingRule, type Gig, lineSettingsOf } from '@twistwright/books';
import type { WhatIf } from '@twistwright/planner';
import { minuteOf } from '@twistwright/units';

/** What stands on the sliders of a gig. */
export interface Dials {
  readonly guests: number;
  readonly hours: number;
  readonly artists: number;
  readonly figures: readonly string[];
  readonly closing: ClosingRule;
  readonly weather: NonNullable<Gig['weather']>;
  /** Chance that something asked for runs out. */
  readonly chance: number;
}

export function dialsOf(book: Book, gig: Gig, chance: number): Dials {
  return {
    guests: gig.classPlan?.learners ?? gig.guests ?? 0,
    hours: (minuteOf(gig.ends) - minuteOf(gig.starts)) / 60,
    artists: Math.max(1, gig.artists.length),
    figures: gig.menu.map((line) => line.figure),
    closing: lineSettingsOf(book, gig).closing,
    weather: gig.weather ?? 'mild',
    chance,
  };
}

/** What differs between two settings of the dials, as a change of mind; chance is no matter of the gig and stays apart. */
export function changeBetween(booked: Dials, now: Dials): WhatIf {
  const sameFigures = booked.figures.length === now.figures.length && booked.figures.every((figure) => now.figures.includes(figure));
  return {
    ...(now.guests === booked.guests ? {} : { guests: now.guests }),
    ...(now.hours === booked.hours ? {} : { hours: now.hours }),
    ...(now.artists === booked.artists ? {} : { artists: now.artists }),
    ...(sameFigures ? {} : { figures: now.figures }),
    ...(JSON.stringify(now.closing) === JSON.stringify(booked.closing) ? {} : { closing: now.closing }),
    ...(now.weather === booked.weather ? {} : { weather: now.weather }),
  };
}

/** The range of a slider around what is booked: whole steps, never below the least. */
export function rangeAround(
  value: number,
  { least, step }: { readonly least: number; readonly step: number },
): { readonly min: number; readonly max: number } {
  const round = (of: number): number => Math.round(of / step) * step;
  return { min: Math.max(least, Math.min(value, round(value * 0.3))), max: Math.max(value, round(Math.max(value * 2, least + 5 * step))) };
}

/** Chances that the slider stops at. */
export const chanceStops = [0.01, 0.02, 0.05, 0.1, 0.15, 0.2, 0.3, 0.4, 0.5, 0.6] as const;
export const nearestStop = (chance: number): number =>
  chanceStops.reduce((best, stop, index) => (Math.abs(stop - chance) < Math.abs((chanceStops[best] ?? 0) - chance) ? index : best), 0);
