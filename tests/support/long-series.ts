import { mkdtempSync } from "node:fs";
import { tmpdir } from "node:os";
import path from "node:path";
import { day } from "#lib/calendar/index.ts";
import {
  applyMigrations,
  foodColumns,
  insertRows,
  inTransaction,
  openDatabase,
  readTricks,
  writeSettings,
} from "#lib/db/index.ts";
import { loadCatalogue } from "#lib/use-cases/load-catalogue.ts";
import { tenYears } from "#seed/demo/index.ts";
import { referenceCatalogue } from "#seed/index.ts";

const MIGRATIONS = path.resolve(import.meta.dirname, "../../prisma/migrations");

export type LongSeriesFile = {
  readonly folder: string;
  readonly file: string;
  /** An item and a child without a verdict, for timing one entry. */
  readonly counts: Readonly<Record<"episodes" | "lunches" | "items" | "reactions", number>>;
};

/** A data folder holding ten years of three children, drawn from a fixed seed. */
export async function buildLongSeries(today = "2026-03-11"): Promise<LongSeriesFile> {
  const folder = mkdtempSync(path.join(tmpdir(), "noonbook-bench-"));
  const file = path.join(folder, "noonbook.db");
  applyMigrations(file, MIGRATIONS);
  const db = openDatabase(file);
  const catalogue = referenceCatalogue();
  await loadCatalogue(db, catalogue);
  const foods = catalogue.foods.map(({ food }) => food);
  const tricks = await readTricks(db);
  const series = tenYears({ today: day(today), foods, tricks, themes: catalogue.themes });
  const known = new Set<string>(foods.map((food) => food.id));
  const used = new Set(series.lunchItems.map((item) => item.foodId));
  await inTransaction(db, async (tx) => {
    await tx.series.create({ data: { id: 1, name: "Ten years", startedOn: "2016-01-01" } });
    await insertRows(tx, "Child", series.children);
    // House recipes are foods of the demo's own; the long series only needs them to exist.
    const [model] = foods;
    for (const id of [...used].filter((one) => !known.has(one))) {
      if (model) await tx.food.create({ data: { id, ...foodColumns(model), name: id } });
    }
    await insertRows(tx, "Episode", series.episodes);
    await insertRows(tx, "Lunch", series.lunches);
    const products = new Set(
      (await tx.product.findMany({ select: { id: true } })).map((p) => p.id),
    );
    await insertRows(
      tx,
      "LunchItem",
      series.lunchItems.map((item) =>
        item.productId !== null && products.has(item.productId)
          ? item
          : { ...item, productId: null },
      ),
    );
    await insertRows(tx, "ItemTrick", series.itemTricks);
    await insertRows(tx, "ItemShare", series.itemShares);
    await insertRows(tx, "Reaction", series.reactions);
    await writeSettings(tx, { isWelcomed: true });
  });
  await db.$queryRawUnsafe("PRAGMA wal_checkpoint(TRUNCATE)");
  await db.$disconnect();
  return {
    folder,
    file,
    counts: {
      episodes: series.episodes.length,
      lunches: series.lunches.length,
      items: series.lunchItems.length,
      reactions: series.reactions.length,
    },
  };
}
