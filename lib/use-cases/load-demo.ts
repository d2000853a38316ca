import { ok, refuse, type Result } from "#lib/base/index.ts";
import {
  clearSeries,
  foodColumns,
  inTransaction,
  insertRows,
  readFoods,
  readTricks,
  schoolRuleColumns,
  writeSettings,
  type Db,
} from "#lib/db/index.ts";
import { SchoolRule, UNLIMITED_RULE } from "#lib/safety/index.ts";
import type { DemoSeries, DemoSources } from "#seed/demo/index.ts";
import type { Context } from "./context.ts";

export type DemoProblem = { readonly kind: "own-series" };

/** What the house of the demo spends on lunches a week at most. */
const DEMO_BUDGET_CENTS = 6000;

/**
 * Fills the database with the invented series, all or nothing. The generator is handed in, so that
 * the use case knows no seed. Refuses when a series of the user's own stands.
 */
export async function loadDemo(
  { db, today }: Context,
  makeDemo: (sources: DemoSources) => DemoSeries,
  themes: DemoSources["themes"],
): Promise<Result<undefined, DemoProblem>> {
  const [foods, tricks] = await Promise.all([readFoods(db), readTricks(db)]);
  const demo = makeDemo({ today, foods, tricks, themes });
  return inTransaction(db, async (tx) => {
    const series = await tx.series.findUnique({ where: { id: 1 } });
    if (series && !series.isDemo) return refuse({ kind: "own-series" });
    await clearSeries(tx);
    await tx.series.create({
      data: { id: 1, name: demo.name, isDemo: true, startedOn: demo.startedOn },
    });
    await writeHousehold(tx, demo);
    await writeGoods(tx, demo);
    await writeWeeks(tx, demo);
    await insertRows(tx, "PrepTiming", demo.timings);
    await insertRows(tx, "ViewerPromise", demo.promises);
    await insertRows(tx, "ViewerIdea", demo.ideas);
    const { voice } = demo;
    await writeSettings(tx, {
      isWelcomed: true,
      weekBudgetCents: DEMO_BUDGET_CENTS,
      carrying: demo.carrying,
      balanceScheme: "school-k5",
      climateC: [...demo.climateC],
      ...{ signOn: voice.signOn, signOff: voice.signOff, lawNote: voice.lawNote },
      housePhrases: [...voice.housePhrases],
      privateWords: [...demo.children.map((child) => child.privateName), ...voice.placesKept],
    });
    return ok(undefined);
  });
}

/** Words for a refusal. */
export function describeDemoProblem(problem: DemoProblem): string {
  switch (problem.kind) {
    case "own-series":
      return "A series of your own stands here, so the demo was not loaded over it.";
  }
}

async function writeHousehold(tx: Db, demo: DemoSeries): Promise<void> {
  await insertRows(tx, "Child", demo.children);
  await insertRows(tx, "Avoidance", demo.avoidances);
  await insertRows(
    tx,
    "SchoolRule",
    demo.schoolRules.map(({ name, keepsOut, ...row }) => ({
      ...row,
      ...schoolRuleColumns(SchoolRule.parse({ ...UNLIMITED_RULE, ...keepsOut, name })),
    })),
  );
  await insertRows(tx, "DayOff", demo.daysOff);
  await insertRows(
    tx,
    "Shop",
    demo.shops.map(({ days, aisles, ...shop }) => ({
      ...shop,
      daysJson: JSON.stringify(days),
      aislesJson: JSON.stringify(aisles),
    })),
  );
}

async function writeGoods(tx: Db, demo: DemoSeries): Promise<void> {
  for (const food of demo.houseFoods) {
    await tx.food.create({
      data: {
        id: food.id,
        ...foodColumns(food),
        ingredients: demo.houseRecipes[food.id] ?? "",
        aliases: { create: food.aliases.map((name) => ({ name, origin: "user" })) },
      },
    });
  }
  await insertRows(
    tx,
    "Product",
    demo.products.map(({ allergens, maybe, ...product }) => ({
      ...product,
      packAmount: product.packGrams,
      packUnit: "g",
      allergensJson: JSON.stringify(allergens),
      maybeJson: JSON.stringify(maybe),
    })),
  );
  await insertRows(tx, "ProductShop", demo.productShops);
  await insertRows(tx, "Price", demo.prices);
  await insertRows(tx, "Stock", demo.stock);
  await insertRows(tx, "Par", demo.pars);
  await insertRows(tx, "ErrandRun", demo.errandRuns);
  await insertRows(tx, "ErrandLine", demo.errandLines);
}

async function writeWeeks(tx: Db, demo: DemoSeries): Promise<void> {
  await insertRows(tx, "Episode", demo.episodes);
  await insertRows(tx, "Lunch", demo.lunches);
  // Scrapped items first: those that stepped in point at them.
  const first = demo.lunchItems.filter((item) => item.insteadOfId === null);
  await insertRows(tx, "LunchItem", first);
  await insertRows(
    tx,
    "LunchItem",
    demo.lunchItems.filter((item) => item.insteadOfId !== null),
  );
  await insertRows(tx, "ItemTrick", demo.itemTricks);
  await insertRows(tx, "ItemShare", demo.itemShares);
  await insertRows(tx, "Reaction", demo.reactions);
  await insertRows(tx, "ScreenTime", demo.screenTimes);
}
