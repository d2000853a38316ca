import { randomUUID } from "node:crypto";
import { copyFileSync, rmSync } from "node:fs";
import path from "node:path";
import { day, mondayOf, weeksLater } from "#lib/calendar/index.ts";
import { openDatabase, writeSettings, type Database } from "#lib/db/index.ts";
import { proposePlan, type PlanProblem } from "#lib/planner/index.ts";
import { logReaction } from "#lib/use-cases/log-reaction.ts";
import { planProblemFor } from "#lib/use-cases/plan-problem.ts";
import { buildLongSeries } from "#tests/support/long-series.ts";
import { median } from "./median.ts";

type Figure = { name: string; value: number; unit: string };

const TODAY = day("2026-03-11");
const PASSES = 5;
const TURNS = 3;
let entries = 0;

/** What is written before each question, so that only what that write leaves standing helps. */
const WRITES: Readonly<Record<string, (db: Database, turn: number) => Promise<unknown>>> = {
  "an unrelated write": (db) => writeSettings(db, { isWelcomed: true }),
  "a verdict": async (db) => {
    const { itemId, childId } = await db.reaction.findFirstOrThrow({
      orderBy: { item: { lunch: { date: "desc" } } },
    });
    const input = { id: randomUUID(), itemId, childId, device: "bench", baseRevision: 99 };
    // Each entry is later than the last and says something else, or nothing would change.
    entries += 1;
    const now = new Date(Date.parse(`${TODAY}T12:00:00Z`) + 1000 * entries);
    const change = { eaten: entries % 5 };
    return logReaction({ db, today: TODAY, now }, { ...input, madeAt: now.toISOString(), change });
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
  const [ten, one] = [openDatabase(file), openDatabase(short)];
  const times = new Map<string, { ten: number[]; one: number[] }>();
  try {
    await keepLastYear(one);
    const items = { ten: 0, one: 0 };
    // In turn, so that a busy neighbour slows both alike.
    for (let pass = 0; pass < PASSES; pass += 1)
      for (const [years, db] of [["ten", ten] as const, ["one", one] as const])
        items[years] = await measure(db, (what, time) => {
          const both = times.get(what) ?? { ten: [], one: [] };
          both[years].push(time);
          times.set(what, both);
        });
    return [
      ...[...times].flatMap(([what, both]) => [
        named(`${what}, ten years`, median(both.ten), "ms"),
        named(`${what}, ten years against one`, median(both.ten) / median(both.one), "times"),
      ]),
      named("items to choose from, ten years against one", items.ten / items.one, "times"),
    ];
  } finally {
    await Promise.all([ten.$disconnect(), one.$disconnect()]);
    rmSync(folder, { recursive: true, force: true });
  }
}

async function keepLastYear(db: Database): Promise<void> {
  const before = weeksLater(mondayOf(TODAY), -52);
  await db.lunch.deleteMany({ where: { episode: { weekOf: { lt: before } } } });
  await db.episode.deleteMany({ where: { weekOf: { lt: before } } });
}

/** Tells the time of a question after each kind of write, and of the plans; returns how many items there are. */
async function measure(db: Database, tell: (what: string, time: number) => void): Promise<number> {
  const mondays = [1, 2, 3, 4].map((week) => weeksLater(mondayOf(TODAY), week));
  const ask = (): Promise<PlanProblem> => planProblemFor(db, mondays, TODAY);
  let problem = await ask();
  for (const [name, write] of Object.entries(WRITES))
    for (let turn = 0; turn < TURNS; turn += 1) {
      await write(db, turn);
      const start = performance.now();
      problem = await ask();
      const asked = performance.now();
      tell(`question after ${name}`, asked - start);
      proposePlan(problem, { seed: String(turn) });
      tell("first plan", performance.now() - asked);
    }
  return problem.items.length;
}

function named(what: string, value: number, unit: string): Figure {
  return { name: `planner, a month from the records, ${what}`, value, unit };
}
