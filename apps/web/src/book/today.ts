import { date, type LocalDate, type ZoneName } from '@twistwright/units';

/** The day it is now on the wall calendar of a zone. */
export function todayIn(zone: ZoneName, now: Date = new Date()): LocalDate {
  const parts = new Intl.DateTimeFormat('en', { timeZone: zone, year: 'numeric', month: '2-digit', day: '2-digit' }).formatToParts(now);
  const part = (type: string): string => parts.find((p) => p.type === type)?.value ?? '';
  return date(`${part('year').padStart(4, '0')}-${part('month')}-${part('day')}`);
}
