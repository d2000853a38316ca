import { randomUUID } from "node:crypto";
import { copyFileSync, rmSync } from "node:fs";
import path from "node:path";
import { day, mondayOf, weeksLater } from "#lib/calendar/index.ts";
import { openDatabase, writeSettings, type Database } from "#lib/db/index.ts";
import { proposePlan, type PlanProblem } from "#lib/planner/index.ts";
import { logReaction } from "#lib/use-cases/log-reaction.ts";
import { planProblemFor } from "#lib/use-cases/plan-problem.ts";
import { buildLongSeries } from "#tests/support/long-series.ts";

type Figure = { name: string; value: number; unit: string };

const TODAY = day("2026-03-11");
const REPEATS = 7;

/** What is written before each question, so that only what that write leaves standing helps. */
const WRITES: Readonly<Record<string, (db: Database, turn: number) => Promise<unknown>>> = {
  "an unrelated write": (db) => writeSettings(db, { isWelcomed: true }),
  "a verdict": async (db, turn) => {
    const { itemId, childId } = await db.reaction.findFirstOrThrow({
      orderBy: { item: { lunch: { date: "desc" } } },
    });
    const input = { id: randomUUID(), itemId, childId, device: "bench", baseRevision: 99 };
    const madeAt = `${TODAY}T12:00:00.000Z`;
    const context = { db, today: TODAY, now: new Date(madeAt) };
    return logReaction(context, { ...input, madeAt, change: { eaten: turn % 5 } });
  },
  "what concerns every verdict": async (db, turn) => {
    const food = await db.food.findFirstOrThrow({ where: { id: "carrot-sticks" } });
    const familyId = turn % 2 === 0 ? "egg" : "carrot";
    return db.food.update({ where: { id: food.id }, data: { familyId } });
  },
};

/** The same month's question and first plan from ten years of records and from their last year. */
export async function benchPlannerHistory(): Promise<Figure[]> {
  const { folder, file } = await buildLongSeries(TODAY);
  const short = path.join(folder, "one-year.db");
  copyFileSync(file, short);
  try {
    const ten = await measure(file);
    const one = await measure(short, weeksLater(mondayOf(TODAY), -52));
    const questions = Object.keys(WRITES).flatMap((write) => {
      const [long, brief] = [ten.questions[write] ?? 0, one.questions[write] ?? 0];
      return [
        named(`question after ${write}, ten years`, long, "ms"),
        named(`question after ${write}, ten years against one`, long / brief, "times"),
      ];
    });
    return [
      ...questions,
      named("first plan, ten years against one", ten.plan / one.plan, "times"),
      named("items to choose from, ten years against one", ten.items / one.items, "times"),
    ];
  } finally {
    rmSync(folder, { recursive: true, force: true });
  }
}

type Measured = {
  /** By what was written before, in ms. */
  readonly questions: Readonly<Record<string, number>>;
  readonly plan: number;
  readonly items: number;
};

async function measure(file: string, from?: string): Promise<Measured> {
  const db = openDatabase(file);
  try {
    if (from !== undefined) {
      await db.lunch.deleteMany({ where: { episode: { weekOf: { lt: from } } } });
      await db.episode.deleteMany({ where: { weekOf: { lt: from } } });
    }
    const mondays = [1, 2, 3, 4].map((week) => weeksLater(mondayOf(TODAY), week));
    let problem: PlanProblem = await planProblemFor(db, mondays, TODAY);
    const questions: Record<string, number> = {};
    const plans: number[] = [];
    for (const [name, write] of Object.entries(WRITES)) {
      const times: number[] = [];
      for (let turn = 0; turn < REPEATS; turn += 1) {
        await write(db, turn);
        const start = performance.now();
        problem = await planProblemFor(db, mondays, TODAY);
        const asked = performance.now();
        times.push(asked - start);
        proposePlan(problem, { seed: String(turn) });
        plans.push(performance.now() - asked);
      }
      questions[name] = median(times);
    }
    return { questions, plan: median(plans), items: problem.items.length };
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
