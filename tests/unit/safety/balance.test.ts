import { describe, expect, test } from "vitest";
import {
  amountWord,
  balanceOfWeek,
  checkLunch,
  checkWeek,
  countAtSchool,
  countWeekAtSchool,
  creditAtSchool,
  creditingKindOf,
  onPlate,
  portionsIn,
  SCHOOL_PATTERNS,
  VEGETABLE_SUBGROUPS,
  type BalanceScheme,
  type CheckGround,
} from "#lib/safety/index.ts";
import {
  GRAIN_ROWS,
  MEAT_ROWS,
  PATTERN_ROWS,
  PLATE_TRAPS,
  PRODUCE_ROWS,
  type CreditRow,
} from "./balance.published.ts";
import { child, food, FOODS, item, lunch } from "./box.ts";

const creditOf = (id: string, grams: number) => {
  const credited = creditAtSchool(food(id), grams);
  return credited.kind === "counted" ? credited.credit : undefined;
};
const ground = (scheme: BalanceScheme): CheckGround => ({
  ...{ children: [child()], rules: [], journey: null },
  scheme,
});

describe("crediting at school", () => {
  test.each<CreditRow>([...MEAT_ROWS, ...GRAIN_ROWS, ...PRODUCE_ROWS])(
    "$grams g of $food count for $amount ($component; $source)",
    ({ food: id, grams, component, amount }) => {
      expect(creditOf(id, grams)).toMatchObject({ component, amount });
    },
  );
  test.each(["black-beans", "chickpeas", "lentils", "edamame"])(
    "¼ cup of %s is ¼ cup of vegetable or one ounce equivalent, never both",
    (id) => {
      const quarter = (food(id).gramsPerCup ?? 0) / 4;
      expect(creditOf(id, quarter)).toMatchObject({
        component: "vegetable",
        amount: 0.25,
        insteadMeat: 1,
      });
      const alone = countAtSchool([item(id, { grams: quarter })]);
      expect([alone.counts.meat, alone.counts.vegetable]).toEqual([1, 0]);
      const beside = countAtSchool([item(id, { grams: quarter }), item("cheddar-cheese")]);
      expect([beside.counts.meat, beside.counts.vegetable, beside.subgroups.beans]).toEqual([
        1, 0.25, 0.25,
      ]);
    },
  );
  test("juice counts for no more than the other fruit of the week", () => {
    const week = (...lunches: (readonly [string, number])[][]) =>
      countWeekAtSchool(
        lunches.map((items) => countAtSchool(items.map(([id, grams]) => item(id, { grams })))),
      ).counts.fruit;
    expect(week([["orange-juice", 248]])).toBe(0);
    expect(week([["orange-juice", 248]], [["apple-slices", 55]])).toBe(1);
    expect(week([["orange-juice", 124]], [["apple-slices", 110]])).toBe(1.5);
  });
  test("a mixed dish, a dip of beans and bought meat count only by their recipe or statement", () => {
    for (const id of ["hummus", "cheese-pizza-slice", "deli-turkey", "vegetable-soup", "juice-box"])
      expect([id, creditAtSchool(food(id), 100)]).toEqual([
        id,
        { kind: "not-counted", why: "unread" },
      ]);
    expect(countAtSchool([item("hummus")]).unread).toEqual(["hummus"]);
  });
  test("every food of the catalogue is placed, and nothing of it counts below nothing", () => {
    for (const one of FOODS) {
      const { kind } = creditingKindOf(one);
      if (one.group === "treat" || one.group === "fat")
        expect([one.id, ["none", "unread", "grain", "fruit"]]).toEqual([
          one.id,
          expect.arrayContaining([kind]),
        ]);
      const credited = creditAtSchool(one, one.servingGrams);
      if (credited.kind === "counted") expect(credited.credit.amount).toBeGreaterThanOrEqual(0);
    }
  });
});

