import ICAL from "ical.js";
import { expect, test } from "vitest";
import { addDays } from "#lib/calendar/index.ts";
import { writeSettings } from "#lib/db/index.ts";
import { loadDemo } from "#lib/use-cases/load-demo.ts";
import { loadDayCalendar, loadKitchenCalendar } from "#lib/use-cases/load-kitchen-calendar.ts";
import { loadMise } from "#lib/use-cases/load-mise.ts";
import { tinHarbour } from "#seed/demo/index.ts";
import { referenceThemes } from "#seed/index.ts";
import { testContext } from "#tests/support/test-context.ts";

const ZONE = "Europe/Oslo";

async function demo() {
  const context = testContext();
  const outcome = await loadDemo(context, tinHarbour, referenceThemes());
  expect(outcome.ok).toBe(true);
  return context;
}

function eventsOf(text: string) {
  const calendar = new ICAL.Component(ICAL.parse(text) as unknown[]);
  for (const zone of calendar.getAllSubcomponents("vtimezone")) ICAL.TimezoneService.register(zone);
  return new Map(
    calendar
      .getAllSubcomponents("vevent")
      .map((component) => new ICAL.Event(component))
      .map((event) => [event.uid, event]),
  );
}
const wall = (time: ICAL.Time): string => time.toString().slice(0, 16);

test("the feed holds every lunch's prep and door at the times the mise shows", async () => {
  const context = await demo();
  const events = eventsOf(await loadKitchenCalendar(context, ZONE));
  const lunches = await context.db.lunch.findMany({
    where: { date: { gte: addDays(context.today, -7), lte: addDays(context.today, 42) } },
  });
  expect(lunches.length).toBeGreaterThan(10);
  for (const { date } of lunches) expect(events.has(`door-${date}@noonbook`)).toBe(true);
  const mise = await loadMise(context, context.today, ZONE);
  const morning = events.get(`morning-${context.today}@noonbook`);
  const evening = events.get(`evening-${context.today}@noonbook`);
  expect(morning && wall(morning.startDate)).toBe(`${context.today}T${mise?.times.latestStart}`);
  expect(evening && wall(evening.startDate)).toBe(
    `${addDays(context.today, -1)}T${mise?.evening[0]?.starts}`,
  );
  const alarms = morning?.component.getAllSubcomponents("valarm") ?? [];
  expect(alarms.length).toBeGreaterThan(0);
  expect(alarms[0]?.getFirstPropertyValue("description")).toBe(mise?.morning[0]?.line);
});

test("shopping days ring; a run that is done does not", async () => {
  const context = await demo();
  const run = { shopId: "quayside-greens", weekOf: "2026-03-09" };
  await context.db.errandRun.createMany({
    data: [
      { ...run, id: "to-do", date: "2026-03-12" },
      { ...run, id: "done", date: "2026-03-10", doneAt: context.now },
    ],
  });
  const events = eventsOf(await loadKitchenCalendar(context, ZONE));
  expect(events.has("errand-done@noonbook")).toBe(false);
  const errand = events.get("errand-to-do@noonbook");
  expect(errand?.summary).toBe("Errands: Quayside Greens");
  expect(errand?.startDate.isDate).toBe(true);
  expect(errand?.component.getAllSubcomponents("valarm")).toHaveLength(1);
});

test("no child is named, on screen or in private", async () => {
  const text = await loadKitchenCalendar(await demo(), ZONE);
  expect(text).not.toMatch(/Ines|Tomas|Biscuit|Pepper/);
});

test("a zone of the settings goes before the machine's", async () => {
  const context = await demo();
  await writeSettings(context.db, { timeZone: "America/New_York" });
  const text = await loadDayCalendar(context, context.today, ZONE);
  expect(text).toContain("TZID:America/New_York");
  expect(text).not.toContain("Oslo");
  await expect(writeSettings(context.db, { timeZone: "Mars/Olympus" })).rejects.toThrow(
    /not a time zone/,
  );
});

test("a day without a lunch has no calendar", async () => {
  const context = await demo();
  expect(await loadDayCalendar(context, addDays(context.today, 3), ZONE)).toBeUndefined();
});
