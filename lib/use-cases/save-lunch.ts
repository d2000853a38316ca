import { ok, refuse, type Result } from "#lib/base/index.ts";
import { mediumDay, day } from "#lib/calendar/index.ts";
import { inTransaction, type Db } from "#lib/db/index.ts";
import type { Context } from "./context.ts";
import type { SaveLunchInput } from "./save-lunch.input.ts";
import { keepForUndo } from "./slate-change.ts";

export type SaveLunchProblem =
  | { readonly kind: "gone" }
  | { readonly kind: "changed-elsewhere" }
  | { readonly kind: "packed" }
  | { readonly kind: "row-gone" };

export type SavedLunch = { readonly revision: number; readonly itemIds: readonly string[] };

/**
 * Saves a planned lunch as composed, all or nothing: items that stay keep what the page does not show
 * (product, notes), items left out go. Refuses when another tab saved first, and when the lunch was
 * packed: from then on it is changed by swapping, so that the record stays. Returns the new revision and the
 * ids of the items in order.
 */
export async function saveLunch(
  { db }: Context,
  input: SaveLunchInput,
): Promise<Result<SavedLunch, SaveLunchProblem>> {
  return inTransaction(db, async (tx) => {
    const lunch = await tx.lunch.findUnique({
      where: { id: input.lunchId },
      include: { items: { select: { id: true, foodId: true } } },
    });
    if (!lunch) return refuse({ kind: "gone" });
    if (lunch.packedAt) return refuse({ kind: "packed" });
    if (lunch.revision !== input.revision) return refuse({ kind: "changed-elsewhere" });
    if (!(await everyRowExists(tx, input.items))) return refuse({ kind: "row-gone" });

    await keepForUndo(tx, [lunch.episodeId], `the lunch of ${mediumDay(day(lunch.date))}`);
    const known = new Map(lunch.items.map((item) => [item.id, item.foodId]));
    const kept = input.items.flatMap(({ id }) => (known.has(id) ? id : []));
    await tx.lunchItem.deleteMany({ where: { lunchId: lunch.id, id: { notIn: kept } } });
    const itemIds: string[] = [];
    for (const [position, item] of input.items.entries()) {
      itemIds.push(await saveItem(tx, lunch.id, position, item, known.get(item.id)));
    }
    const revision = lunch.revision + 1;
    await tx.lunch.update({ where: { id: lunch.id }, data: { angle: input.angle, revision } });
    return ok({ revision, itemIds });
  });
}

/** Words for a refusal. */
export function describeSaveLunchProblem(problem: SaveLunchProblem): string {
  switch (problem.kind) {
    case "gone":
      return "This lunch was removed meanwhile. Open the week again.";
    case "changed-elsewhere":
      return "Another tab changed this lunch after you opened it. Nothing was overwritten: what you typed still stands here. Open the week in a new tab to compare, then reload this page and enter it again.";
    case "packed":
      return "This lunch is packed. Swap items on its call sheet, so that the record stays true.";
    case "row-gone":
      return "A food, trick, shop or child named here is no longer on record. Choose another.";
  }
}

type Item = SaveLunchInput["items"][number];

async function saveItem(
  tx: Db,
  lunchId: string,
  position: number,
  item: Item,
  foodBefore: string | undefined,
): Promise<string> {
  const { foodId, part, amount, unit } = item;
  const data = { foodId, part, amount, unit, position, shopId: item.shopId || null };
  const row =
    foodBefore === undefined
      ? await tx.lunchItem.create({ data: { ...data, lunchId } })
      : await tx.lunchItem.update({
          where: { id: item.id },
          data: foodBefore === foodId ? data : { ...data, productId: null },
        });
  const itemId = row.id;
  await tx.itemTrick.deleteMany({ where: { itemId } });
  await tx.itemTrick.createMany({
    data: [...new Set(item.trickIds)].map((trickId) => ({ itemId, trickId })),
  });
  await tx.itemShare.deleteMany({ where: { itemId } });
  const shares = new Map(item.shares.map((share) => [share.childId, share.amount]));
  await tx.itemShare.createMany({
    data: [...shares].map(([childId, share]) => ({ itemId, childId, amount: share })),
  });
  return itemId;
}

async function everyRowExists(tx: Db, items: readonly Item[]): Promise<boolean> {
  const unique = (ids: readonly string[]): string[] => [...new Set(ids.filter((id) => id !== ""))];
  const foodIds = unique(items.map((item) => item.foodId));
  const trickIds = unique(items.flatMap((item) => item.trickIds));
  const shopIds = unique(items.map((item) => item.shopId));
  const childIds = unique(items.flatMap((item) => item.shares.map((share) => share.childId)));
  const counts = [
    await tx.food.count({ where: { id: { in: foodIds } } }),
    await tx.trick.count({ where: { id: { in: trickIds } } }),
    await tx.shop.count({ where: { id: { in: shopIds } } }),
    await tx.child.count({ where: { id: { in: childIds } } }),
  ];
  return [foodIds, trickIds, shopIds, childIds].every((ids, index) => ids.length === counts[index]);
}
