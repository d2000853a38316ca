import { z } from "zod";
import { NO_FACTS, type DayFacts, type DayFactsEntry } from "#lib/reactions/index.ts";
import type { Db } from "./client.ts";
import { parseColumn } from "./json.ts";

/** Everything an entry about a day must know before it is applied. */
export type FactsGround = {
  /** The entries so far, in order of arrival: what was written without one stands first as one. */
  readonly entries: readonly DayFactsEntry[];
  /** Stands for what the day said before its first entry; not on record yet. */
  readonly start: DayFactsEntry | undefined;
};

const Change = z
  .object({ minutes: z.number().nullable(), hard: z.string(), pickups: z.string() })
  .partial();

/** The entries about one day, or undefined when there is no such lunch. */
export async function readFactsGround(db: Db, lunchId: string): Promise<FactsGround | undefined> {
  const lunch = await db.lunch.findUnique({
    where: { id: lunchId },
    select: { minutesUsed: true, hard: true, pickups: true, date: true },
  });
  if (!lunch) return undefined;
  const rows = await db.$queryRaw<readonly FactRow[]>`
    SELECT "id", "device", "madeAt", "baseRevision", "changeJson" FROM "DayFactEvent"
    WHERE "lunchId" = ${lunchId} ORDER BY rowid`;
  const entries = rows.map(({ id, device, madeAt, baseRevision, changeJson }, index) => ({
    ...{ id, device, baseRevision: Number(baseRevision), revision: index + 1 },
    madeAt: new Date(madeAt).toISOString(),
    change: definedOf(parseColumn(Change, changeJson, "DayFactEvent.change")),
  }));
  if (entries.length > 0) return { entries, start: undefined };
  const { minutesUsed: minutes, hard, pickups } = lunch;
  const start = startEntry(lunchId, lunch.date, { minutes, hard, pickups });
  return { entries: start ? [start] : [], start };
}

type FactRow = {
  readonly id: string;
  readonly device: string;
  readonly madeAt: string;
  readonly baseRevision: number | bigint;
  readonly changeJson: string;
};

function definedOf(change: z.infer<typeof Change>): Partial<DayFacts> {
  const { minutes, hard, pickups } = change;
  return {
    ...(minutes === undefined ? {} : { minutes }),
    ...(hard === undefined ? {} : { hard }),
    ...(pickups === undefined ? {} : { pickups }),
  };
}

/** What a day said that came without entries, from a file or the demo; undefined when it said nothing. */
function startEntry(lunchId: string, date: string, facts: DayFacts): DayFactsEntry | undefined {
  const change = {
    ...(facts.minutes === NO_FACTS.minutes ? {} : { minutes: facts.minutes }),
    ...(facts.hard === NO_FACTS.hard ? {} : { hard: facts.hard }),
    ...(facts.pickups === NO_FACTS.pickups ? {} : { pickups: facts.pickups }),
  };
  if (Object.keys(change).length === 0) return undefined;
  const id = `start ${lunchId}`;
  return { id, device: "", madeAt: `${date}T00:00:00.000Z`, baseRevision: 0, revision: 1, change };
}

/** Whether an entry was applied before. */
export async function isFactsEntryKnown(db: Db, id: string): Promise<boolean> {
  return (await db.dayFactEvent.count({ where: { id } })) > 0;
}

/** Keeps an entry under its own id and sets the day to what stands after it. */
export async function applyFactsEntry(
  db: Db,
  lunchId: string,
  entry: DayFactsEntry,
  { start }: FactsGround,
  standing: DayFacts,
): Promise<void> {
  for (const one of start ? [start, entry] : [entry]) {
    const { id, device, baseRevision, change } = one;
    const data = { id, lunchId, device, baseRevision, changeJson: JSON.stringify(change) };
    await db.dayFactEvent.create({ data: { ...data, madeAt: one.madeAt } });
  }
  const { minutes: minutesUsed, hard, pickups } = standing;
  await db.lunch.update({ where: { id: lunchId }, data: { minutesUsed, hard, pickups } });
}
