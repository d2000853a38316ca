import { addDays, type Day, minutesOfDay, weekdayOf } from "#lib/calendar/index.ts";
import type { ClockTime, Weekday } from "#lib/calendar/index.ts";
import type { PossibleTrip } from "./problem.ts";

/** A stretch of one weekday. */
export type Hours = {
  readonly weekday: Weekday;
  readonly from: ClockTime;
  readonly until: ClockTime;
};

/** A shop as far as going there is concerned. */
export type ShopToVisit = {
  readonly id: string;
  readonly open: readonly Hours[];
  readonly closedOn: readonly Day[];
  /** Minutes a visit takes. */
  readonly minutes: number;
  /** What going there is worth avoiding, in cents. */
  readonly tripCents: number;
};

/**
 * The trips that could be made from `from` to `to`: the shop is open long enough for a visit within a
 * stretch in which the user goes shopping. In order of day, then as the shops are given.
 */
export function possibleTrips(
  shops: readonly ShopToVisit[],
  shoppingHours: readonly Hours[],
  from: Day,
  to: Day,
): PossibleTrip[] {
  const trips: PossibleTrip[] = [];
  for (let day = from; day <= to; day = addDays(day, 1)) {
    for (const shop of shops) {
      const isOpen = !shop.closedOn.includes(day) && hasTime(shop, shoppingHours, weekdayOf(day));
      if (isOpen) trips.push({ shopId: shop.id, day, cents: shop.tripCents });
    }
  }
  return trips;
}

function hasTime(shop: ShopToVisit, shoppingHours: readonly Hours[], weekday: Weekday): boolean {
  return shop.open.some(
    (open) =>
      open.weekday === weekday &&
      shoppingHours.some(
        (mine) => mine.weekday === weekday && sharedMinutes(open, mine) >= shop.minutes,
      ),
  );
}

function sharedMinutes(one: Hours, other: Hours): number {
  const from = Math.max(minutesOfDay(one.from), minutesOfDay(other.from));
  return Math.min(minutesOfDay(one.until), minutesOfDay(other.until)) - from;
}
