import { z } from "zod";
import { ok, refuse, type Result } from "#lib/base/index.ts";
import { day } from "#lib/calendar/index.ts";
import { inTransaction } from "#lib/db/index.ts";
import type { Context } from "./context.ts";
import { putBack } from "./errands/put-back.ts";
import { takeFromStock } from "./errands/take-from-stock.ts";

export const SwapItemInput = z.object({
  itemId: z.string().min(1).max(60),
  /** The food that steps in; empty: nothing does. */
  foodId: z.string().max(120).default(""),
  reason: z
    .string()
    .trim()
    .min(1, { error: "Say why in a few words: the description may need it." })
    .max(300, { error: "Keep the reason under 300 letters." }),
});
export type SwapItemInput = z.infer<typeof SwapItemInput>;
export type SwapProblem = { readonly kind: "gone" | "scrapped" | "food-gone" | "judged" };

/**
 * Scraps an item and, if one is named, lets another food step in at its usual serving. The scrapped
 * item stays on record. After the lid was shut stock follows: what comes out is at home again, and owed;
 * what steps in is taken. Refuses once a child's verdict stands on the item.
 */
export async function swapItem(
  { db }: Context,
  input: SwapItemInput,
): Promise<Result<undefined, SwapProblem>> {
  return inTransaction(db, async (tx) => {
    const item = await tx.lunchItem.findUnique({
      where: { id: input.itemId },
      include: { lunch: true, _count: { select: { reactions: true } } },
    });
    if (!item) return refuse({ kind: "gone" });
    if (item.fate === "scrapped") return refuse({ kind: "scrapped" });
    if (item._count.reactions > 0) return refuse({ kind: "judged" });
    const food = input.foodId ? await tx.food.findUnique({ where: { id: input.foodId } }) : null;
    if (input.foodId && !food) return refuse({ kind: "food-gone" });
    await putBack(tx, item.id, false);
    await tx.lunchItem.update({
      where: { id: item.id },
      data: { fate: "scrapped", reason: input.reason },
    });
    if (food) {
      const steppedIn = await tx.lunchItem.create({
        data: {
          lunchId: item.lunchId,
          foodId: food.id,
          part: item.part,
          position: item.position,
          amount: food.servingGrams,
          unit: "g",
          fate: "stepped-in",
          reason: input.reason,
          insteadOfId: item.id,
        },
      });
      if (item.lunch.packedAt !== null)
        await takeFromStock(tx, item.lunchId, day(item.lunch.date), [steppedIn.id]);
    }
    await tx.lunch.update({ where: { id: item.lunchId }, data: { revision: { increment: 1 } } });
    return ok(undefined);
  });
}

/** Words for a refusal. */
export function describeSwapProblem({ kind }: SwapProblem): string {
  switch (kind) {
    case "gone":
      return "This item was removed meanwhile.";
    case "scrapped":
      return "This item is scrapped already.";
    case "food-gone":
      return "That food is no longer in the Larder. Choose another.";
    case "judged":
      return "A verdict stands on this item, so it was in the tin. Clear the verdict first.";
  }
}
