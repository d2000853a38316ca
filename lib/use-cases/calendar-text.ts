import ical, { ICalAlarmRelatesTo, ICalAlarmType } from "ical-generator";
import { clockChanges, instantOf, offsetSeconds, type Day } from "#lib/calendar/index.ts";

/** An entry of a calendar. Minutes count from midnight of its day by the kitchen's clock. */
export type CalendarEntry = {
  /** Stays the same while the entry changes, so that a calendar replaces it. */
  readonly uid: string;
  readonly day: Day;
  /** Null: the whole day. */
  readonly from: number | null;
  readonly to: number | null;
  readonly title: string;
  readonly text: string;
  /** When it rings, in minutes from midnight of its day, and what for. */
  readonly alarms: readonly { readonly at: number; readonly text: string }[];
};

const WEEK_MS = 7 * 24 * 3_600_000;

/**
 * A calendar as a text of iCalendar (RFC 5545): local times with the zone's own clock changes written
 * out, so that an entry stays at its time on the kitchen wall whatever a reader knows of the zone.
 * `stamp` is when it was made.
 */
export function calendarText(
  name: string,
  entries: readonly CalendarEntry[],
  zone: string,
  stamp: Date,
): string {
  const times = entries.map(({ day }) => instantOf(day, 0, zone).getTime());
  const from = new Date(Math.min(stamp.getTime(), ...times) - WEEK_MS);
  const to = new Date(Math.max(stamp.getTime(), ...times) + WEEK_MS);
  const calendar = ical({
    name,
    prodId: { company: "Noonbook", product: "Mise", language: "EN" },
    // An empty name keeps the time stamps in UTC, as the standard asks.
    timezone: { name: "", generator: (tzid) => zoneText(tzid, from, to) },
  });
  for (const entry of entries) {
    const event = calendar.createEvent({
      id: entry.uid,
      stamp,
      summary: entry.title,
      description: entry.text,
      allDay: entry.from === null,
      start: new WallDate(instantOf(entry.day, entry.from ?? 0, zone), zone),
      ...(entry.to !== null && { end: new WallDate(instantOf(entry.day, entry.to, zone), zone) }),
      timezone: zone,
    });
    const begins = instantOf(entry.day, entry.from ?? 0, zone).getTime();
    for (const { at, text } of entry.alarms) {
      const seconds = (instantOf(entry.day, at, zone).getTime() - begins) / 1000;
      const trigger = seconds < 0 ? { triggerBefore: -seconds } : { triggerAfter: seconds };
      const alarm = event.createAlarm({
        type: ICalAlarmType.display,
        description: text,
        ...trigger,
      });
      // Set last: the library takes "after" to mean after the end.
      alarm.relatesTo(ICalAlarmRelatesTo.start);
    }
  }
  // Marks that only one program knows stay out.
  return `${calendar.toString().replace(/^X-(?!WR-)[^\r]*\r\n/gm, "")}\r\n`;
}

/** An instant that reads as the wall clock of a zone, whatever zone the machine stands in. */
class WallDate extends Date {
  /** The wall clock's reading, kept as if it were UTC. */
  readonly internal: Date;

  constructor(instant: Date, zone: string) {
    super(instant.getTime());
    this.internal = new Date(instant.getTime() + offsetSeconds(instant, zone) * 1000);
  }
  withTimeZone(): this {
    return this;
  }
  tzComponents(): [string, string, string] {
    return ["", "", ""];
  }
  override getFullYear(): number {
    return this.internal.getUTCFullYear();
  }
  override getMonth(): number {
    return this.internal.getUTCMonth();
  }
  override getDate(): number {
    return this.internal.getUTCDate();
  }
  override getHours(): number {
    return this.internal.getUTCHours();
  }
  override getMinutes(): number {
    return this.internal.getUTCMinutes();
  }
  override getSeconds(): number {
    return this.internal.getUTCSeconds();
  }
}

/** The VTIMEZONE of a zone from one instant to another: every change as an observance of its own. */
function zoneText(zone: string, from: Date, to: Date): string {
  const changes = clockChanges(zone, from, to);
  const first = { at: from, fromSeconds: offsetSeconds(from, zone) };
  const observances = [{ ...first, toSeconds: first.fromSeconds }, ...changes];
  return [
    "BEGIN:VTIMEZONE",
    `TZID:${zone}`,
    ...observances.flatMap(({ at, fromSeconds, toSeconds }) => {
      const kind = toSeconds > fromSeconds ? "DAYLIGHT" : "STANDARD";
      // An onset is written in the local time that held before it (RFC 5545 §3.6.5).
      const onset = new Date(at.getTime() + fromSeconds * 1000);
      return [
        `BEGIN:${kind}`,
        `DTSTART:${onset.toISOString().slice(0, 19).replaceAll(/[-:]/g, "")}`,
        `TZOFFSETFROM:${offsetText(fromSeconds)}`,
        `TZOFFSETTO:${offsetText(toSeconds)}`,
        `END:${kind}`,
      ];
    }),
    "END:VTIMEZONE",
  ].join("\r\n");
}

function offsetText(seconds: number): string {
  const size = Math.abs(seconds);
  const two = (part: number): string => String(Math.floor(part)).padStart(2, "0");
  const rest = size % 60 === 0 ? "" : two(size % 60);
  return `${seconds < 0 ? "-" : "+"}${two(size / 3600)}${two((size % 3600) / 60)}${rest}`;
}
