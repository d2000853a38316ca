import fc from "fast-check";
import { expect, test } from "vitest";
import { numberOf, sumOfFractions } from "#lib/base/index.ts";
import { standingWeek } from "#lib/use-cases/errands/standing-week.ts";
import { TickLinesInput } from "#lib/use-cases/errands/tick-lines.input.ts";
import { tickLines } from "#lib/use-cases/errands/tick-lines.ts";
import { faultsOf } from "#tests/support/check-runs.ts";
import { errandSeries, MONDAY, SATURDAY, tickOf } from "#tests/support/errand-series.ts";
import { testContext } from "#tests/support/test-context.ts";

const FOODS = ["grapes", "cucumber-slices", "hummus", "cheddar-cheese", "apple", "strawberries"];
const DAYS = ["2026-03-16", "2026-03-17", "2026-03-18", "2026-03-19", "2026-03-20"];

const planned = fc.uniqueArray(
  fc.record({
    on: fc.constantFrom(...DAYS),
    foodId: fc.constantFrom(...FOODS),
    amount: fc.integer({ min: 1, max: 400 }),
    unit: fc.constant("g"),
  }),
  { minLength: 2, maxLength: 12, selector: ({ on, foodId }) => `${on} ${foodId}` },
);
const lots = fc.array(
  fc.record({
    foodId: fc.constantFrom(...FOODS),
    grams: fc.integer({ min: 1, max: 600 }),
    boughtOn: fc.constantFrom("2026-03-05", "2026-03-10", "2026-03-13"),
    openedOn: fc.constantFrom(null, "2026-03-13"),
    useBy: fc.constantFrom(null, "2026-03-15", "2026-03-18"),
  }),
  { maxLength: 4 },
);

test("from the records to the list: never too little, never past a life, whatever is changed or ticked", async () => {
  let ticked = 0;
  await fc.assert(
    fc.asyncProperty(
      planned,
      lots,
      fc.integer({ min: 1, max: 600 }),
      async (items, onHand, amount) => {
        const context = testContext(SATURDAY);
        const { db, today } = context;
        await errandSeries(context, MONDAY, items);
        await db.stock.createMany({ data: onHand });
        const before = await standingWeek(db, today, MONDAY);
        expect(faultsOf(before.question.problem, before.plan)).toEqual([]);
        expect(servedGrams(before)).toBeCloseTo(neededGrams(before), 3);

        const lines = before.plan.runs.flatMap((run) => run.lines);
        const [line] = lines.filter((one) => one.day === SATURDAY);
        if (line) {
          ticked += 1;
          const tick = tickOf({ ...line, on: line.day, at: line.shopId }, "bought");
          await tickLines(context, TickLinesInput.parse({ monday: MONDAY, ticks: [tick] }));
        }
        const [changed] = items;
        if (!changed) return;
        const id = `${changed.on}-${changed.foodId}`;
        await db.lunchItem.update({ where: { id }, data: { amount } });
        const after = await standingWeek(db, today, MONDAY);
        expect(faultsOf(after.question.problem, after.plan)).toEqual([]);
        expect(servedGrams(after)).toBeCloseTo(neededGrams(after), 3);

        const isTouched = (itemId: string): boolean =>
          itemId === changed.foodId || itemId === line?.itemId;
        const others = (week: typeof before) =>
          week.plan.runs.flatMap((run) => run.lines).filter((one) => !isTouched(one.itemId));
        expect(others(after)).toEqual(others(before));
      },
    ),
    { numRuns: 12 },
  );
  expect(ticked).toBeGreaterThan(3);
});

type Week = Awaited<ReturnType<typeof standingWeek>>;

function neededGrams({ question }: Week): number {
  return numberOf(sumOfFractions(question.needs.map((need) => need.asPurchased)));
}

/** What is taken from stock, bought, or said to be missing. */
function servedGrams({ plan }: Week): number {
  const uses = plan.runs.flatMap((run) => run.lines.flatMap((line) => line.uses));
  return [...uses, ...plan.fromStock, ...plan.unmet].reduce((sum, { grams }) => sum + grams, 0);
}
