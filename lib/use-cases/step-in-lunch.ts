import { ok, refuse, type Result } from "#lib/base/index.ts";
import { inTransaction } from "#lib/db/index.ts";
import type { Context } from "./context.ts";
import type { StepInLunchInput } from "./step-in-lunch.input.ts";

export type StepInLunchProblem = { readonly kind: "gone" | "packed" | "food-gone" | "nothing-new" };

/**
 * Lets a whole lunch step in: what is planned and not part of it is scrapped with the reason, what is
 * missing steps in at its usual serving, each for an item that stays out, so that any swap can be taken
 * back. Refuses once the lid is shut.
 */
export async function stepInLunch(
  { db }: Context,
  { lunchId, foods, reason }: StepInLunchInput,
): Promise<Result<undefined, StepInLunchProblem>> {
  return inTransaction(db, async (tx): Promise<Result<undefined, StepInLunchProblem>> => {
    const lunch = await tx.lunch.findUnique({
      where: { id: lunchId },
      include: {
        items: { where: { fate: { not: "scrapped" } }, orderBy: { position: "asc" } },
      },
    });
    if (!lunch) return refuse({ kind: "gone" });
    if (lunch.packedAt !== null) return refuse({ kind: "packed" });
    const ready = new Set(foods.map(({ foodId }) => foodId));
    const rows = await tx.food.findMany({ where: { id: { in: [...ready] } } });
    if (rows.length < ready.size) return refuse({ kind: "food-gone" });
    const stays = new Set(lunch.items.map(({ foodId }) => foodId));
    const coming = foods.filter(({ foodId }) => !stays.has(foodId));
    const going = lunch.items.filter(({ foodId }) => !ready.has(foodId));
    if (coming.length + going.length === 0) return refuse({ kind: "nothing-new" });

    await tx.lunchItem.updateMany({
      where: { id: { in: going.map(({ id }) => id) } },
      data: { fate: "scrapped", reason },
    });
    const open = [...going];
    for (const [index, { foodId, part }] of coming.entries()) {
      const same = open.findIndex((item) => item.part === part);
      const [instead] = open.splice(Math.max(0, same), 1);
      await tx.lunchItem.create({
        data: {
          ...{ lunchId, foodId, part, unit: "g", fate: "stepped-in", reason },
          amount: rows.find(({ id }) => id === foodId)?.servingGrams ?? 0,
          position: instead?.position ?? lunch.items.length + index,
          // One more comes than goes: it hangs on the first, which takes it back as well.
          insteadOfId: (instead ?? going[0])?.id ?? null,
        },
      });
    }
    await tx.lunch.update({ where: { id: lunchId }, data: { revision: { increment: 1 } } });
    return ok(undefined);
  });
}

/** Words for a refusal. */
export function describeStepInLunchProblem({ kind }: StepInLunchProblem): string {
  switch (kind) {
    case "gone":
      return "This lunch was removed meanwhile. Open the slate again.";
    case "packed":
      return "The lid is shut. Swap single items, so that the record stays true.";
    case "food-gone":
      return "A food of it is no longer in the Larder. Reload the page for another lunch.";
    case "nothing-new":
      return "This is what is planned already.";
  }
}
