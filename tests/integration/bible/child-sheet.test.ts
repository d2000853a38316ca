import { expect, test } from "vitest";
import { day, weeksOfMonth } from "#lib/calendar/index.ts";
import { readChildren, readEpisodes, readSettings } from "#lib/db/index.ts";
import { ChildInput } from "#lib/use-cases/bible/child-sheet.input.ts";
import { loadChildSheet, retireChild, saveChild } from "#lib/use-cases/bible/child-sheet.ts";
import type { Context } from "#lib/use-cases/context.ts";
import { planProblemFor } from "#lib/use-cases/plan-problem.ts";
import { readChecks } from "#lib/use-cases/read-checks.ts";
import { proposeMonth } from "#tests/support/propose-month.ts";
import { StartSeriesInput } from "#lib/use-cases/start-series.input.ts";
import { startSeries } from "#lib/use-cases/start-series.ts";
import { testContext } from "#tests/support/test-context.ts";

const PIP = { privateName: "Private One", onScreenName: "Pip", allergens: ["milk"] };
const NEW = {
  ...{ id: "", stamp: "", privateName: "Nilo", onScreenName: "Moth", birthMonth: "2019-04" },
  ...{ portionFactor: 0.8, facePoints: "5", avoidances: [] },
};
const avoid = (kind: string, what: string, severity = "allergy") => ({
  ...{ kind, what, severity, note: "", label: "" },
});

async function started(): Promise<Context> {
  const context = testContext();
  await startSeries(context, StartSeriesInput.parse({ name: "A", children: [PIP] }));
  return context;
}

test("a child is added, read back as typed, and its private name never leaves", async () => {
  const context = await started();
  const avoidances = [
    { ...avoid("allergen", "coconut", "severe"), note: "pen in the bag" },
    avoid("food", "apple", "dislike"),
    avoid("family", "cucumber", "avoid"),
  ];
  const saved = await saveChild(context, ChildInput.parse({ ...NEW, avoidances }));
  if (!saved.ok) throw new Error(saved.problem.kind);
  const sheet = await loadChildSheet(context, saved.value.id);
  const told = avoidances.map(({ kind, what, severity, note }) => ({ kind, what, severity, note }));
  expect(sheet).toMatchObject({
    ...NEW,
    id: saved.value.id,
    stamp: sheet?.stamp,
    avoidances: told,
  });
  expect(sheet?.avoidances.map(({ label }) => label)).toEqual(["coconut", "apple", "cucumber"]);
  expect((await readSettings(context.db)).privateWords).toEqual(["Private One", "Nilo"]);
  expect((await readChildren(context.db)).map((child) => child.position)).toEqual([0, 1]);
});

test("the second of two tabs is told, and what the first saved stands", async () => {
  const context = await started();
  const [pip] = await readChildren(context.db);
  const opened = await loadChildSheet(context, pip?.id);
  const save = (change: object) => saveChild(context, ChildInput.parse({ ...opened, ...change }));
  expect((await save({ avoidances: [avoid("allergen", "egg")] })).ok).toBe(true);
  expect(await save({ portionFactor: 2 })).toEqual({
    ok: false,
    problem: { kind: "changed-elsewhere" },
  });
  const [after] = await readChildren(context.db);
  expect(after?.portionFactor).toBe(1);
  expect(after?.avoidances.map(({ what }) => what)).toEqual(["egg"]);
});

test.each([
  ["a name that gives another child's away", { onScreenName: "One more" }, "onScreenName"],
  ["a private name that is on screen already", { privateName: "Pip" }, "privateName"],
  ["a taken on-screen name", { onScreenName: "pip" }, "onScreenName"],
  ["a month to come", { birthMonth: "2031-01" }, "birthMonth"],
  ["a food that is gone", { avoidances: [avoid("food", "no-such-food")] }, "avoidances.0.what"],
  ["a family that is none", { avoidances: [avoid("family", "nobody")] }, "avoidances.0.what"],
])("%s is refused at its field and nothing is written", async (_, change, field) => {
  const context = await started();
  const outcome = await saveChild(context, ChildInput.parse({ ...NEW, ...change }));
  expect(outcome.ok).toBe(false);
  if (!outcome.ok) expect(outcome.problem.field).toBe(field);
  expect(await context.db.child.count()).toBe(1);
});

