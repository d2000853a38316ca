import { ClockTime, type Day, type Weekday } from "#lib/calendar/index.ts";
import type { ShopRecord } from "#lib/db/index.ts";
import { possibleTrips, type Hours, type PossibleTrip } from "#lib/shopping/index.ts";

/** What one more trip is worth avoiding, in hundredths of the user's money, and more for each shop farther out (common practice, no source). */
const TRIP_CENTS = 200;
const FARTHER_CENTS = 50;
const VISIT_MINUTES = 15;
const ALL_WEEK: readonly Weekday[] = [1, 2, 3, 4, 5, 6, 7];

/** The trips that can be made in a span: each shop on its days, nearer shops costing less. */
export function tripsTo(shops: readonly ShopRecord[], from: Day, to: Day): PossibleTrip[] {
  const visits = shops.map((shop, index) => ({
    id: shop.id,
    open: openHours(shop),
    closedOn: [],
    minutes: VISIT_MINUTES,
    tripCents: TRIP_CENTS + FARTHER_CENTS * index,
  }));
  return possibleTrips(visits, ALL_WEEK.map(wholeDay), from, to);
}

/** A shop's days with its hours; the whole day where hours are not said as "08:00–16:00". */
function openHours({ days, hours }: ShopRecord): Hours[] {
  const weekdays = ALL_WEEK.filter((weekday) => days.length === 0 || days.includes(weekday));
  const [, from, until] = /^(\d{1,2}:\d{2})\s*[–-]\s*(\d{1,2}:\d{2})$/.exec(hours.trim()) ?? [];
  const [opens, closes] = [readTime(from), readTime(until)];
  if (!opens || !closes) return weekdays.map(wholeDay);
  return weekdays.map((weekday) => ({ weekday, from: opens, until: closes }));
}

function readTime(text: string | undefined): ClockTime | undefined {
  const parsed = ClockTime.safeParse((text ?? "").padStart(5, "0"));
  return parsed.success ? parsed.data : undefined;
}

function wholeDay(weekday: Weekday): Hours {
  return { weekday, from: ClockTime.parse("00:00"), until: ClockTime.parse("23:59") };
}
