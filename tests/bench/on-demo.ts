import { mkdtempSync, rmSync } from "node:fs";
import { tmpdir } from "node:os";
import path from "node:path";
import type { Day } from "#lib/calendar/index.ts";
import { applyMigrations, openDatabase, type Database } from "#lib/db/index.ts";
import { planMonth, USUAL_MONTH, type Plan, type PlanProblem } from "#lib/planner/index.ts";
import { loadCatalogue } from "#lib/use-cases/load-catalogue.ts";
import { loadDemo } from "#lib/use-cases/load-demo.ts";
import { loadSolver } from "#lib/use-cases/solver/highs-solver.ts";
import { tinHarbour } from "#seed/demo/index.ts";
import { referenceCatalogue, referenceThemes } from "#seed/index.ts";

/** Works on a database of its own that holds the demo as somebody meets it on a day; gone afterwards. */
export async function onDemo<Value>(
  today: Day,
  work: (db: Database) => Promise<Value>,
): Promise<Value> {
  const folder = mkdtempSync(path.join(tmpdir(), "noonbook-bench-"));
  const file = path.join(folder, "demo.db");
  applyMigrations(file, path.resolve(import.meta.dirname, "../../prisma/migrations"));
  const db = openDatabase(file);
  try {
    await loadCatalogue(db, referenceCatalogue());
    await loadDemo({ db, today, now: new Date() }, tinHarbour, referenceThemes());
    return await work(db);
  } finally {
    await db.$disconnect();
    rmSync(folder, { recursive: true, force: true });
  }
}

/** The last plan of a run of the solver in this thread, cut off after some rounds. */
export async function solvedPlan(
  problem: PlanProblem,
  options: { readonly seed: string; readonly roundsMax: number },
): Promise<Plan> {
  const solver = await loadSolver();
  let best: Plan = { weeks: [] };
  planMonth(problem, solver, { ...USUAL_MONTH, ...options }, (step) => {
    if (step.kind === "plan") best = step.plan;
  });
  return best;
}
