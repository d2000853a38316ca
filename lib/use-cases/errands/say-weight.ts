import { z } from "zod";
import { ok, refuse, type Result } from "#lib/base/index.ts";
import { foodColumns, inTransaction, readFoodsById } from "#lib/db/index.ts";
import type { Context } from "../context.ts";

export const SayWeightInput = z.object({
  foodId: z.string().min(1).max(120),
  unit: z.string().trim().min(1).max(60),
  grams: z
    .number({ error: "Write the grams as a number." })
    .positive({ error: "It weighs more than nothing." })
    .max(20_000, { error: "Nothing in a lunch weighs that much." }),
});
export type SayWeightInput = z.infer<typeof SayWeightInput>;

/** Answers what one of a unit of a food weighs; from then on it counts everywhere. Refuses a food that is gone. */
export async function sayWeight(
  { db, now }: Context,
  { foodId, unit, grams }: SayWeightInput,
): Promise<Result<undefined, { readonly kind: "food-gone" }>> {
  return inTransaction(db, async (tx) => {
    const food = (await readFoodsById(tx, [foodId])).get(foodId);
    if (!food) return refuse({ kind: "food-gone" });
    const { unitsJson } = foodColumns({
      ...food,
      unitWeights: { ...food.unitWeights, [unit]: grams },
    });
    await tx.food.update({
      where: { id: foodId },
      data: { unitsJson: unitsJson ?? "{}", editedAt: now, revision: { increment: 1 } },
    });
    return ok(undefined);
  });
}
