import fc from "fast-check";
import { describe, expect, test } from "vitest";
import {
  COMPONENTS,
  countAtSchool,
  countWeekAtSchool,
  creditAtSchool,
  onPlate,
  portionsIn,
  VEGETABLE_SUBGROUPS,
} from "#lib/safety/index.ts";
import { FOODS, item } from "#tests/unit/safety/box.ts";

const food = fc.constantFrom(...FOODS);
const grams = fc.double({ min: 0.1, max: 600, noNaN: true });
const box = fc.uniqueArray(fc.record({ food, grams }), {
  minLength: 1,
  maxLength: 6,
  selector: (one) => one.food.id,
});
const itemsOf = (
  held: readonly { readonly food: (typeof FOODS)[number]; readonly grams: number }[],
) => held.map((one) => item(one.food.id, { grams: one.grams }));

describe("a larger portion never counts for less", () => {
  test("food by food, in every scheme", () => {
    fc.assert(
      fc.property(food, grams, grams, (one, some, more) => {
        const [small, large] = [creditAtSchool(one, some), creditAtSchool(one, some + more)];
        expect(large.kind).toBe(small.kind);
        if (small.kind === "counted" && large.kind === "counted") {
          expect(large.credit.amount).toBeGreaterThanOrEqual(small.credit.amount);
          expect(large.credit.insteadMeat ?? 0).toBeGreaterThanOrEqual(
            small.credit.insteadMeat ?? 0,
          );
        }
        expect(onPlate(one, some + more)?.amount ?? 0).toBeGreaterThanOrEqual(
          onPlate(one, some)?.amount ?? 0,
        );
        expect(portionsIn([{ food: one, grams: some + more }])).toBeGreaterThanOrEqual(
          portionsIn([{ food: one, grams: some }]),
        );
      }),
      { numRuns: 500 },
    );
  });
  test("box by box and week by week, whichever food grows", () => {
    fc.assert(
      fc.property(
        fc.array(box, { minLength: 1, maxLength: 5 }),
        fc.nat(4),
        fc.nat(5),
        grams,
        (week, day, place, more) => {
          const target = week[day % week.length] ?? [];
          const grown = week.map((held) =>
            held === target
              ? held.map((one, index) =>
                  index === place % held.length ? { ...one, grams: one.grams + more } : one,
                )
              : held,
          );
          const before = week.map((held) => countAtSchool(itemsOf(held)));
          const after = grown.map((held) => countAtSchool(itemsOf(held)));
          for (const [index, lunch] of before.entries()) {
            for (const one of COMPONENTS)
              expect(after[index]?.counts[one]).toBeGreaterThanOrEqual(lunch.counts[one]);
            for (const one of VEGETABLE_SUBGROUPS)
              expect(after[index]?.subgroups[one]).toBeGreaterThanOrEqual(lunch.subgroups[one]);
          }
          const [was, is] = [countWeekAtSchool(before), countWeekAtSchool(after)];
          for (const one of COMPONENTS)
            expect(is.counts[one]).toBeGreaterThanOrEqual(was.counts[one] - 1e-9);
        },
      ),
      { numRuns: 300 },
    );
  });
  test("juice is never more than half of the week's fruit", () => {
    fc.assert(
      fc.property(fc.array(box, { minLength: 1, maxLength: 5 }), (week) => {
        const lunches = week.map((held) => countAtSchool(itemsOf(held)));
        const juice = lunches.reduce((sum, lunch) => sum + lunch.juice, 0);
        const fruit = lunches.reduce((sum, lunch) => sum + lunch.counts.fruit, 0);
        const counted = countWeekAtSchool(lunches).counts.fruit;
        expect(counted).toBeLessThanOrEqual(2 * (fruit - juice) + 1e-9);
        expect(counted).toBeLessThanOrEqual(fruit + 1e-9);
      }),
    );
  });
});
