import ICAL from "ical.js";
import { afterEach, beforeEach, describe, expect, test } from "vitest";
import { day, instantOf, isTimeZone, wallClock } from "#lib/calendar/index.ts";
import { calendarText, type CalendarEntry } from "#lib/use-cases/calendar-text.ts";

const STAMP = new Date("2026-03-01T12:00:00Z");

function entry(on: string, more: Partial<CalendarEntry> = {}): CalendarEntry {
  return {
    ...{ uid: `morning-${on}@noonbook`, day: day(on), from: 451, to: 470 },
    ...{ title: "Morning prep", text: "Toast", alarms: [] },
    ...more,
  };
}

/** The events of a text as ical.js, a parser of its own, reads them, by the zones in the text alone. */
function read(text: string) {
  const calendar = new ICAL.Component(ICAL.parse(text) as unknown[]);
  for (const zone of calendar.getAllSubcomponents("vtimezone")) {
    // Only what the text says of the zone counts.
    ICAL.TimezoneService.register(zone);
  }
  return calendar.getAllSubcomponents("vevent").map((component) => new ICAL.Event(component));
}

// 07:31 on the kitchen wall. Changes of 2026: EU 29 March and 25 October at 01:00 UTC (Directive
// 2000/84/EC); US 8 March and 1 November (Energy Policy Act of 2005); Auckland 5 April, 27 September
// (Time Act 1974, Order 2007); Lord Howe half an hour on 5 April. Instants worked out by hand.
const MORNINGS = [
  ["Europe/Oslo", "2026-03-27", "2026-03-27T06:31:00Z"],
  ["Europe/Oslo", "2026-03-30", "2026-03-30T05:31:00Z"],
  ["Europe/Oslo", "2026-10-23", "2026-10-23T05:31:00Z"],
  ["Europe/Oslo", "2026-10-26", "2026-10-26T06:31:00Z"],
  ["America/New_York", "2026-03-06", "2026-03-06T12:31:00Z"],
  ["America/New_York", "2026-03-09", "2026-03-09T11:31:00Z"],
  ["America/New_York", "2026-11-02", "2026-11-02T12:31:00Z"],
  ["Pacific/Auckland", "2026-04-03", "2026-04-02T18:31:00Z"],
  ["Pacific/Auckland", "2026-04-06", "2026-04-05T19:31:00Z"],
  ["Australia/Lord_Howe", "2026-04-03", "2026-04-02T20:31:00Z"],
  ["Australia/Lord_Howe", "2026-04-06", "2026-04-05T21:01:00Z"],
  ["Asia/Kolkata", "2026-06-01", "2026-06-01T02:01:00Z"],
  ["Asia/Tokyo", "2026-03-30", "2026-03-29T22:31:00Z"],
  ["UTC", "2026-03-30", "2026-03-30T07:31:00Z"],
] as const;

describe.each(["UTC", "America/Los_Angeles", "Pacific/Auckland"])(
  "on a machine in %s",
  (machine) => {
    const before = process.env["TZ"];
    beforeEach(() => {
      process.env["TZ"] = machine;
      ICAL.TimezoneService.reset();
    });
    afterEach(() => {
      if (before === undefined) delete process.env["TZ"];
      else process.env["TZ"] = before;
    });

    test.each(MORNINGS)("07:31 in %s on %s is %s", (zone, on, instant) => {
      const text = calendarText(
        "Kitchen",
        MORNINGS.map(([, other]) => entry(other)),
        zone,
        STAMP,
      );
      const event = read(text).find(({ uid }) => uid === `morning-${on}@noonbook`);
      expect(event?.startDate.toJSDate().toISOString()).toBe(new Date(instant).toISOString());
      expect(event?.startDate.toString()).toBe(`${on}T07:31:00${zone === "UTC" ? "Z" : ""}`);
      expect(event?.duration.toSeconds()).toBe(19 * 60);
    });

    test("the evening before a change of the clocks is on its own side of it", () => {
      // Sunday 29 March 19:00 in Oslo is after the change; Saturday's is before.
      const monday = entry("2026-03-30", { from: 19 * 60 - 1440, to: 20 * 60 - 1440 });
      const sunday = entry("2026-03-29", { from: 19 * 60 - 1440, to: 20 * 60 - 1440 });
      const starts = read(calendarText("Kitchen", [monday, sunday], "Europe/Oslo", STAMP)).map(
        ({ startDate }) => startDate.toJSDate().toISOString(),
      );
      expect(starts).toEqual(["2026-03-29T17:00:00.000Z", "2026-03-28T18:00:00.000Z"]);
    });

    test("a shopping day is a whole day and rings at eight by the wall", () => {
      const errand = entry("2026-03-29", {
        ...{ from: null, to: null, alarms: [{ at: 8 * 60, text: "Errands" }] },
      });
      const text = calendarText("Kitchen", [errand], "Europe/Oslo", STAMP);
      const [event] = read(text);
      expect(event?.startDate.isDate).toBe(true);
      expect(event?.startDate.toString()).toBe("2026-03-29");
      // The clocks went forward at two: eight o'clock is seven hours after midnight.
      expect(text).toContain("TRIGGER;RELATED=START:PT7H\r\n");
    });
  },
);

