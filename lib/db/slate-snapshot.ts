import { z } from "zod";
import { insertRows } from "./bulk.ts";
import type { Db } from "./client.ts";

const Cell = z.union([z.string(), z.number(), z.boolean(), z.null()]);
const Rows = z.array(z.record(z.string(), Cell));

/** Episodes as they stood, row by row, with everything the slate can change. */
export const SlateSnapshot = z.object({
  /** Episodes the change touched; those without a row here did not exist before. */
  episodeIds: z.array(z.string()),
  Episode: Rows,
  Lunch: Rows,
  LunchItem: Rows,
  ItemTrick: Rows,
  ItemShare: Rows,
  Waiver: Rows,
  Draft: Rows,
  ChapterMark: Rows,
  ScreenTime: Rows,
});
export type SlateSnapshot = z.infer<typeof SlateSnapshot>;

const OF_EPISODE = `"episodeId" IN (SELECT value FROM json_each(?))`;
const OF_ITEM = `"itemId" IN (SELECT i."id" FROM "LunchItem" i JOIN "Lunch" l ON l."id" = i."lunchId" WHERE l.${OF_EPISODE})`;
const WHERE = {
  Episode: `"id" IN (SELECT value FROM json_each(?))`,
  Lunch: OF_EPISODE,
  LunchItem: `"lunchId" IN (SELECT "id" FROM "Lunch" WHERE ${OF_EPISODE})`,
  ItemTrick: OF_ITEM,
  ItemShare: OF_ITEM,
  Waiver: `"lunchId" IN (SELECT "id" FROM "Lunch" WHERE ${OF_EPISODE})`,
  Draft: OF_EPISODE,
  ChapterMark: OF_EPISODE,
  ScreenTime: OF_EPISODE,
} as const;
type Table = keyof typeof WHERE;

/** Takes the rows of some episodes as they are now. Call it in the transaction of the change. */
export async function takeSnapshot(db: Db, episodeIds: readonly string[]): Promise<SlateSnapshot> {
  const ids = JSON.stringify(episodeIds);
  const rows: Partial<Record<Table, unknown>> = {};
  for (const table of Object.keys(WHERE) as Table[]) {
    rows[table] = await db.$queryRawUnsafe(`SELECT * FROM "${table}" WHERE ${WHERE[table]}`, ids);
  }
  // Raw rows hold instants as dates and large whole numbers as bigint; the file keeps text and numbers.
  const plain = JSON.parse(
    JSON.stringify(rows, (_, value: unknown) =>
      typeof value === "bigint" ? Number(value) : value,
    ),
  ) as Record<string, unknown>;
  return SlateSnapshot.parse({ episodeIds, ...plain });
}

/** True when, since the snapshot, a lid was shut, a verdict given or a fact of the day noted in one of its episodes. */
export async function hasHappenedSince(db: Db, snapshot: SlateSnapshot): Promise<boolean> {
  const packedThen = new Set(
    snapshot.Lunch.filter((row) => row["packedAt"] !== null).map((row) => row["id"]),
  );
  const now = await db.lunch.findMany({
    where: { episodeId: { in: snapshot.episodeIds } },
    select: { id: true, packedAt: true, minutesUsed: true, hard: true, pickups: true },
  });
  if (now.some(({ id, packedAt }) => packedAt !== null && !packedThen.has(id))) return true;
  const then = new Map(snapshot.Lunch.map((row) => [row["id"], row]));
  for (const { id, minutesUsed, hard, pickups } of now) {
    const row = then.get(id) ?? { minutesUsed: null, hard: "", pickups: "" };
    const isSame =
      row["minutesUsed"] === minutesUsed && row["hard"] === hard && row["pickups"] === pickups;
    if (!isSame) return true;
  }
  const known = new Set(snapshot.LunchItem.map((row) => row["id"]));
  const judged = await db.lunchItem.findMany({
    where: { lunch: { episodeId: { in: snapshot.episodeIds } }, reactions: { some: {} } },
    select: { id: true },
  });
  return judged.some(({ id }) => !known.has(id));
}

/** Puts the rows of a snapshot back. Rows that hang on a lunch (photos, verdicts) stay where they are. */
export async function restoreSnapshot(db: Db, snapshot: SlateSnapshot): Promise<void> {
  const idsOf = (table: "Episode" | "Lunch" | "LunchItem"): string[] =>
    snapshot[table].map((row) => String(row["id"]));
  const { episodeIds } = snapshot;
  // Dates and weeks are unique: step aside first, so that two lunches can change places.
  for (const table of ["Lunch", "Episode"] as const) {
    const column = table === "Lunch" ? "date" : "weekOf";
    await db.$executeRawUnsafe(
      `UPDATE "${table}" SET "${column}" = 'aside-' || "id" WHERE ${WHERE[table]}`,
      JSON.stringify(episodeIds),
    );
  }
  await db.episode.deleteMany({
    where: { id: { in: episodeIds.filter((id) => !idsOf("Episode").includes(id)) } },
  });
  await upsertRows(db, "Episode", snapshot.Episode);
  await db.lunch.deleteMany({
    where: { episodeId: { in: episodeIds }, id: { notIn: idsOf("Lunch") } },
  });
  await upsertRows(db, "Lunch", snapshot.Lunch);
  await db.lunchItem.deleteMany({
    where: { lunch: { episodeId: { in: episodeIds } }, id: { notIn: idsOf("LunchItem") } },
  });
  await upsertRows(db, "LunchItem", [
    ...snapshot.LunchItem.filter((row) => row["insteadOfId"] === null),
    ...snapshot.LunchItem.filter((row) => row["insteadOfId"] !== null),
  ]);
  for (const table of ["ItemTrick", "ItemShare", "Waiver"] as const) {
    await db.$executeRawUnsafe(
      `DELETE FROM "${table}" WHERE ${WHERE[table]}`,
      JSON.stringify(episodeIds),
    );
    await insertRows(db, table, snapshot[table]);
  }
  for (const table of ["Draft", "ChapterMark", "ScreenTime"] as const) {
    await upsertRows(db, table, snapshot[table]);
  }
}

async function upsertRows(db: Db, table: Table, rows: z.infer<typeof Rows>): Promise<void> {
  await insertRows(db, table, rows, { replacing: table === "ScreenTime" ? "pair" : "id" });
}
