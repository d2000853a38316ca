import { randomUUID } from "node:crypto";
import { z } from "zod";
import { day } from "#lib/calendar/index.ts";
import { ok, refuse, type Result } from "#lib/base/index.ts";
import { inTransaction } from "#lib/db/index.ts";
import type { Context } from "./context.ts";
import { takeFromStock } from "./errands/take-from-stock.ts";
import { noteMinutes } from "./keep-day-facts.ts";

export const PackLunchInput = z.object({
  lunchId: z.string().min(1).max(60),
  minutes: z
    .number({ error: "Write the minutes as a number." })
    .min(0, { error: "Minutes cannot be below zero." })
    .max(600, { error: "That is more than a morning." })
    .nullable(),
});
export type PackLunchInput = z.infer<typeof PackLunchInput>;
export type PackProblem = { readonly kind: "gone" | "empty" };

/** Shuts the lid: what was planned counts as packed, and is taken from stock. Doing it twice changes nothing but the minutes. */
export async function packLunch(
  { db, now }: Context,
  { lunchId, minutes }: PackLunchInput,
): Promise<Result<undefined, PackProblem>> {
  return inTransaction(db, async (tx) => {
    const lunch = await tx.lunch.findUnique({
      where: { id: lunchId },
      include: { _count: { select: { items: { where: { fate: { not: "scrapped" } } } } } },
    });
    if (!lunch) return refuse({ kind: "gone" });
    if (lunch._count.items === 0) return refuse({ kind: "empty" });
    if (lunch.packedAt === null) await takeFromStock(tx, lunchId, day(lunch.date));
    await tx.lunchItem.updateMany({
      where: { lunchId, fate: "planned" },
      data: { fate: "packed" },
    });
    await tx.lunch.update({
      where: { id: lunchId },
      data: {
        packedAt: lunch.packedAt ?? now,
        revision: { increment: 1 },
      },
    });
    if (minutes !== null) await noteMinutes(tx, { id: randomUUID(), lunchId, minutes, now });
    return ok(undefined);
  });
}

/** Words for a refusal. */
export function describePackProblem(problem: PackProblem): string {
  return problem.kind === "gone"
    ? "This lunch was removed meanwhile."
    : "There is nothing in the tin. Compose the lunch on the slate first.";
}
