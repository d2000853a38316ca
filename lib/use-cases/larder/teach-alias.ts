import { ok, refuse, type Result } from "#lib/base/index.ts";
import { taughtAlias } from "#lib/catalog/index.ts";
import { inTransaction, readFoodsById } from "#lib/db/index.ts";
import type { Context } from "../context.ts";
import type { TeachAliasInput } from "./quick-line.input.ts";

export type TeachProblem = { readonly kind: "gone" };

/**
 * Remembers that a phrase means a food. A name that was learned for another food moves over, for the
 * latest correction holds; names given by hand or by the catalogue stay. Returns the alias, or null
 * when the food answers to the phrase already.
 */
export async function teachAlias(
  { db }: Context,
  { foodId, phrase }: TeachAliasInput,
): Promise<Result<string | null, TeachProblem>> {
  return inTransaction(db, async (tx) => {
    const row = await tx.food.findUnique({ where: { id: foodId, mergedIntoId: null } });
    const food = (await readFoodsById(tx, [foodId])).get(foodId);
    if (!row || !food) return refuse({ kind: "gone" });
    const alias = taughtAlias(phrase, food);
    if (alias === null) return ok(null);
    await tx.foodAlias.deleteMany({ where: { name: alias, origin: "learned" } });
    await tx.foodAlias.create({ data: { foodId, name: alias, origin: "learned" } });
    return ok(alias);
  });
}

/** Words for a refusal. */
export function describeTeachProblem({ kind }: TeachProblem): string {
  switch (kind) {
    case "gone":
      return "That food is no longer on record. Choose another.";
  }
}
