import { ok, refuse, type Result } from "#lib/base/index.ts";
import {
  clearSeries,
  inTransaction,
  replaceDaysOff,
  writeChild,
  writeSchoolRule,
  writeSettings,
  writeShop,
} from "#lib/db/index.ts";
import { RULE_STARTS } from "#lib/safety/index.ts";
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
    for (const child of input.children) {
      await writeChild(tx, undefined, {
        privateName: child.privateName,
        onScreenName: child.onScreenName,
        birthMonth: child.birthMonth || null,
        portionFactor: 1,
        facePoints: null,
        // The careful reading until the user says which it is in the series bible.
        avoidances: child.allergens.map((allergen) => ({
          avoidance: { allergen, severity: "allergy" },
          note: "",
        })),
      });
    }
    for (const { id, rule } of RULE_STARTS) {
      if (input.ruleStarts.includes(id)) await writeSchoolRule(tx, undefined, rule, true);
    }
    for (const { name, days } of input.shops) {
      await writeShop(tx, undefined, { name, days, hours: "", aisles: [], note: "" });
    }
    await replaceDaysOff(
      tx,
      input.daysOff.map(({ from, to, label }) => ({ from, to: to || from, label })),
    );
    await writeSettings(tx, {
      isWelcomed: true,
      privateWords: input.children.map((child) => child.privateName),
      // None ticked is read as not said.
      ...(input.schoolDays.length > 0 ? { schoolDays: input.schoolDays } : {}),
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
