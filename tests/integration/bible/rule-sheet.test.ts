import { expect, test } from "vitest";
import { day } from "#lib/calendar/index.ts";
import { readFoods, readSchoolRules } from "#lib/db/index.ts";
import { hardFilter, RULE_STARTS, ruleHolds } from "#lib/safety/index.ts";
import { RuleInput } from "#lib/use-cases/bible/rule-sheet.input.ts";
import {
  loadRuleSheet,
  removeRule,
  saveRule,
  startRuleSheet,
} from "#lib/use-cases/bible/rule-sheet.ts";
import { testContext } from "#tests/support/test-context.ts";

const OUTING = {
  ...{ id: "", stamp: "", name: "Hands only on outing days", traits: ["needs-spoon"] },
  ...{ allergens: [], foods: [{ id: "apple", name: "x" }], from: "2026-03-01", to: "" },
  ...{ weekdays: ["5", "3"], exceptDays: [{ day: "2026-03-13" }], isActive: true },
};

test("a composed rule holds on its days and keeps out what it names", async () => {
  const context = testContext();
  const saved = await saveRule(context, RuleInput.parse(OUTING));
  if (!saved.ok) throw new Error(saved.problem.kind);
  const [record] = await readSchoolRules(context.db);
  if (!record) throw new Error("No rule was written");
  const holds = ["2026-02-27", "2026-03-11", "2026-03-12", "2026-03-13", "2026-03-20"].map((on) =>
    ruleHolds(record.rule, day(on)),
  );
  expect(holds).toEqual([false, true, false, false, true]);
  const isAllowed = hardFilter([], [record.rule], day("2026-03-11"));
  const out = (await readFoods(context.db)).filter((food) => !isAllowed(food));
  expect(out.map((food) => food.id)).toContain("apple");
  expect(out.some((food) => food.traits.includes("needs-spoon"))).toBe(true);
  expect(out.every((food) => food.id === "apple" || food.traits.includes("needs-spoon"))).toBe(
    true,
  );
});

test("a rule is changed, the second tab is told, and it is removed once", async () => {
  const context = testContext();
  const saved = await saveRule(context, RuleInput.parse(OUTING));
  const id = saved.ok ? saved.value.id : "";
  const sheet = await loadRuleSheet(context, id);
  expect(sheet).toMatchObject({ weekdays: ["3", "5"], foods: [{ id: "apple", name: "apple" }] });
  const changed = RuleInput.parse({ ...sheet, isActive: false });
  expect((await saveRule(context, changed)).ok).toBe(true);
  expect(await saveRule(context, changed)).toEqual({
    ok: false,
    problem: { kind: "changed-elsewhere" },
  });
  expect((await readSchoolRules(context.db)).map(({ isActive }) => isActive)).toEqual([false]);
  expect((await removeRule(context, { id })).ok).toBe(true);
  expect((await removeRule(context, { id })).ok).toBe(false);
  expect(await saveRule(context, changed)).toEqual({ ok: false, problem: { kind: "gone" } });
});

test.each(RULE_STARTS.map(({ id }) => id))(
  "the suggestion %s can be saved as it is",
  async (id) => {
    const context = testContext();
    const sheet = await startRuleSheet(context, id);
    expect((await saveRule(context, RuleInput.parse(sheet))).ok).toBe(true);
    const [record] = await readSchoolRules(context.db);
    expect(record?.rule).toEqual(RULE_STARTS.find((one) => one.id === id)?.rule);
  },
);

test.each([
  ["a rule that names nothing", { traits: [], foods: [] }, "traits"],
  ["an end before the start", { to: "2026-02-01" }, "to"],
  ["a date that is none", { from: "2026-02-30" }, "from"],
  ["a lifted day left empty", { exceptDays: [{ day: "" }] }, "exceptDays.0.day"],
  ["no wording", { name: " " }, "name"],
])("%s is told at its field", (_, change, field) => {
  const parsed = RuleInput.safeParse({ ...OUTING, ...change });
  expect(parsed.error?.issues.map(({ path }) => path.join("."))).toContain(field);
});

test("a rule about a food that is gone is refused", async () => {
  const context = testContext();
  const input = RuleInput.parse({ ...OUTING, foods: [{ id: "no-such-food", name: "" }] });
  expect(await saveRule(context, input)).toEqual({
    ok: false,
    problem: { kind: "food-gone", field: "foods" },
  });
});