test.each([
  ["its own name on screen", { onScreenName: "Nilo the Great" }, "onScreenName"],
  ["a portion below zero", { portionFactor: -1 }, "portionFactor"],
  ["an allergen that is none", { avoidances: [avoid("allergen", "dust")] }, "avoidances.0.what"],
  [
    "the same thing twice",
    { avoidances: [avoid("allergen", "milk"), avoid("allergen", "milk", "avoid")] },
    "avoidances.1.what",
  ],
  ["a 10,000-letter name", { privateName: "x".repeat(10_000) }, "privateName"],
])("%s is malformed and told at its field", (_, change, field) => {
  const parsed = ChildInput.safeParse({ ...NEW, ...change });
  expect(parsed.error?.issues.map(({ path }) => path.join("."))).toContain(field);
});

test("a new allergy takes its foods out of the next proposal, and says whose it is", async () => {
  const context = await started();
  const month = day("2026-04-01");
  const before = await planProblemFor(context.db, weeksOfMonth(month));
  await proposeMonth(context, { month });
  const april = await readEpisodes(context.db, day("2026-03-30"), day("2026-04-30"));
  const held = april.flatMap(({ lunches }) => lunches.flatMap(({ items }) => items));
  const allergen = held.flatMap(({ food }) => food.allergens)[0];
  if (!allergen) throw new Error("The proposal holds no allergen to test with");

  const [pip] = await readChildren(context.db);
  const sheet = await loadChildSheet(context, pip?.id);
  if (!sheet) throw new Error("Pip is gone");
  const avoidances = [...sheet.avoidances, avoid("allergen", allergen)];
  expect((await saveChild(context, ChildInput.parse({ ...sheet, avoidances }))).ok).toBe(true);

  // What stands on the slate already is told: who, and which allergen.
  const lunches = april.flatMap((episode) => episode.lunches);
  const checks = await readChecks(context.db, lunches, await readSettings(context.db));
  const holding = lunches.filter((lunch) =>
    lunch.items.some(({ food }) => food.allergens.includes(allergen)),
  );
  for (const lunch of holding) {
    const told = checks.of(lunch).map((finding) => JSON.stringify(finding));
    expect(told.some((text) => text.includes("Pip") && text.includes(allergen))).toBe(true);
  }

  await context.db.episode.deleteMany();
  expect((await proposeMonth(context, { month })).ok).toBe(true);
  const anew = await readEpisodes(context.db, day("2026-03-30"), day("2026-04-30"));
  const foods = anew.flatMap(({ lunches }) => lunches.flatMap(({ items }) => items));
  expect(foods.length).toBeGreaterThan(50);
  for (const { food } of foods) {
    expect([...food.allergens, ...food.maybeAllergens]).not.toContain(allergen);
  }
  const named = `Pip avoids ${allergen}`;
  const after = await planProblemFor(context.db, weeksOfMonth(month));
  expect(before.forbidden.map(({ name }) => name)).not.toContain(named);
  const list = after.forbidden.find(({ name }) => name === named);
  for (const item of held.filter(({ food }) => food.allergens.includes(allergen))) {
    expect(list?.itemIds).toContain(item.food.id);
  }
});

test("a retired child rules nothing out until it is brought back; a child that is gone is told", async () => {
  const context = await started();
  const id = (await readChildren(context.db))[0]?.id ?? "";
  const weeks = weeksOfMonth(day("2026-04-01"));
  const keptOut = async () =>
    (await planProblemFor(context.db, weeks)).forbidden.some(({ kind }) => kind === "allergen");
  expect(await keptOut()).toBe(true);
  await retireChild(context, { id, isRetired: true });
  expect(await keptOut()).toBe(false);
  await retireChild(context, { id, isRetired: false });
  expect(await keptOut()).toBe(true);
  expect((await retireChild(context, { id: "nobody", isRetired: true })).ok).toBe(false);
});
