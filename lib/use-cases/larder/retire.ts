import { z } from "zod";
import { ok, refuse, type Result } from "#lib/base/index.ts";
import { inTransaction } from "#lib/db/index.ts";
import type { Context } from "../context.ts";

/** What is taken out of use or brought back. */
export const RetireInput = z.object({
  kind: z.enum(["food", "product", "trick"]),
  id: z.string().min(1).max(120),
  isRetired: z.boolean(),
});
export type RetireInput = z.infer<typeof RetireInput>;

export type RetireProblem = { readonly kind: "gone" };

/** Takes a food, product or trick out of use, or brings it back. What has happened with it stays. */
export async function retire(
  { db, now }: Context,
  { kind, id, isRetired }: RetireInput,
): Promise<Result<undefined, RetireProblem>> {
  return inTransaction(db, async (tx) => {
    const data = { retiredAt: isRetired ? now : null };
    const where = { id };
    const { count } =
      kind === "food"
        ? await tx.food.updateMany({ where: { ...where, mergedIntoId: null }, data })
        : kind === "product"
          ? await tx.product.updateMany({ where, data })
          : await tx.trick.updateMany({ where, data });
    return count === 1 ? ok(undefined) : refuse({ kind: "gone" });
  });
}

/** Words for a refusal. */
export function describeRetireProblem({ kind }: RetireProblem): string {
  switch (kind) {
    case "gone":
      return "This is no longer on record. Open the Larder again.";
  }
}
