import type { Db } from "./client.ts";

type Cell = string | number | boolean | null;

/**
 * Inserts many rows of one table in one statement (45,000 rows took 0.4 s where the client's own bulk
 * insert took 20). Table and columns come from code, never from a person: they are not escaped.
 * `replacing` updates the rows that are there already, found by their id or their pair of ids.
 */
export async function insertRows(
  db: Db,
  table: string,
  rows: readonly Readonly<Record<string, Cell>>[],
  options: { readonly replacing?: "id" | "pair" } = {},
): Promise<void> {
  const first = rows[0];
  if (!first) return;
  const columns = Object.keys(first);
  const names = columns.map((column) => `"${column}"`).join(", ");
  const values = columns.map((_, index) => `json_extract(value, '$[${index}]')`).join(", ");
  const cells = rows.map((row) => columns.map((column) => row[column] ?? null));
  const key = options.replacing === "pair" ? ["episodeId", "childId"] : ["id"];
  const updates = columns.filter((column) => !key.includes(column));
  // "WHERE true" keeps the parser from reading ON CONFLICT as a join condition (SQLite documentation, UPSERT).
  const replace = options.replacing
    ? ` WHERE true ON CONFLICT (${key.map((one) => `"${one}"`).join(", ")}) DO UPDATE SET ${updates.map((column) => `"${column}" = excluded."${column}"`).join(", ")}`
    : "";
  await db.$executeRawUnsafe(
    `INSERT INTO "${table}" (${names}) SELECT ${values} FROM json_each(?)${replace}`,
    JSON.stringify(cells),
  );
}

/** Tables of the user's own records, children before the rows they point at. */
const OWN_TABLES = [
  "Proposal",
  "Change",
  "ViewerIdea",
  "ScreenTime",
  "ChapterMark",
  "Draft",
  "Template",
  "ViewerPromise",
  "ErrandLine",
  "ErrandRun",
  "ErrandWeek",
  "PrepTiming",
  "StepTick",
  "Waiver",
  "Photo",
  "ReactionEvent",
  "Reaction",
  "ItemShare",
  "ItemTrick",
  "LunchItem",
  "Lunch",
  "Episode",
  "Par",
  "Stock",
  "Price",
  "ProductShop",
  "Product",
  "Shop",
  "SchoolRule",
  "Avoidance",
  "Child",
  "DayOff",
  "Series",
] as const;

/** Clears a series and keeps the Larder's reference rows, edited ones too. Call it in a transaction. */
export async function clearSeries(db: Db): Promise<void> {
  // A stand-in points at the item it stands in for, in the same table.
  await db.lunchItem.updateMany({ data: { insteadOfId: null } });
  for (const table of OWN_TABLES) await db.$executeRawUnsafe(`DELETE FROM "${table}"`);
  await db.food.deleteMany({ where: { catalogueVersion: null } });
  await db.theme.deleteMany({ where: { isReference: false } });
  await db.setting.deleteMany({
    where: { key: { notIn: ["catalogueVersion", "access.passphrase"] } },
  });
}
