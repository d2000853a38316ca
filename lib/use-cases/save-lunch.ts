import { ok, refuse, type Result } from "#lib/base/index.ts";
import { inTransaction, type Db } from "#lib/db/index.ts";
import type { Context } from "./context.ts";
import type { SaveLunchInput } from "./save-lunch.input.ts";

export type SaveLunchProblem =
  | { readonly kind: "gone" }
  | { readonly kind: "changed-elsewhere" }
  | { readonly kind: "packed" }
  | { readonly kind: "food-gone" };

/**
 * Replaces the items of a planned lunch, all or nothing. Refuses when another tab saved first,
 * and when the lunch was packed: from then on it is changed by swapping, so that the record stays.
 */
export async function saveLunch(
  { db }: Context,
  input: SaveLunchInput,
): Promise<Result<{ readonly revision: number }, SaveLunchProblem>> {
  return inTransaction(db, async (tx) => {
    const lunch = await tx.lunch.findUnique({ where: { id: input.lunchId } });
    if (!lunch) return refuse({ kind: "gone" });
    if (lunch.packedAt) return refuse({ kind: "packed" });
    if (lunch.revision !== input.revision) return refuse({ kind: "changed-elsewhere" });
    const foodIds = [...new Set(input.items.map((item) => item.foodId))];
    const found = await tx.food.count({ where: { id: { in: foodIds } } });
    const trickIds = [...new Set(input.items.flatMap((item) => item.trickIds))];
    const tricks = await tx.trick.count({ where: { id: { in: trickIds } } });
    if (found !== foodIds.length || tricks !== trickIds.length)
      return refuse({ kind: "food-gone" });

    await keepForUndo(tx, lunch.id);
    await tx.lunchItem.deleteMany({ where: { lunchId: lunch.id } });
    for (const [position, { trickIds: ids, ...item }] of input.items.entries()) {
      await tx.lunchItem.create({
        data: {
          ...item,
          lunchId: lunch.id,
          position,
          tricks: { create: [...new Set(ids)].map((trickId) => ({ trickId })) },
        },
      });
    }
    const revision = lunch.revision + 1;
    await tx.lunch.update({ where: { id: lunch.id }, data: { angle: input.angle, revision } });
    return ok({ revision });
  });
}

/** Words for a refusal. */
export function describeSaveLunchProblem(problem: SaveLunchProblem): string {
  switch (problem.kind) {
    case "gone":
      return "This lunch was removed meanwhile. Open the week again.";
    case "changed-elsewhere":
      return "Another tab changed this lunch after you opened it. Nothing was overwritten: what you typed still stands here. Open the week in a new tab to compare, then save again.";
    case "packed":
      return "This lunch is packed. Swap items on its call sheet, so that the record stays true.";
    case "food-gone":
      return "One of the foods or tricks is no longer in the Larder. Choose another.";
  }
}

/** The lunch as it stood, so that the last save can be taken back. */
async function keepForUndo(tx: Db, lunchId: string): Promise<void> {
  const lunch = await tx.lunch.findUniqueOrThrow({
    where: { id: lunchId },
    include: { items: { orderBy: { position: "asc" }, include: { tricks: true } } },
  });
  const undo = {
    angle: lunch.angle,
    items: lunch.items.map((item) => ({
      foodId: item.foodId,
      part: item.part,
      amount: item.amount,
      unit: item.unit,
      trickIds: item.tricks.map(({ trickId }) => trickId),
    })),
  };
  await tx.change.create({
    data: { scope: `lunch:${lunchId}`, label: "lunch composed", undoJson: JSON.stringify(undo) },
  });
}
