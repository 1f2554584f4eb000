import type { LocalDate, LocalTime, Money } from '@twistwright/units';
import { z } from 'zod';

/** Most characters of an id, and of a name. */
const idLength = 120;
const nameLength = 200;

/** Ids are made by whoever writes the book: any text without space at its ends and without control characters. */
export const id = z
  .string()
  .min(1)
  .max(idLength)
  .regex(/^[^\s\p{C}](?:[^\p{Cc}\p{Zl}\p{Zp}]*[^\s\p{C}])?$/u)
  .meta({ description: 'Id: text without space at its ends', examples: ['260-red'] });
/** One line of text. */
export const name = z
  .string()
  .min(1)
  .max(nameLength)
  .regex(/^[^\p{Cc}\p{Zl}\p{Zp}]+$/u)
  .meta({ description: 'One line of text' });
/** Text of several lines. */
export const note = z.string().max(10_000);

/** A day, `YYYY-MM-DD`. The schema is a text's; the cast names it as the domain does. */
export const localDate = z.iso.date().meta({ description: 'Day, YYYY-MM-DD', examples: ['2026-06-13'] }) as unknown as z.ZodType<
  LocalDate,
  LocalDate
>;
/** A wall-clock time, `HH:MM` to 24:00. */
export const localTime = z
  .string()
  .regex(/^(?:[01]\d|2[0-3]):[0-5]\d$|^24:00$/)
  .meta({ description: 'Wall-clock time, HH:MM from 00:00 to 24:00', examples: ['13:00'] }) as unknown as z.ZodType<LocalTime, LocalTime>;

/** Largest amount in a book, minor units: sums of a million such amounts stay exact. */
const mostMoney = 1_000_000_000;
/** Money as a whole number of minor units, not negative. The schema is an integer's; the cast names it as the domain does. */
export const amount = z
  .int()
  .min(0)
  .max(mostMoney)
  .meta({ description: 'Money, whole minor units (pence, cents, yen)', examples: [845] }) as unknown as z.ZodType<Money, Money>;
/** ISO 4217 alphabetic code. */
export const currency = z
  .string()
  .regex(/^[A-Z]{3}$/)
  .meta({ description: 'ISO 4217 code', examples: ['GBP', 'JPY'] });
/** IANA time zone; whether the runtime knows it is checked with the book. */
export const zone = z
  .string()
  .min(1)
  .max(64)
  .regex(/^[A-Za-z0-9_+\-/]+$/)
  .meta({ description: 'IANA time zone', examples: ['Europe/London'] });

/** A count of things, 1 to a million. */
export const count = z.int().min(1).max(1_000_000);
/** A count that may be nought. */
export const countOrNone = z.int().min(0).max(1_000_000);
/** Minutes, nought to a week. */
export const minutes = z.number().min(0).max(10_080);
/** A number of minutes that something takes. */
export const someMinutes = z.number().gt(0).max(10_080);
/** 0 to 1, both included. */
export const share = z.number().min(0).max(1);
/** A weight beside others: not negative, need not sum to one. */
export const weight = z.number().min(0).max(1_000_000);
/** A factor by which a time is multiplied. */
export const factor = z.number().gt(0).max(100);
/** Basis points, 10 000 = the whole. */
export const basisPoints = z.int().min(0).max(10_000);
/** Miles, one way. */
export const miles = z.number().min(0).max(30_000);
/** Minor units for a mile; four decimals count. No `multipleOf`: validators that divide in binary would refuse 0.3. */
export const mileRate = z
  .number()
  .min(0)
  .max(1_000_000)
  .meta({ description: 'Minor units (pence, cents, yen) for a mile; four decimals count', examples: [45, 72.5] });
