import { ok, refuse, type Result } from "#lib/base/index.ts";
import { clearSeries, inTransaction, writeSettings } from "#lib/db/index.ts";
import type { Context } from "./context.ts";
import type { StartSeriesInput } from "./start-series.input.ts";

export type StartProblem = { readonly kind: "already-started" };

/**
 * Starts the user's own series, all or nothing. The demo makes way; the Larder stays.
 * Refuses when a series of their own stands already.
 */
export async function startSeries(
  { db, today }: Context,
  input: StartSeriesInput,
): Promise<Result<undefined, StartProblem>> {
  return inTransaction(db, async (tx) => {
    const standing = await tx.series.findUnique({ where: { id: 1 } });
    if (standing && !standing.isDemo) return refuse({ kind: "already-started" });
    if (standing) await clearSeries(tx);
    await tx.series.create({ data: { id: 1, name: input.name, startedOn: today } });
    for (const [position, child] of input.children.entries()) {
      await tx.child.create({
        data: {
          privateName: child.privateName,
          onScreenName: child.onScreenName,
          birthMonth: child.birthMonth || null,
          position,
          // The careful reading until the user says which it is in the series bible.
          avoidances: {
            create: child.allergens.map((allergen) => ({ allergen, severity: "allergy" })),
          },
        },
      });
    }
    await writeSettings(tx, {
      isWelcomed: true,
      privateWords: input.children.map((child) => child.privateName),
      ...(input.departure ? { departure: input.departure } : {}),
    });
    return ok(undefined);
  });
}

/** Words for a refusal. */
export function describeStartProblem(problem: StartProblem): string {
  switch (problem.kind) {
    case "already-started":
      return "A series stands already. Open the slate to go on with it.";
  }
}
