import { performance } from "node:perf_hooks";
import { day, weeksLater } from "#lib/calendar/index.ts";
import { openDatabase } from "#lib/db/index.ts";
import { readCopyDeskGround } from "#lib/use-cases/copy-desk-ground.ts";
import { loadPack } from "#lib/use-cases/load-copy-desk.ts";
import { buildLongSeries } from "#tests/support/long-series.ts";

const ROUNDS = 120;
const WARM_UP = 30;
const TODAY = day("2026-03-11");

/**
 * A whole pack, every piece with its guards, against reading the same records, at ten years of data.
 * Both walk back week by week, so that nothing is asked for twice running.
 */
export async function benchDrafts(): Promise<{ name: string; value: number; unit: string }[]> {
  const { file } = await buildLongSeries();
  const db = openDatabase(file);
  const context = { db, today: TODAY, now: new Date("2026-03-11T12:00:00Z") };
  const weeks = await db.episode.findMany({
    where: { weekOf: { lte: weeksLater(day("2026-03-09"), -1) } },
    orderBy: { weekOf: "desc" },
    select: { weekOf: true },
    take: ROUNDS,
  });
  const mondays = weeks.map(({ weekOf }) => day(weekOf));
  const reading = await timed(mondays, (monday) => readCopyDeskGround(db, monday, TODAY));
  const pack = await timed(mondays, (monday) => loadPack(context, monday));
  await db.$disconnect();
  return [
    { name: "drafts: reading an episode’s records, p95", value: reading.p95, unit: "ms" },
    { name: "drafts: a full pack, p50", value: pack.p50 / reading.p50, unit: "× the reading" },
    { name: "drafts: a full pack, p95", value: pack.p95 / reading.p95, unit: "× the reading" },
  ];
}

async function timed<Item>(
  items: readonly Item[],
  work: (item: Item) => Promise<unknown>,
): Promise<{ p50: number; p95: number }> {
  for (const item of items.slice(0, WARM_UP)) await work(item);
  const times: number[] = [];
  for (const item of items) {
    const started = performance.now();
    await work(item);
    times.push(performance.now() - started);
  }
  times.sort((left, right) => left - right);
  const at = (share: number): number => times[Math.floor(share * (times.length - 1))] ?? 0;
  return { p50: at(0.5), p95: at(0.95) };
}
