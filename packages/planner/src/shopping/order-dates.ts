import {
  addDays,
  daysBetween,
  type LocalDate,
  type LocalTime,
  minuteOf,
  weekdayOf,
  workingDaysAfter,
  workingDaysBefore,
} from '@twistwright/units';
import type { PurchaseProblem, PurchaseSupplier } from './purchase-problem.ts';

/** When an order must go so that it is there for a day. */
export interface OrderDate {
  /** Last safe day to order. */
  readonly orderBy: LocalDate;
  /** The supplier's cut-off on that day. */
  readonly before?: LocalTime;
  /** Day it is at the door when ordered on `orderBy`. */
  readonly arrives: LocalDate;
  /** Working days from today to `orderBy`; 0 = today. */
  readonly daysToSpare: number;
}

/**
 * Last safe order date for something that is needed on `day`: counted back from the day over the working days to spare, to the supplier's
 * last delivery day, and over its lead time; weekends, holidays and days on which it is closed do not count. `undefined` if that day has
 * passed, or its cut-off has.
 */
export function orderDateFor(
  problem: Pick<PurchaseProblem, 'today' | 'now' | 'daysToSpare' | 'holidays'>,
  supplier: PurchaseSupplier,
  day: LocalDate,
): OrderDate | undefined {
  const closed = new Set([...problem.holidays, ...(supplier.closedOn ?? [])]);
  const earliest = firstOrderDay(problem, supplier, closed);
  const wanted = workingDaysBefore(day, problem.daysToSpare, new Set(problem.holidays));
  let door = workingDaysBefore(wanted, 0, closed);
  while (!deliversOn(supplier, door)) {
    if (daysBetween(problem.today, door) < -7) return undefined;
    door = workingDaysBefore(addDays(door, -1), 0, closed);
  }
  const orderBy = workingDaysBefore(door, supplier.leadWorkingDays, closed);
  if (daysBetween(earliest, orderBy) < 0) return undefined;
  return {
    orderBy,
    ...(supplier.orderBefore === undefined ? {} : { before: supplier.orderBefore }),
    arrives: arrivalOf(supplier, orderBy, closed),
    daysToSpare: workingDaysFrom(problem.today, orderBy, closed),
  };
}

const deliversOn = (supplier: PurchaseSupplier, day: LocalDate): boolean =>
  supplier.deliveryDays === undefined || supplier.deliveryDays.includes(weekdayOf(day));

/** Day on which an order placed on `orderDay` is at the door. */
export const arrivalAt = (supplier: PurchaseSupplier, orderDay: LocalDate, holidays: readonly LocalDate[]): LocalDate =>
  arrivalOf(supplier, orderDay, new Set([...holidays, ...(supplier.closedOn ?? [])]));

function arrivalOf(supplier: PurchaseSupplier, orderDay: LocalDate, closed: ReadonlySet<LocalDate>): LocalDate {
  let day = workingDaysAfter(orderDay, supplier.leadWorkingDays, closed);
  while (!deliversOn(supplier, day)) day = workingDaysAfter(addDays(day, 1), 0, closed);
  return day;
}
function firstOrderDay(
  problem: Pick<PurchaseProblem, 'today' | 'now'>,
  supplier: PurchaseSupplier,
  closed: ReadonlySet<LocalDate>,
): LocalDate {
  const isLate = problem.now !== undefined && supplier.orderBefore !== undefined && minuteOf(problem.now) >= minuteOf(supplier.orderBefore);
  return workingDaysAfter(isLate ? addDays(problem.today, 1) : problem.today, 0, closed);
}
function workingDaysFrom(from: LocalDate, to: LocalDate, closed: ReadonlySet<LocalDate>): number {
  let days = 0;
  for (let day = workingDaysAfter(from, 0, closed); daysBetween(day, to) > 0; day = workingDaysAfter(day, 1, closed)) days++;
  return days;
}
