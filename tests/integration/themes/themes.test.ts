import { expect, test } from "vitest";
import { day } from "#lib/calendar/index.ts";
import { planProblemFor } from "#lib/use-cases/plan-problem.ts";
import { findThemes } from "#lib/use-cases/themes/find-themes.ts";
import { loadThemes } from "#lib/use-cases/themes/load-themes.ts";
import { addIdea, settleIdea } from "#lib/use-cases/themes/ideas.ts";
import { FindThemesInput, SettleIdeaInput, ThemeInput } from "#lib/use-cases/themes/theme.input.ts";
import {
  listEvents,
  loadThemeSheet,
  retireTheme,
  saveTheme,
} from "#lib/use-cases/themes/theme-sheet.ts";
import type { Context } from "#lib/use-cases/context.ts";
import { testContext } from "#tests/support/test-context.ts";

async function add(context: Context, change: object): Promise<string> {
  const empty = await loadThemeSheet(context, undefined);
  const saved = await saveTheme(context, ThemeInput.parse({ ...empty, ...change }));
  if (!saved.ok) throw new Error(saved.problem.kind);
  return saved.value.id;
}
const viewOf = async (context: Context, id: string) =>
  (await loadThemes(context)).themes.find((theme) => theme.id === id);

test("a theme tells how often and when it was on, and the first week it may be on again", async () => {
  const context = testContext("2026-03-11");
  const id = await add(context, { name: "Crumb Street", restDays: "40", motifs: "Crumb\nstreet" });
  expect(await viewOf(context, id)).toMatchObject({
    times: 0,
    lastOn: null,
    possibleOn: "2026-03-09",
  });
  for (const [number, weekOf] of [
    [1, "2025-10-06"],
    [2, "2026-02-23"],
  ] as const) {
    await context.db.episode.create({ data: { number, weekOf, themeId: id } });
  }
  // 23 February and 40 days is Saturday 4 April; the Monday after it is the 6th.
  expect(await viewOf(context, id)).toMatchObject({
    ...{ motifs: ["crumb", "street"], times: 2, lastOn: "2026-02-23", plannedOn: null },
    possibleOn: "2026-04-06",
  });
});

test("a moving feast moves the next possible week with it", async () => {
  const context = testContext("2026-03-11");
  const feast = { season: "feast", feast: "easter", before: 6, after: 0 };
  const id = await add(context, { name: "Egg Hunt Yard", ...feast });
  // Western Easter: 5 April 2026 and 28 March 2027 (tables of the US Census Bureau, from memory).
  expect((await viewOf(context, id))?.possibleOn).toBe("2026-03-30");
  await context.db.episode.create({ data: { number: 1, weekOf: "2026-03-30", themeId: id } });
  expect(await viewOf(context, id)).toMatchObject({
    plannedOn: "2026-03-30",
    possibleOn: "2027-03-22",
  });
});

test("themes near to each other are flagged both ways, and a retired one flags nobody", async () => {
  const context = testContext();
  const one = await add(context, { name: "Quay Lamps", motifs: "quay\nlamp" });
  const other = await add(context, { name: "Lamps by Night", motifs: "lamp\nquay" });
  const near = async (id: string) => (await viewOf(context, id))?.near.map((theme) => theme.id);
  expect(await near(one)).toContain(other);
  expect(await near(other)).toContain(one);
  await retireTheme(context, { id: other, isRetired: true });
  expect(await near(one)).not.toContain(other);
});

test("a second tab, a taken name and a theme that is gone are told", async () => {
  const context = testContext();
  const id = await add(context, { name: "Quay Lamps", season: "months", months: ["5"] });
  const sheet = await loadThemeSheet(context, id);
  const save = (change: object) => saveTheme(context, ThemeInput.parse({ ...sheet, ...change }));
  expect(await save({ name: "tide pool" })).toMatchObject({ problem: { field: "name" } });
  expect((await save({ note: "one" })).ok).toBe(true);
  expect(await save({ note: "two" })).toMatchObject({ problem: { kind: "changed-elsewhere" } });
  expect(await save({ id: "gone" })).toMatchObject({ problem: { kind: "gone" } });
  expect(ThemeInput.safeParse({ ...sheet, months: [] }).success).toBe(false);
  expect(ThemeInput.safeParse({ ...sheet, season: "date", month: 4, date: 31 }).success).toBe(
    false,
  );
});

