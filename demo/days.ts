import { addDays, date, type LocalDate } from '@twistwright/units';

/** A Monday. All dates of the demo are counted from it, and move by whole weeks with the day on which it is opened. */
export const laidOn: LocalDate = date('2026-06-01');
/** The day `days` after (before, if negative) the Monday on which the demo is laid. */
export const onDay = (days: number): LocalDate => addDays(laidOn, days);
