import { expect, test } from "vitest";
import { day } from "#lib/calendar/index.ts";
import { loadFood, type FoodView } from "#lib/use-cases/larder/load-food.ts";
import { FamilyInput } from "#lib/use-cases/larder/family.input.ts";
import { saveFamily } from "#lib/use-cases/larder/save-family.ts";
import { saveSteps } from "#lib/use-cases/larder/save-steps.ts";
import { StepsInput } from "#lib/use-cases/larder/steps.input.ts";
import { loadCatalogue } from "#lib/use-cases/load-catalogue.ts";
import { readRestRules } from "#lib/use-cases/shown-weeks.ts";
import { readSettings } from "#lib/db/index.ts";
import type { Context } from "#lib/use-cases/context.ts";
import { referenceCatalogue } from "#seed/index.ts";
import { testContext } from "#tests/support/test-context.ts";

async function view(context: Context, id: string): Promise<FoodView> {
  const found = await loadFood(context, id, 1);
  if (!found || "mergedInto" in found) throw new Error(`no food ${id}`);
  return found;
}

test("steps are saved in order, outlive a later catalogue, and a second tab is told", async () => {
  const context = testContext();
  const { steps } = await view(context, "carrot-sticks");
  expect(steps.steps.length).toBeGreaterThan(0);
  const typed = {
    ...steps,
    steps: [
      { ...steps.steps[0], name: "Wash", minutes: "1,5", isAlongside: true },
      { ...steps.steps[0], name: "Cut", minutes: "4", earliest: "morning", keepsMinutes: "90" },
    ],
  };
  expect(await saveSteps(context, StepsInput.parse(typed))).toMatchObject({ ok: true });
  const catalogue = referenceCatalogue();
  await loadCatalogue(context.db, { ...catalogue, version: catalogue.version + 1 });
  const saved = (await view(context, "carrot-sticks")).steps;
  expect(saved.steps.map(({ name, minutes }) => [name, minutes])).toEqual([
    ["Wash", "1.5"],
    ["Cut", "4"],
  ]);
  // The first step has none before it to wait for.
  expect(saved.steps[0]?.isAlongside).toBe(false);
  expect(saved.steps[1]).toMatchObject({ earliest: "morning", keepsMinutes: "90" });
  expect(await saveSteps(context, StepsInput.parse(typed))).toEqual({
    ok: false,
    problem: { kind: "changed-elsewhere" },
  });
});

test("a step without words or minutes is told beside its field", () => {
  const step = { isByHand: true, appliance: "none", earliest: "evening", isAlongside: false };
  const parsed = StepsInput.safeParse({
    foodId: "apple",
    revision: 1,
    steps: [{ ...step, name: " ", minutes: "soon", keepsMinutes: "-1" }],
  });
  expect(parsed.error?.issues.map(({ path }) => path.join("."))).toEqual([
    "steps.0.name",
    "steps.0.minutes",
    "steps.0.keepsMinutes",
  ]);
});

test("a family's own rest goes before the series' rule, and empties again", async () => {
  const context = testContext(day("2026-03-11"));
  const familyId = (await view(context, "carrot-sticks")).family.fields.familyId;
  const restOf = async (): Promise<number | undefined> => {
    const rules = await readRestRules(context.db, await readSettings(context.db));
    return rules.own.get(`family:${familyId}`);
  };
  const before = await restOf();
  const save = (restDays: string) =>
    saveFamily(context, FamilyInput.parse({ familyId, name: "Carrots", restDays }));
  expect(await save("21")).toMatchObject({ ok: true });
  expect((await view(context, "carrot-sticks")).family.fields).toEqual({
    familyId,
    name: "Carrots",
    restDays: "21",
  });
  expect([before, await restOf()]).toEqual([undefined, 21]);
  await save("");
  expect(await restOf()).toBeUndefined();
});