test("an idea becomes a theme or a wished food whose label nobody has read, or is passed over", async () => {
  const context = testContext();
  for (const text of ["a train", "dragon fruit cake", "no"]) await addIdea(context, { text });
  const { ideas } = await loadThemes(context);
  const settle = (text: string, into: string, name = "") => {
    const id = ideas.find((idea) => idea.text === text)?.id;
    return settleIdea(context, SettleIdeaInput.parse({ id, into, name }));
  };
  expect(() => settle("a train", "theme")).toThrow();
  expect((await settle("a train", "theme", "Sleeper Train")).ok).toBe(true);
  expect((await settle("dragon fruit cake", "food", "Dragon cake")).ok).toBe(true);
  expect((await settle("no", "passed")).ok).toBe(true);
  expect((await loadThemes(context)).themes.map(({ name }) => name)).toContain("Sleeper Train");
  const food = await context.db.food.findFirst({ where: { name: "Dragon cake" } });
  expect(food?.isWish).toBe(true);
  expect(JSON.parse(food?.maybeJson ?? "[]")).toHaveLength(18);
  expect((await loadThemes(context)).ideas.map(({ state }) => state).sort()).toEqual([
    "food",
    "passed",
    "theme",
  ]);
});

test("a season by days off follows them, and a week without school is never the next possible", async () => {
  const context = testContext("2026-03-11");
  const season = { season: "event", event: "Spring break" };
  const before = await add(context, { name: "Bags by the Door", ...season, weeks: "week-before" });
  const during = await add(context, { name: "Quiet Corridors", ...season, weeks: "during" });
  expect((await viewOf(context, before))?.possibleOn).toBe(null);
  const off = { label: "Spring break", from: "2026-04-06", to: "2026-04-10" };
  const { id } = await context.db.dayOff.create({ data: off });
  expect(await viewOf(context, before)).toMatchObject({
    ...{ possibleOn: "2026-03-30", isInSeasonNextMonth: true },
  });
  expect((await viewOf(context, during))?.possibleOn).toBe(null);
  const moved = { from: "2026-05-13", to: "2026-05-15" };
  await context.db.dayOff.update({ where: { id }, data: moved });
  expect(await viewOf(context, before)).toMatchObject({
    ...{ possibleOn: "2026-05-04", isInSeasonNextMonth: false },
  });
  expect((await viewOf(context, during))?.possibleOn).toBe("2026-05-11");
  const plan = await planProblemFor(context.db, [day("2026-05-04"), day("2026-05-11")]);
  const out = plan.themes.find((theme) => theme.id === before)?.notIn.map(({ monday }) => monday);
  expect(out).toEqual(["2026-05-11"]);
  const sheet = await loadThemeSheet(context, before);
  expect(await saveTheme(context, ThemeInput.parse({ ...sheet, note: "bell" }))).toMatchObject({
    ok: true,
  });
  expect((await viewOf(context, before))?.season).toMatchObject({
    kind: "event",
    ...{ event: off.label },
  });
  expect(ThemeInput.safeParse({ ...sheet, event: " " }).success).toBe(false);
  expect(await listEvents(context, "SPRING break")).toEqual(["SPRING break"]);
});

test("the pool is found by every typed word, by next month and by never used", async () => {
  const context = testContext("2026-03-11");
  await context.db.theme.updateMany({ data: { retiredAt: context.now } });
  const april = { season: "months", months: ["4"] };
  await add(context, { name: "Any Day Quay", motifs: "quay" });
  await add(context, { name: "Rain Quay", motifs: "cloud", ...april });
  const used = await add(context, { name: "Quay Market", ...april });
  await add(context, { name: "Snow", season: "months", months: ["1"] });
  await context.db.episode.create({ data: { number: 1, weekOf: "2026-02-23", themeId: used } });
  const { themes } = await loadThemes(context);
  const named = (asked: object) =>
    findThemes(themes, FindThemesInput.parse(asked))
      .filter(({ isRetired }) => !isRetired)
      .map(({ name }) => name);
  expect(named({})).toEqual(["Any Day Quay", "Quay Market", "Rain Quay", "Snow"]);
  expect(named({ q: "QUAY cloud" })).toEqual(["Rain Quay"]);
  expect(named({ season: "next-month" })).toEqual(["Quay Market", "Rain Quay", "Any Day Quay"]);
  expect(named({ used: "never", q: "quay" })).toEqual(["Any Day Quay", "Rain Quay"]);
  expect(named({ season: "never", used: 7, q: ["x"] })).toHaveLength(4);
});
