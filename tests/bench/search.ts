import { performance } from "node:perf_hooks";
import Database from "libsql";
import { day } from "#lib/calendar/index.ts";
import { openDatabase } from "#lib/db/index.ts";
import { findAnything } from "#lib/use-cases/larder/find-anything.ts";
import { findLarder } from "#lib/use-cases/larder/find-larder.ts";
import { FindLarderInput } from "#lib/use-cases/larder/find-larder.input.ts";
import { buildLongSeries } from "#tests/support/long-series.ts";

const TYPED = ["cucumber slices", "star cutter", "first frost", "wholemeal bread"];
const ROUNDS = 8;

/** The least that must be asked of the file to answer one keystroke: names, counts and last days. */
const BARE = `SELECT f."id", f."name", count(*), max(l."date") FROM "Food" f
  JOIN "LunchItem" i ON i."foodId" = f."id" JOIN "Lunch" l ON l."id" = i."lunchId"
  WHERE f."name" LIKE ? GROUP BY f."id" LIMIT 8`;

/** Search by keystroke at ten years of data, as a ratio to the bare SQL for the same keystrokes. */
export async function benchSearch(): Promise<{ name: string; value: number; unit: string }[]> {
  const { file } = await buildLongSeries();
  const db = openDatabase(file);
  const context = { db, today: day("2026-03-11"), now: new Date("2026-03-11T12:00:00Z") };
  const bare = new Database(file);
  const keys = TYPED.flatMap((text) => [...text].map((_, index) => text.slice(0, index + 1)));
  const alone = await timed(keys, (typed) => Promise.resolve(bare.prepare(BARE).all(`%${typed}%`)));
  const found = await timed(keys, (typed) => findAnything(context, typed));
  const table = await timed(keys, (typed) =>
    findLarder(context, FindLarderInput.parse({ q: typed })),
  );
  // What is kept between keystrokes is read anew after any write.
  const anew = await timed(keys.slice(0, 4), async (typed) => {
    await db.setting.upsert({
      where: { key: "bench" },
      create: { key: "bench", valueJson: "0" },
      update: { valueJson: JSON.stringify(typed) },
    });
    return findAnything(context, typed);
  });
  bare.close();
  await db.$disconnect();
  return [
    { name: "search: the bare SQL of a keystroke, p50", value: alone.p50, unit: "ms" },
    { name: "search: has it ever been on, p50", value: found.p50 / alone.p50, unit: "× bare SQL" },
    { name: "search: has it ever been on, p95", value: found.p95 / alone.p95, unit: "× bare SQL" },
    { name: "search: the Larder's table, p50", value: table.p50 / alone.p50, unit: "× bare SQL" },
    { name: "search: the Larder's table, p95", value: table.p95 / alone.p95, unit: "× bare SQL" },
    { name: "search: the first after a write", value: anew.p50 / alone.p50, unit: "× bare SQL" },
  ];
}

async function timed(
  keys: readonly string[],
  work: (typed: string) => Promise<unknown>,
): Promise<{ p50: number; p95: number }> {
  for (const key of keys) await work(key);
  const times: number[] = [];
  for (let round = 0; round < ROUNDS; round += 1) {
    for (const key of keys) {
      const started = performance.now();
      await work(key);
      times.push(performance.now() - started);
    }
  }
  times.sort((left, right) => left - right);
  const at = (share: number): number => times[Math.floor(share * (times.length - 1))] ?? 0;
  return { p50: at(0.5), p95: at(0.95) };
}