describe("the pattern", () => {
  test.each(PATTERN_ROWS)("$grade is as printed", ({ grade, subgroups, ...amounts }) => {
    const pattern = SCHOOL_PATTERNS[grade];
    for (const one of ["fruit", "vegetable", "grain", "meat", "milk"] as const)
      expect([one, pattern.day[one], pattern.week[one]]).toEqual([one, ...amounts[one]]);
    expect(VEGETABLE_SUBGROUPS.map((one) => pattern.subgroups[one])).toEqual(subgroups);
  });
});

describe("the schemes are never mixed", () => {
  test.each(PLATE_TRAPS)(
    "$grams g of $food: $plate on the plate, $school at school ($source)",
    (row) => {
      expect(onPlate(food(row.food), row.grams)).toEqual({ group: "protein", amount: row.plate });
      expect(creditOf(row.food, row.grams)?.amount).toBe(row.school);
    },
  );
  test("portions: 80 g fresh, 30 g dried, juice and beans once, potatoes never (from memory)", () => {
    const of = (...held: (readonly [string, number])[]): number =>
      portionsIn(held.map(([id, grams]) => ({ food: food(id), grams })));
    expect(of(["banana", 80])).toBe(1);
    expect(of(["raisins", 30])).toBe(1);
    expect(of(["orange-juice", 600])).toBe(1);
    expect(of(["black-beans", 400])).toBe(1);
    expect(of(["baby-potatoes", 200])).toBe(0);
    expect(of(["banana", 79], ["carrot-sticks", 41])).toBe(1.5);
  });
});

describe("what is said of it", () => {
  const box = lunch(
    item("white-bread"),
    item("cheddar-cheese"),
    item("apple-slices"),
    item("carrot-sticks"),
  );
  test("at most one quiet note, with amounts, and none when nothing is asked", () => {
    expect(checkLunch(box, ground("off"))).toEqual([]);
    expect(checkLunch(box, ground("portions"))).toEqual([]);
    const [note, ...more] = checkLunch(box, ground("school-k5"));
    expect(more).toEqual([]);
    expect(note).toMatchObject({ kind: "balance", level: "note" });
    expect(note?.sentence).toBe(
      "By the US school meal pattern, grades K–5: vegetables ½ of ¾ cup and milk 0 of 1 cup.",
    );
    expect(checkLunch(box, ground("plate"))).toMatchObject([
      { sentence: "Of the plate’s five groups this lunch has 4; not in it: protein." },
    ]);
    expect(checkLunch(lunch(), ground("school-k5"))).toEqual([]);
  });
  test("a full week is asked for its vegetables, an unfinished one is left alone", () => {
    const days = [1, 2, 3, 4, 5].map((day) => ({ ...box, id: `day-${day}` }));
    const { week, lunches } = checkWeek(days, () => ground("school-k5"));
    expect(lunches.size).toBe(5);
    expect(week).toMatchObject([{ kind: "balance", level: "note" }]);
    expect(week[0]?.sentence).toContain("dark green (0 of ½ cup)");
    expect(week[0]?.sentence).not.toContain("red and orange");
    expect(checkWeek(days.slice(1), () => ground("school-k5")).week).toEqual([]);
  });
  test("the week's table holds a number a lunch, and the colours with their days", () => {
    const table = balanceOfWeek([box, lunch(item("banana"))], "school-k5");
    expect(table?.rows[0]).toMatchObject({
      name: "Fruit",
      days: ["½", "¾"],
      week: "1¼",
      weekLeast: "2½",
    });
    expect(table?.colours).toContainEqual({ colour: "orange", days: 1 });
    expect(balanceOfWeek([box], "off")).toBeNull();
  });
  test.each([
    [0, "0"],
    [0.125, "⅛"],
    [0.5, "½"],
    [1.25, "1¼"],
    [3.75, "3¾"],
    [2.49, "2⅜"],
  ])("%d is written %s", (amount, word) => {
    expect(amountWord(amount)).toBe(word);
  });
});
