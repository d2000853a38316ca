import { day, type Day } from "./day.ts";

/** A wall clock: the day and the minutes since its midnight that a clock on the kitchen wall shows. */
export type WallClock = { readonly day: Day; readonly minutes: number };

/** Whether this is the name of a zone in the IANA time zone database, as `Europe/Oslo` is. */
export function isTimeZone(name: string): boolean {
  try {
    new Intl.DateTimeFormat("en", { timeZone: name });
    return name.includes("/") || name === "UTC";
  } catch {
    return false;
  }
}

/** The zones a person may pick from, by name; `isTimeZone` takes their other names too. */
export function timeZones(): readonly string[] {
  return [...new Set(["UTC", ...Intl.supportedValuesOf("timeZone")])].sort();
}

const formats = new Map<string, Intl.DateTimeFormat>();

/** What the clock on the wall shows in a zone at an instant. Throws when there is no such zone. */
export function wallClock(instant: Date, zone: string): WallClock {
  const local = new Date(instant.getTime() + offsetSeconds(instant, zone) * 1000);
  return {
    day: day(local.toISOString().slice(0, 10)),
    minutes: local.getUTCHours() * 60 + local.getUTCMinutes(),
  };
}

/** Seconds that a zone's clocks are ahead of UTC at an instant. */
export function offsetSeconds(instant: Date, zone: string): number {
  let format = formats.get(zone);
  if (!format) {
    format = new Intl.DateTimeFormat("en-u-ca-iso8601", {
      ...{ timeZone: zone, hourCycle: "h23", year: "numeric", month: "numeric", day: "numeric" },
      ...{ hour: "numeric", minute: "numeric", second: "numeric" },
    });
    formats.set(zone, format);
  }
  const parts = new Map(format.formatToParts(instant).map(({ type, value }) => [type, value]));
  const part = (name: Intl.DateTimeFormatPartTypes): number => Number(parts.get(name));
  const local = Date.UTC(
    ...([part("year"), part("month") - 1, part("day")] as const),
    ...([part("hour"), part("minute"), part("second")] as const),
  );
  return Math.round((local - Math.floor(instant.getTime() / 1000) * 1000) / 1000);
}

/** A change of a zone's clocks: from `at` on they are `toSeconds` ahead of UTC instead of `fromSeconds`. */
export type ClockChange = {
  readonly at: Date;
  readonly fromSeconds: number;
  readonly toSeconds: number;
};

const HOUR_MS = 3_600_000;
const DAY_MS = 24 * HOUR_MS;

/** Every change of a zone's clocks from one instant to another, earliest first, to the second. */
export function clockChanges(zone: string, from: Date, to: Date): ClockChange[] {
  const changes: ClockChange[] = [];
  let before = offsetSeconds(from, zone);
  // Changes lie weeks apart; a day is fine enough to see each.
  for (let time = from.getTime(); time < to.getTime(); time += DAY_MS) {
    const next = Math.min(time + DAY_MS, to.getTime());
    const after = offsetSeconds(new Date(next), zone);
    if (after === before) continue;
    let [low, high] = [time, next];
    while (high - low > 1000) {
      const middle = Math.floor((low + high) / 2000) * 1000;
      if (middle <= low) break;
      if (offsetSeconds(new Date(middle), zone) === before) low = middle;
      else high = middle;
    }
    changes.push({ at: new Date(high), fromSeconds: before, toSeconds: after });
    before = after;
  }
  return changes;
}

/**
 * The instant at which a zone's wall clock shows a time of a day. Where the clocks are put back and it
 * shows twice, the first; where they are put forward and it never shows, as long after the change as it
 * should have been (RFC 5545 §3.3.5). Minutes may lie outside the day.
 */
export function instantOf(of: Day, minutes: number, zone: string): Date {
  const wall = Date.parse(`${of}T00:00:00Z`) + minutes * 60_000;
  const [before, after] = [wall - DAY_MS, wall + DAY_MS].map((time) =>
    offsetSeconds(new Date(time), zone),
  );
  // With the offset before a change first: that is the first of two, and the rule for the gap.
  for (const offset of [before ?? 0, after ?? 0]) {
    const instant = new Date(wall - offset * 1000);
    if (offsetSeconds(instant, zone) === offset) return instant;
  }
  return new Date(wall - (before ?? 0) * 1000);
}
