import { z } from "zod";
import { Day } from "#lib/calendar/index.ts";
import { StandingPlan, type LineState } from "#lib/shopping/index.ts";
import type { Db } from "./client.ts";
import { parseColumn } from "./json.ts";

/** What the user decided for a week's runs beside trips and lines, which are rows of their own. */
export const ErrandDecisions = z.object({
  /** Trips that are not made. */
  notTo: z.array(z.object({ shopId: z.string(), day: Day })).default([]),
});
export type ErrandDecisions = z.infer<typeof ErrandDecisions>;

/** How the plan of a week stands. */
export type ErrandWeekRecord = {
  readonly decisions: ErrandDecisions;
  readonly standing: StandingPlan | null;
  /** By line: how it came about, as told when it was ticked. */
  readonly told: Readonly<Record<string, string>>;
};

/** A week's decisions and standing plan; nothing decided and none planned before it is first seen. */
export async function readErrandWeek(db: Db, weekOf: Day): Promise<ErrandWeekRecord> {
  const row = await db.errandWeek.findUnique({ where: { weekOf } });
  if (!row) return { decisions: ErrandDecisions.parse({}), standing: null, told: {} };
  return {
    decisions: parseColumn(ErrandDecisions, row.decisionsJson, "ErrandWeek.decisions"),
    standing:
      row.standingJson === null
        ? null
        : parseColumn(StandingPlan, row.standingJson, "ErrandWeek.standing"),
    told: parseColumn(z.record(z.string(), z.string()), row.toldJson, "ErrandWeek.told"),
  };
}

/** Keeps what is named of a week and leaves the rest. */
export async function writeErrandWeek(
  db: Db,
  weekOf: Day,
  change: Partial<ErrandWeekRecord>,
): Promise<void> {
  const data = {
    ...(change.told && { toldJson: JSON.stringify(change.told) }),
    ...(change.decisions && { decisionsJson: JSON.stringify(change.decisions) }),
    ...(change.standing !== undefined && {
      standingJson: change.standing === null ? null : JSON.stringify(change.standing),
    }),
  };
  await db.errandWeek.upsert({ where: { weekOf }, create: { weekOf, ...data }, update: data });
}

/** A line that has a state of its own. */
export type ErrandLineRecord = {
  readonly id: string;
  readonly shopId: string;
  readonly day: Day;
  readonly foodId: string | null;
  readonly productId: string | null;
  readonly label: string;
  readonly packs: number;
  readonly paidCents: number | null;
  readonly state: LineState;
  readonly byHand: boolean;
  readonly stamp: string;
};

/** A run with a state of its own: fixed by hand, done, or with such lines. */
export type ErrandRunRecord = {
  readonly id: string;
  readonly shopId: string;
  readonly day: Day;
  readonly isDone: boolean;
  readonly byHand: boolean;
  readonly lines: readonly ErrandLineRecord[];
};

const State = z.enum(["open", "bought", "none-left", "dropped"]);

/** The recorded runs of a week, by day and shop. */
export async function readErrandRuns(db: Db, weekOf: Day): Promise<ErrandRunRecord[]> {
  const rows = await db.errandRun.findMany({
    where: { weekOf },
    include: { lines: { orderBy: { id: "asc" } } },
    orderBy: [{ date: "asc" }, { shopId: "asc" }],
  });
  return rows.map((row) => ({
    id: row.id,
    shopId: row.shopId,
    day: Day.parse(row.date),
    isDone: row.doneAt !== null,
    byHand: row.byHand,
    lines: row.lines.map((line) => ({
      id: line.id,
      shopId: row.shopId,
      day: Day.parse(row.date),
      foodId: line.foodId,
      productId: line.productId,
      label: line.label,
      packs: line.packs,
      paidCents: line.paidCents,
      state: State.parse(line.state),
      byHand: line.byHand,
      stamp: line.stamp,
    })),
  }));
}

/** The row of a run, made when it has none yet. Call it in a transaction. */
export async function runRow(
  db: Db,
  run: { readonly shopId: string; readonly day: Day; readonly weekOf: Day },
): Promise<{ readonly id: string }> {
  const { shopId, day: date, weekOf } = run;
  return db.errandRun.upsert({
    where: { shopId_date: { shopId, date } },
    create: { shopId, date, weekOf },
    update: {},
    select: { id: true },
  });
}
