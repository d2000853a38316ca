import { describe, expect, test } from "vitest";
import { proposePlan } from "#lib/planner/index.ts";
import { brokenRules } from "../../support/check-plan.ts";
import { MONTH, planInstance } from "../../support/plan-instance.ts";

describe("a plan proposed without the solver", () => {
  test.each(["1", "2", "3"])("breaks no rule of a month (%s)", (seed) => {
    const problem = planInstance({ ...MONTH, seed });
    const { plan, broken } = proposePlan(problem, { seed: "a" });
    expect(broken).toBe(0);
    expect(brokenRules(problem, plan)).toEqual([]);
  });

  test("is the same for the same seed, and better after more steps", () => {
    const problem = planInstance(MONTH);
    const first = proposePlan(problem, { seed: "a", steps: 20_000 });
    expect(proposePlan(problem, { seed: "a", steps: 20_000 })).toEqual(first);
    expect(proposePlan(problem, { seed: "a", steps: 80_000 }).points).toBeGreaterThan(first.points);
  });

  test("keeps what is locked, item and theme", () => {
    const open = planInstance(MONTH);
    const { plan } = proposePlan(open, { seed: "a" });
    const week = plan.weeks[1];
    const lunch = week?.lunches[2];
    if (!week || !lunch) throw new Error("the plan has no such lunch");
    const problem = {
      ...open,
      weeks: open.weeks.map((entry) =>
        entry.monday === week.monday ? { ...entry, lockedThemeId: week.themeId } : entry,
      ),
      locks: lunch.itemIds.map((itemId) => ({ date: lunch.date, itemId })),
    };
    const again = proposePlan(problem, { seed: "b" }).plan.weeks[1];
    expect(again?.themeId).toBe(week.themeId);
    expect(again?.lunches[2]?.itemIds).toEqual(expect.arrayContaining([...lunch.itemIds]));
  });
});
