import ICAL from "ical.js";
import { expect, test } from "vitest";
import { addDays, mondayOf } from "#lib/calendar/index.ts";
import { writeSettings } from "#lib/db/index.ts";
import { loadErrands } from "#lib/use-cases/errands/load-errands.ts";
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
  const nextWeek = addDays(mondayOf(context.today), 7);
  const planned = (await loadErrands(context, nextWeek))?.runs ?? [];
  expect(planned.length).toBeGreaterThan(0);
  const uidOf = ({ shopId, day }: (typeof planned)[number]) => `errand-${shopId}-${day}@noonbook`;
  const before = eventsOf(await loadKitchenCalendar(context, ZONE));
  for (const run of planned) {
    const errand = before.get(uidOf(run));
    expect(errand?.summary).toBe(`Errands: ${run.shopName}`);
    expect(errand?.startDate.toString()).toBe(run.day);
    expect(errand?.component.getAllSubcomponents("valarm")).toHaveLength(1);
  }
  const [done] = planned;
  if (!done) throw new Error("no run");
  await context.db.errandRun.create({
    data: { shopId: done.shopId, date: done.day, weekOf: nextWeek, doneAt: context.now },
  });
  const after = eventsOf(await loadKitchenCalendar(context, ZONE));
  expect(after.has(uidOf(done))).toBe(false);
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
