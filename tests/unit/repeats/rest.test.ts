import { describe, expect, test } from "vitest";
import { day } from "#lib/calendar/index.ts";
import {
  checkRest,
  DEFAULT_REST_DAYS,
  describeRest,
  historyOf,
  nextPossible,
  restKey,
  type RestRules,
} from "#lib/repeats/index.ts";
import { item, weekOf } from "./weeks.ts";

const rules: RestRules = { days: DEFAULT_REST_DAYS, own: new Map() };
const past = {
  ...weekOf("2026-03-02", [], { themeId: "tide-pool", motifs: ["sea"] }),
  items: [
    item(day("2026-03-06"), "apple-slices", { productId: "red-bag", trickIds: ["star"] }),
    item(day("2026-03-06"), "water", { isStaple: true }),
  ],
};

/** A planned Monday 9 March 2026 with one item, three days after Friday's lunch. */
function planned(...args: Parameters<typeof item> extends [unknown, ...infer Rest] ? Rest : never) {
  return { ...weekOf("2026-03-09", []), items: [item(day("2026-03-09"), ...args)] };
}

describe("rest windows", () => {
  test.each([
    ["product", planned("apple-slices", { productId: "red-bag" }), "red-bag"],
    ["food", planned("apple-slices", { productId: "green-bag" }), "apple-slices"],
    ["trick", planned("pear", { trickIds: ["star"] }), "star"],
    ["theme", { ...planned("pear"), themeId: "tide-pool" }, "tide-pool"],
    ["motif", { ...planned("pear"), motifs: ["sea"] }, "sea"],
  ] as const)("are checked for the same %s", (level, week, what) => {
    expect(checkRest(week, historyOf([past]), rules)).toMatchObject([{ level, what }]);
  });

  test("are checked for the same family, when the food is another", () => {
    const days = { ...DEFAULT_REST_DAYS, family: 4 };
    const found = checkRest(planned("apple-sauce"), historyOf([past]), { ...rules, days });
    expect(found).toEqual([
      {
        level: "family",
        what: "apple",
        foodId: "apple-sauce",
        on: "2026-03-09",
        lastOn: "2026-03-06",
        daysAgo: 3,
        restDays: 4,
        rule: "series",
      },
    ]);
  });

  test("are over on the very day they end", () => {
    const own = new Map([[restKey("food", "apple-slices"), 3]]);
    expect(checkRest(planned("apple-slices"), historyOf([past]), { ...rules, own })).toEqual([]);
  });

  test("give way to a thing's own days", () => {
    const own = new Map([[restKey("food", "apple-slices"), 30]]);
    const [found] = checkRest(planned("apple-slices"), historyOf([past]), { ...rules, own });
    expect(found).toMatchObject({ restDays: 30, rule: "own", daysAgo: 3 });
    expect(nextPossible("food", "apple-slices", historyOf([past]), { ...rules, own })).toBe(
      "2026-04-05",
    );
  });

  test("do not touch staples", () => {
    const week = planned("water", { isStaple: true });
    expect(checkRest(week, historyOf([past]), rules)).toEqual([]);
  });

  test("see a repeat inside the same week, and do not count the day itself", () => {
    const week = weekOf("2026-03-09", ["pear", "plum", "pear"]);
    expect(checkRest(week, historyOf([week]), rules)).toMatchObject([
      { what: "pear", on: "2026-03-11", lastOn: "2026-03-09", daysAgo: 2 },
    ]);
  });

  test("are told in one sentence", () => {
    const [warning] = checkRest(planned("apple-slices"), historyOf([past]), rules);
    expect(warning && describeRest(warning, () => "apple slices")).toBe(
      'The food "apple slices" was last on Fri 6 March 2026, 3 days before; the rule for any food is 7 days.',
    );
  });

  test("of a narrow level are never shorter than of a wider one", () => {
    const { product, food, family } = DEFAULT_REST_DAYS;
    expect(product).toBeGreaterThanOrEqual(food);
    expect(food).toBeGreaterThanOrEqual(family);
  });
});
