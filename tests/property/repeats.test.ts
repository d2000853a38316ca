import fc from "fast-check";
import { describe, expect, test } from "vitest";
import { addDays, day, weeksLater } from "#lib/calendar/index.ts";
import {
  checkRest,
  DEFAULT_REST_DAYS,
  distinctivenessOf,
  echoOf,
  historyOf,
  mergeInHistory,
  type ShownWeek,
} from "#lib/repeats/index.ts";
import { item } from "../unit/repeats/weeks.ts";

const foodIds = ["fig", "kale", "corn-cob", "corn-kernels", "plum", "egg"];
const shownWeek = fc
  .record({
    number: fc.integer({ min: 0, max: 520 }),
    foods: fc.array(
      fc.record({
        food: fc.constantFrom(...foodIds),
        weekday: fc.integer({ min: 0, max: 4 }),
        tricks: fc.subarray(["star", "pick"]),
        product: fc.option(fc.constantFrom("bag", "box")),
        isStaple: fc.boolean(),
      }),
      { maxLength: 12 },
    ),
    themeId: fc.option(fc.constantFrom("moon", "sea")),
    motifs: fc.subarray(["star", "wave", "leaf"]),
  })
  .map(({ number, foods, themeId, motifs }): ShownWeek => {
    const week = weeksLater(day("2020-01-06"), number);
    return {
      week,
      themeId,
      motifs,
      items: foods.map(({ food, weekday, tricks, product, isStaple }) => ({
        ...item(addDays(week, weekday), food, { productId: product, trickIds: tricks, isStaple }),
      })),
    };
  });

/** What the echo compares: foods, families, tricks in number, theme and motifs; no staples. */
function contentOf(week: ShownWeek): string {
  const items = week.items.filter((entry) => !entry.isStaple);
  const foods = items.map((entry) => entry.foodId).sort();
  const tricks = items.flatMap((entry) => entry.trickIds).sort();
  return JSON.stringify([foods, tricks, week.themeId, [...week.motifs].sort()]);
}

describe("echo", () => {
  test("is symmetric, lies in [0, 1], and is 1 exactly for the same content", () => {
    fc.assert(
      fc.property(fc.array(shownWeek, { minLength: 2, maxLength: 6 }), (weeks) => {
        const tells = distinctivenessOf(weeks);
        for (const left of weeks) {
          for (const right of weeks) {
            const { value } = echoOf(left, right, tells);
            expect(value).toBe(echoOf(right, left, tells).value);
            expect(value).toBeGreaterThanOrEqual(0);
            expect(value).toBeLessThanOrEqual(1);
            expect(value === 1).toBe(contentOf(left) === contentOf(right));
          }
        }
      }),
    );
  });
});

describe("history", () => {
  test("keeps the count of appearances when a food is merged into another", () => {
    const foods = fc.constantFrom(...foodIds);
    fc.assert(
      fc.property(fc.array(shownWeek, { maxLength: 8 }), foods, foods, (weeks, from, into) => {
        fc.pre(from !== into);
        const before = historyOf(weeks);
        const merged = mergeInHistory(weeks, from, { foodId: into, familyId: into });
        const after = historyOf(merged);
        expect(after.countOf("food", into)).toBe(
          before.countOf("food", from) + before.countOf("food", into),
        );
        expect(after.countOf("food", from)).toBe(0);
        for (const other of foodIds.filter((id) => id !== from && id !== into)) {
          expect(after.countOf("food", other)).toBe(before.countOf("food", other));
        }
        expect(merged.flatMap(({ items }) => items)).toHaveLength(
          weeks.flatMap(({ items }) => items).length,
        );
      }),
    );
  });

  test("does not depend on the order of the weeks", () => {
    fc.assert(
      fc.property(fc.array(shownWeek, { maxLength: 8 }), (weeks) => {
        const backwards = historyOf([...weeks].reverse());
        for (const id of foodIds) {
          expect(backwards.daysOf("food", id)).toEqual(historyOf(weeks).daysOf("food", id));
        }
      }),
    );
  });
});

describe("rest warnings", () => {
  test("are true to the history: last day seen, days counted, window not over", () => {
    const rules = { days: DEFAULT_REST_DAYS, own: new Map<string, number>() };
    fc.assert(
      fc.property(fc.array(shownWeek, { minLength: 1, maxLength: 6 }), (weeks) => {
        const history = historyOf(weeks);
        for (const warning of weeks.flatMap((week) => checkRest(week, history, rules))) {
          const days = history.daysOf(warning.level, warning.what);
          expect(days.filter((on) => on < warning.on).at(-1)).toBe(warning.lastOn);
          expect(warning.daysAgo).toBeGreaterThan(0);
          expect(warning.daysAgo).toBeLessThan(warning.restDays);
        }
      }),
    );
  });
});
