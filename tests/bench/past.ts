import { mkdtempSync } from "node:fs";
import { tmpdir } from "node:os";
import path from "node:path";
import { performance } from "node:perf_hooks";
import { addDays, day, weeksLater } from "#lib/calendar/index.ts";
import {
  applyMigrations,
  insertRows,
  inTransaction,
  openDatabase,
  type Database,
} from "#lib/db/index.ts";
import { loadCatalogue } from "#lib/use-cases/load-catalogue.ts";
import { bringPast, lookAtPast } from "#lib/use-cases/past/bring-past.ts";
import type { PastInput } from "#lib/use-cases/past/past.input.ts";
import { StartSeriesInput } from "#lib/use-cases/start-series.input.ts";
import { startSeries } from "#lib/use-cases/start-series.ts";
import { referenceCatalogue } from "#seed/index.ts";

const MIGRATIONS = path.resolve(import.meta.dirname, "../../prisma/migrations");
const LINES = 5000;
const LUNCH_LINES = 5;
const WEEK_LINES = 5 * LUNCH_LINES;
const TODAY = day("2026-03-11");
const FIRST = day("2020-01-06");
/** What writing the past adds rows to, parents before children. */
const TABLES = ["Theme", "Shop", "Episode", "Lunch", "LunchItem", "Reaction"] as const;

type Row = Record<string, string | number | boolean | null>;

/** 5,000 lines of earlier weeks: a dry run and brought in, in seconds and as a ratio to bare inserts. */
export async function benchPast(): Promise<{ name: string; value: number; unit: string }[]> {
  const input: PastInput = { text: pastFile(), reading: null, choices: {} };
  const db = await openEmpty();
  const context = { db, today: TODAY, now: new Date("2026-03-11T12:00:00Z") };
  await startSeries(
    context,
    StartSeriesInput.parse({
      name: "Bench",
      children: [{ privateName: "Ines", onScreenName: "Biscuit" }],
    }),
  );
  const standing = await rowsOf(db);
  const looked = await timed(() => lookAtPast(context, input));
  const { errors, added } = looked.value;
  if (errors > 0 || added.items !== LINES || added.verdicts !== LINES) {
    throw new Error(`The file is not read whole: ${errors} errors, ${added.items} items`);
  }
  const brought = await timed(() => bringPast(context, input));
  if (!brought.value.ok) throw new Error(brought.value.problem.kind);
  const again = await timed(() => bringPast(context, input));

  const rows = (await rowsOf(db)).map(
    ([table, all]) => [table, all.filter((row) => !has(standing, table, row))] as const,
  );
  const bare = await openEmpty();
  await insertRows(bare, "Child", await db.$queryRawUnsafe<Row[]>('SELECT * FROM "Child"'));
  const inserted = await timed(() =>
    inTransaction(bare, async (tx) => {
      for (const [table, own] of rows) await insertRows(tx, table, own);
    }),
  );
  await Promise.all([db.$disconnect(), bare.$disconnect()]);
  const count = rows.reduce((sum, [, own]) => sum + own.length, 0);
  const times = (seconds: number): number => seconds / inserted.seconds;
  const bareUnit = "× bare inserts";
  return [
    { name: `past: bare inserts of the same ${count} rows`, value: inserted.seconds, unit: "s" },
    { name: `past: a dry run of ${LINES} lines`, value: looked.seconds, unit: "s" },
    { name: `past: a dry run of ${LINES} lines`, value: times(looked.seconds), unit: bareUnit },
    { name: `past: ${LINES} lines brought in`, value: brought.seconds, unit: "s" },
    { name: `past: ${LINES} lines brought in`, value: times(brought.seconds), unit: bareUnit },
    { name: "past: the same file a second time", value: again.seconds, unit: "s" },
  ];
}

/** Two hundred weeks, a lunch a day of five foods by their names, with all that a line can say. */
function pastFile(): string {
  const foods = referenceCatalogue().foods.map(({ food }) => food);
  const lines = Array.from({ length: LINES }, (_, line) => {
    const week = Math.floor(line / WEEK_LINES);
    const date = addDays(weeksLater(FIRST, week), Math.floor((line % WEEK_LINES) / LUNCH_LINES));
    const name = foods[line % foods.length]?.name ?? "";
    const eaten = ["none", "25%", "half", "75%", "all"][line % 5] ?? "";
    const shop = ["Quay", "Lamp Street", ""][line % 3] ?? "";
    const quote = line % 7 === 0 ? '"it said ""crunch"", twice"' : "";
    return `${date},Week ${week % 60},"${name}",${20 + (line % 9) * 10} g,${shop},Biscuit,${eaten},${quote}`;
  });
  return ["date,theme,item,amount,shop,child,eaten,quote", ...lines].join("\n");
}

async function openEmpty(): Promise<Database> {
  const folder = mkdtempSync(path.join(tmpdir(), "noonbook-bench-"));
  const file = path.join(folder, "noonbook.db");
  applyMigrations(file, MIGRATIONS);
  const db = openDatabase(file);
  await loadCatalogue(db, referenceCatalogue());
  return db;
}

type TableRows = readonly (readonly [table: string, rows: readonly Row[]])[];

async function rowsOf(db: Database): Promise<TableRows> {
  return Promise.all(
    TABLES.map(async (table) => {
      return [table, await db.$queryRawUnsafe<Row[]>(`SELECT * FROM "${table}"`)] as const;
    }),
  );
}

function has(standing: TableRows, table: string, row: Row): boolean {
  const own = standing.find(([name]) => name === table)?.[1] ?? [];
  return own.some(({ id }) => id !== undefined && id === row["id"]);
}

async function timed<Value>(
  work: () => Promise<Value>,
): Promise<{ readonly value: Value; readonly seconds: number }> {
  const started = performance.now();
  const value = await work();
  return { value, seconds: (performance.now() - started) / 1000 };
}
