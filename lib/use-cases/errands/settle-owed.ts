import { z } from "zod";
import { ok, refuse, type Result } from "#lib/base/index.ts";
import type { Day } from "#lib/calendar/index.ts";
import {
  inTransaction,
  lotColumns,
  readFoodsById,
  readLotRecords,
  type Db,
} from "#lib/db/index.ts";
import {
  describeSettleProblem,
  describeStockProblem,
  freezeLot,
  settleOwed,
  SETTLINGS,
  inOrderOfUse,
  type OwedFood,
  type SettleProblem,
  type StockProblem,
} from "#lib/shopping/index.ts";
import type { Context } from "../context.ts";
import { takeFrom } from "./change-stock.ts";
import { readOwed } from "./load-owed.ts";

export const SettleOwedInput = z.object({
  itemId: z.string().min(1).max(60),
  how: z.enum(SETTLINGS),
});
export type SettleOwedInput = z.infer<typeof SettleOwedInput>;

export type SettleOwedProblem = SettleProblem | StockProblem | { readonly kind: "gone" };

/**
 * Settles an owed food: used, frozen, or let go. Its stock follows: what was used or let go is taken from
 * the lot that ends soonest, what is frozen becomes a lot in the freezer. Refuses to use or freeze food
 * past its use-by, to freeze what no source gives a time for, and a second settling.
 */
export async function settleOwedFood(
  { db, today }: Context,
  { itemId, how }: SettleOwedInput,
): Promise<Result<undefined, SettleOwedProblem>> {
  return inTransaction(db, async (tx) => {
    const owed = (await readOwed(tx, today)).find((food) => food.id === itemId);
    if (!owed) return refuse({ kind: "gone" });
    const settled = settleOwed(owed, how, today);
    if (!settled.ok) return settled;
    const stock =
      how === "frozen" ? await freeze(tx, owed, today) : await take(tx, owed, how, today);
    if (!stock.ok) return stock;
    await tx.lunchItem.update({
      where: { id: itemId },
      data: { settledOn: today, settledHow: how },
    });
    return ok(undefined);
  });
}

/** Words for a refusal. */
export function describeSettleOwedProblem(problem: SettleOwedProblem): string {
  switch (problem.kind) {
    case "gone":
      return "It is no longer owed. Look at the list again.";
    case "already-settled":
    case "past-its-use-by":
      return describeSettleProblem(problem);
    case "not-that-much-left":
    case "past-its-life":
    case "freezing-not-advised":
      return describeStockProblem(problem);
  }
}

async function take(
  tx: Db,
  owed: OwedFood,
  how: "used" | "let-go",
  on: Day,
): Promise<Result<undefined, StockProblem>> {
  let missing = owed.grams;
  for (const lot of await lotsOf(tx, owed, on)) {
    if (missing <= 0) break;
    const grams = Math.min(missing, lot.grams);
    const taken = await takeFrom(tx, lot, grams, on, how === "used" ? "used" : "thrown");
    if (!taken.ok) return taken;
    missing -= grams;
  }
  return ok(undefined);
}

/** The part that is owed goes to the freezer; the rest of its lot stays where it is. */
async function freeze(tx: Db, owed: OwedFood, on: Day): Promise<Result<undefined, StockProblem>> {
  const shelf = (await readFoodsById(tx, [owed.foodId])).get(owed.foodId)?.shelf;
  const [lot] = await lotsOf(tx, owed, on);
  if (!shelf) return ok(undefined);
  const blank = { openedOn: null, cutOn: null, preparedOn: null, useBy: null, boughtOn: null };
  const base = lot ?? { id: "", foodId: owed.foodId, productId: null, place: "fridge", ...blank };
  const frozen = freezeLot({ ...base, grams: owed.grams }, shelf, on);
  if (!frozen.ok) return frozen;
  if (lot) {
    const taken = await takeFrom(tx, lot, Math.min(owed.grams, lot.grams), on, "used");
    if (!taken.ok) return taken;
  }
  const { foodId, productId } = frozen.value;
  await tx.stock.create({ data: { foodId, productId, ...lotColumns(frozen.value) } });
  return ok(undefined);
}

async function lotsOf(tx: Db, { foodId }: OwedFood, today: Day) {
  const shelf = (await readFoodsById(tx, [foodId])).get(foodId)?.shelf;
  const lots = (await readLotRecords(tx)).filter(
    (lot) => lot.foodId === foodId && lot.place !== "freezer",
  );
  if (!shelf) return lots;
  return inOrderOfUse(lots, () => shelf, today).flatMap(
    ({ lot }) => lots.find((one) => one.id === lot.id) ?? [],
  );
}
