import { ok, refuse, type Result } from "#lib/base/index.ts";
import type { Day } from "#lib/calendar/index.ts";
import { matchFood, type Food } from "#lib/catalog/index.ts";
import {
  inTransaction,
  lotColumns,
  readFoods,
  readFoodsById,
  readLotRecords,
  type Db,
  type LotRecord,
} from "#lib/db/index.ts";
import {
  describeStockProblem,
  freezeLot,
  openLot,
  takeFromLot,
  type Lot,
  type StockProblem,
} from "#lib/shopping/index.ts";
import type { Context } from "../context.ts";
import type { ChangeStockInput, SaveParInput } from "./change-stock.input.ts";

export type ChangeStockProblem =
  StockProblem | { readonly kind: "lot-gone" | "changed-elsewhere" | "food-unknown" };

/**
 * Keeps what happened to a lot: opened, used, thrown away, frozen, counted anew. Refuses when another
 * tab changed the lot since it was shown.
 */
export async function changeStock(
  { db, today }: Context,
  input: ChangeStockInput,
): Promise<Result<undefined, ChangeStockProblem>> {
  return inTransaction(db, async (tx) => {
    if (input.kind === "add") return addLot(tx, input, today);
    const lot = (await readLotRecords(tx)).find((one) => one.id === input.lotId);
    if (!lot) return refuse({ kind: "lot-gone" });
    if (lot.grams !== input.seenGrams) return refuse({ kind: "changed-elsewhere" });
    switch (input.kind) {
      case "open":
        return ok(await saveLot(tx, openLot(lot, today)));
      case "use":
        return takeFrom(tx, lot, input.grams, today, "used");
      case "throw":
        return takeFrom(tx, lot, input.grams, today, "thrown");
      case "freeze":
        return freeze(tx, lot, today);
      case "count": {
        const { grams, useBy, place } = input;
        return ok(await saveLot(tx, { ...lot, grams, useBy, place }));
      }
    }
  });
}

/** Words for a refusal. */
export function describeChangeStockProblem(problem: ChangeStockProblem): string {
  switch (problem.kind) {
    case "lot-gone":
      return "It is no longer in the house. Look at the list again.";
    case "changed-elsewhere":
      return "Another tab changed it after you opened this page. Nothing was overwritten: look again.";
    case "food-unknown":
      return "No food of the Larder has that name. Pick one from the list, or add it to the Larder first.";
    case "not-that-much-left":
    case "past-its-life":
    case "freezing-not-advised":
      return describeStockProblem(problem);
  }
}

/** Keeps the level of a staple, or takes it away. Refuses a food nobody knows. */
export async function savePar(
  { db }: Context,
  { food: typed, gramsPerDay, leadDays, reserveGrams }: SaveParInput,
): Promise<Result<undefined, ChangeStockProblem>> {
  return inTransaction(db, async (tx) => {
    const food = await foodNamed(tx, typed);
    if (!food) return refuse({ kind: "food-unknown" });
    const foodId = food.id;
    if (gramsPerDay === 0 && reserveGrams === 0) await tx.par.deleteMany({ where: { foodId } });
    else {
      const data = { gramsPerDay, leadDays, reserveGrams };
      await tx.par.upsert({ where: { foodId }, create: { foodId, ...data }, update: data });
    }
    return ok(undefined);
  });
}

async function foodNamed(tx: Db, typed: string): Promise<Food | undefined> {
  const foods = await readFoods(tx);
  return foods.find((food) => food.id === typed) ?? matchFood(typed, foods).best?.food;
}

async function addLot(
  tx: Db,
  { food: typed, grams, useBy, place }: Extract<ChangeStockInput, { kind: "add" }>,
  today: Day,
): Promise<Result<undefined, ChangeStockProblem>> {
  const food = await foodNamed(tx, typed);
  if (!food) return refuse({ kind: "food-unknown" });
  await tx.stock.create({ data: { foodId: food.id, grams, useBy, place, boughtOn: today } });
  return ok(undefined);
}

/** Takes some of a lot, which opens it; what is thrown away stays on record as a lot that is gone. */
export async function takeFrom(
  tx: Db,
  lot: LotRecord,
  grams: number,
  on: Day,
  how: "used" | "thrown",
): Promise<Result<undefined, StockProblem>> {
  const left = takeFromLot(lot, grams, on);
  if (!left.ok) return left;
  const gone = { goneOn: on, goneHow: how };
  if (left.value === null) await tx.stock.update({ where: { id: lot.id }, data: gone });
  else {
    // Throwing a part away says nothing of opening the rest.
    const openedOn = how === "thrown" ? lot.openedOn : left.value.openedOn;
    await saveLot(tx, { ...left.value, openedOn });
    if (how === "thrown") {
      const { foodId, productId } = lot;
      await tx.stock.create({
        data: { foodId, productId, ...lotColumns({ ...lot, grams }), ...gone },
      });
    }
  }
  return ok(undefined);
}

async function freeze(
  tx: Db,
  lot: LotRecord,
  today: Day,
): Promise<Result<undefined, ChangeStockProblem>> {
  const foods = await readFoodsById(tx, [lot.foodId]);
  const shelf = foods.get(lot.foodId)?.shelf;
  if (!shelf) return refuse({ kind: "lot-gone" });
  const frozen = freezeLot(lot, shelf, today);
  return frozen.ok ? ok(await saveLot(tx, frozen.value)) : frozen;
}

async function saveLot(tx: Db, lot: Lot): Promise<undefined> {
  await tx.stock.update({ where: { id: lot.id }, data: lotColumns(lot) });
}
