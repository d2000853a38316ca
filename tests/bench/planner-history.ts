import { copyFileSync, rmSync } from "node:fs";
import path from "node:path";
import { day, mondayOf, weeksLater } from "#lib/calendar/index.ts";
import { openDatabase, writeSettings } from "#lib/db/index.ts";
import { proposePlan, type PlanProblem } from "#lib/planner/index.ts";
import { planProblemFor } from "#lib/use-cases/plan-problem.ts";
import { buildLongSeries } from "#tests/support/long-series.ts";

type Figure = { name: string; value: number; unit: string };

const TODAY = day("2026-03-11");
const REPEATS = 5;

/**
 * The same month's question and first plan from ten years of records and from their last year, each right
 * after a write, so that nothing kept helps.
 */
export async function benchPlannerHistory(): Promise<Figure[]> {
  const { folder, file } = await buildLongSeries(TODAY);
  const short = path.join(folder, "one-year.db");
  copyFileSync(file, short);
  try {
    const ten = await measure(file);
    const one = await measure(short, weeksLater(mondayOf(TODAY), -52));
    return [
      named("question after a write, ten years", 1000 * ten.question, "ms"),
      named("question after a write, ten years against one", ten.question / one.question, "times"),
      named("first plan, ten years against one", ten.plan / one.plan, "times"),
      named("items to choose from, ten years against one", ten.items / one.items, "times"),
    ];
  } finally {
    rmSync(folder, { recursive: true, force: true });
  }
}

async function measure(
  file: string,
  from?: string,
): Promise<{ question: number; plan: number; items: number }> {
  const db = openDatabase(file);
  try {
    if (from !== undefined) {
      await db.lunch.deleteMany({ where: { episode: { weekOf: { lt: from } } } });
      await db.episode.deleteMany({ where: { weekOf: { lt: from } } });
    }
    const mondays = [1, 2, 3, 4].map((week) => weeksLater(mondayOf(TODAY), week));
    let problem: PlanProblem = await planProblemFor(db, mondays, TODAY);
    const questions: number[] = [];
    const plans: number[] = [];
    for (let repeat = 0; repeat < REPEATS; repeat += 1) {
      await writeSettings(db, { isWelcomed: true });
      const start = performance.now();
      problem = await planProblemFor(db, mondays, TODAY);
      const asked = performance.now();
      proposePlan(problem, { seed: String(repeat) });
      questions.push((asked - start) / 1000);
      plans.push((performance.now() - asked) / 1000);
    }
    return { question: median(questions), plan: median(plans), items: problem.items.length };
  } finally {
    await db.$disconnect();
  }
}

function named(what: string, value: number, unit: string): Figure {
  return { name: `planner, a month from the records, ${what}`, value, unit };
}

function median(values: readonly number[]): number {
  return [...values].sort((one, other) => one - other)[values.length >> 1] ?? 0;
}
