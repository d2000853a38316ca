import type { z } from "zod";
import { ok, refuse, type Result } from "#lib/base/index.ts";
import {
  inTransaction,
  readShops,
  writeShop,
  writeShopOrder,
  type ShopRecord,
} from "#lib/db/index.ts";
import type { Context } from "../context.ts";
import type { RetireInput } from "./child-sheet.input.ts";
import { tickedDays } from "./rule-sheet.ts";
import type { SheetProblem } from "./sheet-problem.ts";
import type { MoveShopInput, ShopInput } from "./shop-sheet.input.ts";
import { stampOf } from "./stamp.ts";

type TypedShop = z.input<typeof ShopInput>;

/** A shop's sheet as its form opens, an empty one without an id, or undefined when there is none. */
export async function loadShopSheet(
  { db }: Context,
  id: string | undefined,
): Promise<TypedShop | undefined> {
  if (id === undefined) return NEW_SHOP;
  const shop = (await readShops(db)).find((one) => one.id === id);
  return shop && sheetOf(shop);
}

/** Saves a shop; a new one is the farthest. Refuses when another tab saved first or the name is taken. */
export async function saveShop(
  { db }: Context,
  input: ShopInput,
): Promise<Result<{ readonly id: string }, SheetProblem>> {
  return inTransaction(db, async (tx) => {
    const shops = await readShops(tx);
    const standing = shops.find((one) => one.id === input.id);
    if (input.id !== "" && !standing) return refuse({ kind: "gone" });
    if (standing && sheetOf(standing).stamp !== input.stamp) {
      return refuse({ kind: "changed-elsewhere" });
    }
    const name = input.name.toLowerCase();
    if (shops.some((one) => one.id !== input.id && one.name.toLowerCase() === name)) {
      return refuse({ kind: "shop-name-taken", field: "name" });
    }
    const { days, hours, aisles, note } = input;
    const columns = { name: input.name, days, hours, aisles, note };
    return ok({ id: await writeShop(tx, standing?.id, columns) });
  });
}

/** Moves a shop one place in the order of distance among those in use; at the end it stays. */
export async function moveShop(
  { db }: Context,
  { id, way }: MoveShopInput,
): Promise<Result<undefined, SheetProblem>> {
  return inTransaction(db, async (tx) => {
    const shops = await readShops(tx);
    const inUse = shops.filter((shop) => !shop.isRetired).map((shop) => shop.id);
    const at = inUse.indexOf(id);
    if (at < 0) return refuse({ kind: "gone" });
    const other = way === "nearer" ? at - 1 : at + 1;
    const swapped = inUse[other];
    if (swapped === undefined) return ok(undefined);
    inUse[at] = swapped;
    inUse[other] = id;
    const retired = shops.filter((shop) => shop.isRetired).map((shop) => shop.id);
    await writeShopOrder(tx, [...inUse, ...retired]);
    return ok(undefined);
  });
}

/** Retires a shop from the errands to come, or brings it back; what was bought there stays on record. */
export async function retireShop(
  { db, now }: Context,
  { id, isRetired }: RetireInput,
): Promise<Result<undefined, SheetProblem>> {
  const { count } = await db.shop.updateMany({
    where: { id },
    data: { retiredAt: isRetired ? now : null },
  });
  return count === 0 ? refuse({ kind: "gone" }) : ok(undefined);
}

const NEW_SHOP: TypedShop = {
  ...{ id: "", stamp: "", name: "", hours: "", aisles: "", note: "" },
  days: ["1", "2", "3", "4", "5", "6"],
};

function sheetOf(shop: ShopRecord): TypedShop {
  const typed = {
    id: shop.id,
    name: shop.name,
    days: tickedDays(shop.days),
    hours: shop.hours,
    aisles: shop.aisles.join("\n"),
    note: shop.note,
  };
  return { ...typed, stamp: stampOf(typed) };
}