test("alarms ring before, at and after the start", () => {
  const alarms = [441, 451, 460].map((at) => ({ at, text: `at ${at}` }));
  const [event] = read(calendarText("K", [entry("2026-03-11", { alarms })], "Europe/Oslo", STAMP));
  const triggers = event?.component
    .getAllSubcomponents("valarm")
    .map((alarm) => (alarm.getFirstPropertyValue("trigger") as ICAL.Duration).toSeconds());
  expect(triggers).toEqual([-600, 0, 540]);
});

test("the text keeps to RFC 5545: CRLF, lines of at most 75 octets, stamps in UTC, one zone", () => {
  const long = entry("2026-03-11", {
    ...{
      title: "Prep; with, marks \\ and “quotes”",
      text: `${"Grøt og brød, ".repeat(30)}\nSlutt`,
    },
  });
  const text = calendarText("Kitchen", [long], "Europe/Oslo", STAMP);
  const lines = text.split("\r\n");
  expect(lines.at(-1)).toBe("");
  for (const line of lines) {
    expect(line).not.toMatch(/[\r\n]/);
    expect(Buffer.byteLength(line)).toBeLessThanOrEqual(75);
  }
  expect(lines.filter((line) => line === "BEGIN:VTIMEZONE")).toHaveLength(1);
  expect(lines).toContain("DTSTAMP:20260301T120000Z");
  const [event] = read(text);
  expect(event?.summary).toBe(long.title);
  expect(event?.description).toBe(long.text);
});

describe("the wall clock", () => {
  test("that shows a time twice means the first, one that skips it means as long after", () => {
    const oslo = (on: string, minutes: number) =>
      instantOf(day(on), minutes, "Europe/Oslo").toISOString();
    expect(oslo("2026-10-25", 150)).toBe("2026-10-25T00:30:00.000Z");
    expect(oslo("2026-03-29", 150)).toBe("2026-03-29T01:30:00.000Z");
  });

  test("of an instant turns back into it, every quarter of an hour of a year", () => {
    for (const zone of ["Europe/Oslo", "America/St_Johns", "Australia/Lord_Howe"]) {
      const start = Date.parse("2026-01-01T00:00:00Z");
      for (let quarter = 0; quarter < 365 * 96; quarter += 7) {
        const instant = new Date(start + quarter * 900_000);
        const clock = wallClock(instant, zone);
        const back = instantOf(clock.day, clock.minutes, zone);
        // A time that the clocks show twice means the first.
        const again = wallClock(back, zone);
        expect(again).toEqual(clock);
        expect(back.getTime()).toBeLessThanOrEqual(instant.getTime());
      }
    }
  });

  test.each([
    ["Europe/Oslo", true],
    ["UTC", true],
    ["Mars/Olympus", false],
    ["", false],
    ["half past", false],
  ])("%s is a zone: %s", (name, is) => {
    expect(isTimeZone(name)).toBe(is);
  });
});
