import { ok, refuse, type Result } from "#lib/base/index.ts";
import type { PrepStep } from "#lib/catalog/index.ts";
import { foodColumns, inTransaction, readFoodsById } from "#lib/db/index.ts";
import type { Context } from "../context.ts";
import { text } from "./food-fields.ts";
import type { StepsFields, StepsInput } from "./steps.input.ts";

export type SaveStepsProblem = { readonly kind: "gone" | "changed-elsewhere" };

/**
 * Saves how a food is got ready, the steps in the order they are done. From then on a later catalogue
 * leaves the food alone. Refuses when another tab saved the food first.
 */
export async function saveSteps(
  { db, now }: Context,
  input: StepsInput,
): Promise<Result<undefined, SaveStepsProblem>> {
  return inTransaction(db, async (tx): Promise<Result<undefined, SaveStepsProblem>> => {
    const row = await tx.food.findUnique({ where: { id: input.foodId } });
    const food = (await readFoodsById(tx, [input.foodId])).get(input.foodId);
    if (!row || !food || row.mergedIntoId !== null) return refuse({ kind: "gone" });
    if (row.revision !== input.revision) return refuse({ kind: "changed-elsewhere" });
    const columns = foodColumns({ ...food, prepSteps: input.steps.map(stepOf) });
    const revision = row.revision + 1;
    await tx.food.update({
      where: { id: row.id },
      data: { ...columns, editedAt: now, revision },
    });
    return ok(undefined);
  });
}

/** Words for a refusal. */
export function describeSaveStepsProblem({ kind }: SaveStepsProblem): string {
  switch (kind) {
    case "gone":
      return "This food was merged or removed meanwhile. Open the Larder again.";
    case "changed-elsewhere":
      return "This food was saved elsewhere after you opened it. Nothing was overwritten: what you typed still stands here. Reload to see the other version.";
  }
}

/** Steps as the form shows them. */
export function stepFields(steps: readonly PrepStep[]): StepsFields["steps"] {
  return steps.map((step) => ({
    ...{ name: step.name, minutes: String(step.minutes), isByHand: step.handsOn },
    ...{ appliance: step.appliance, earliest: step.earliest },
    keepsMinutes: text(step.holdMinutesMax),
    isAlongside: step.alongside === true,
  }));
}

function stepOf(typed: StepsInput["steps"][number], position: number): PrepStep {
  return {
    ...{ name: typed.name, minutes: typed.minutes, handsOn: typed.isByHand },
    ...{ appliance: typed.appliance, earliest: typed.earliest },
    holdMinutesMax: typed.keepsMinutes,
    // The first step has none before it to wait for.
    ...(typed.isAlongside && position > 0 ? { alongside: true } : {}),
  };
}
