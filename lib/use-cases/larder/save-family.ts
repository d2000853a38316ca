import { ok, refuse, type Result } from "#lib/base/index.ts";
import { inTransaction } from "#lib/db/index.ts";
import type { Context } from "../context.ts";
import type { FamilyInput } from "./family.input.ts";

export type SaveFamilyProblem = { readonly kind: "gone" };

/** Saves a family's name and its own rest window. */
export async function saveFamily(
  { db }: Context,
  { familyId, name, restDays }: FamilyInput,
): Promise<Result<undefined, SaveFamilyProblem>> {
  return inTransaction(db, async (tx) => {
    const { count } = await tx.family.updateMany({
      where: { id: familyId },
      data: { name, restDays },
    });
    return count === 1 ? ok(undefined) : refuse({ kind: "gone" });
  });
}

/** Words for a refusal. */
export function describeSaveFamilyProblem({ kind }: SaveFamilyProblem): string {
  switch (kind) {
    case "gone":
      return "That family is no longer on record. Reload the page.";
  }
}
