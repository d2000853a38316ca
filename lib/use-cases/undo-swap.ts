import { z } from "zod";
import { ok, refuse, type Result } from "#lib/base/index.ts";
import { day } from "#lib/calendar/index.ts";
import { inTransaction } from "#lib/db/index.ts";
import type { Context } from "./context.ts";
import { putBack } from "./errands/put-back.ts";
import { takeFromStock } from "./errands/take-from-stock.ts";

export const UndoSwapInput = z.object({
  /** The scrapped item. */
  itemId: z.string().min(1).max(60),
});
export type UndoSwapInput = z.infer<typeof UndoSwapInput>;
export type UndoSwapProblem = {
  readonly kind: "gone" | "not-scrapped" | "settled" | "judged" | "swapped-on";
};

/**
 * Takes a swap back: the scrapped item is in the tin again and what stepped in for it never was, in
 * stock too once the lid is shut. Refuses when the scrapped food was used, frozen or let go meanwhile,
 * when a verdict stands on what stepped in, and when that was swapped in turn.
 */
export async function undoSwap(
  { db }: Context,
  { itemId }: UndoSwapInput,
): Promise<Result<undefined, UndoSwapProblem>> {
  return inTransaction(db, async (tx) => {
    const item = await tx.lunchItem.findUnique({
      where: { id: itemId },
      include: {
        lunch: true,
        standIns: { include: { _count: { select: { reactions: true, events: true } } } },
      },
    });
    if (!item) return refuse({ kind: "gone" });
    if (item.fate !== "scrapped") return refuse({ kind: "not-scrapped" });
    if (item.settledOn !== null) return refuse({ kind: "settled" });
    if (item.standIns.some(({ fate }) => fate === "scrapped"))
      return refuse({ kind: "swapped-on" });
    if (item.standIns.some(({ _count }) => _count.reactions + _count.events > 0))
      return refuse({ kind: "judged" });
    for (const { id } of item.standIns) {
      await putBack(tx, id, true);
      await tx.lunchItem.delete({ where: { id } });
    }
    const isPacked = item.lunch.packedAt !== null;
    const fate = item.insteadOfId !== null ? "stepped-in" : isPacked ? "packed" : "planned";
    await tx.lunchItem.update({ where: { id: item.id }, data: { fate, reason: "" } });
    if (isPacked) await takeFromStock(tx, item.lunchId, day(item.lunch.date), [item.id]);
    await tx.lunch.update({ where: { id: item.lunchId }, data: { revision: { increment: 1 } } });
    return ok(undefined);
  });
}

/** Words for a refusal. */
export function describeUndoSwapProblem({ kind }: UndoSwapProblem): string {
  switch (kind) {
    case "gone":
      return "This item was removed meanwhile.";
    case "not-scrapped":
      return "This item is in the tin already.";
    case "settled":
      return "This food was used, frozen or let go meanwhile, so it cannot go back into the tin.";
    case "judged":
      return "A verdict stands on what stepped in. Clear the verdict first.";
    case "swapped-on":
      return "What stepped in was swapped in turn. Put that back first.";
  }
}
