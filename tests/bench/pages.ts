import { randomUUID } from "node:crypto";
import { performance } from "node:perf_hooks";
import Database from "libsql";
import { day } from "#lib/calendar/index.ts";
import { openDatabase } from "#lib/db/index.ts";
import { logReaction } from "#lib/use-cases/log-reaction.ts";
import { buildLongSeries } from "#tests/support/long-series.ts";
import { startServer } from "#tests/support/server.ts";

const ROUNDS = 40;
const WARM_UP = 8;
/** Turns of one entry against bare SQL: enough for a steady 95th percentile. */
const TURNS = 300;

/** The pages of a ten-year series, each beside the SQL that no page of its kind can do without. */
const PAGES: readonly { readonly address: string; readonly sql: string }[] = [
  { address: "/slate/2026-03", sql: weeksSql("2026-02-23", "2026-04-05") },
  { address: "/slate/2021-09", sql: weeksSql("2021-08-30", "2021-10-03") },
  { address: "/slate/week/2026-03-02", sql: weeksSql("2026-03-02", "2026-03-08") },
  { address: "/callsheet/2026-03-04", sql: weeksSql("2026-03-04", "2026-03-04") },
  { address: "/errands/2026-03-09", sql: weeksSql("2026-03-09", "2026-03-15") },
  { address: "/errands/stock", sql: `SELECT * FROM "Stock"` },
  { address: "/mise/2026-03-04", sql: weeksSql("2026-03-04", "2026-03-04") },
  { address: "/verdicts/2026-03-04", sql: weeksSql("2026-03-04", "2026-03-04") },
  { address: "/ledger", sql: verdictsSql("2025-03-11") },
  { address: "/ledger?span=all", sql: verdictsSql("2000-01-01") },
  { address: "/ledger/child/biscuit", sql: verdictsSql("2000-01-01") },
  { address: "/ledger/food/carrot-sticks", sql: verdictsSql("2000-01-01") },
  { address: "/copydesk/2026-03-02", sql: weeksSql("2026-03-02", "2026-03-08") },
  { address: "/copydesk/2026-03-02/description", sql: weeksSql("2026-03-02", "2026-03-08") },
  { address: "/copydesk/board", sql: weeksSql("2026-03-02", "2026-03-08") },
  { address: "/slate/themes", sql: `SELECT * FROM "Theme"` },
  {
    address: "/larder/carrot-sticks",
    sql: `SELECT * FROM "LunchItem" WHERE "foodId" = 'carrot-sticks'`,
  },
  { address: "/bible", sql: `SELECT * FROM "Setting"` },
  { address: "/larder?show=all", sql: `SELECT * FROM "Food"` },
];

/** An address that leads to nothing: the frame, the masthead and no page of its own. */
const EMPTY = "/nothing-is-kept-here";

/** Server time of every page at ten years of data, as a ratio to the empty page and to the bare SQL. */
export async function benchPages(): Promise<{ name: string; value: number; unit: string }[]> {
  const { folder, file, counts } = await buildLongSeries();
  const results = Object.entries(counts).map(([what, value]) => ({
    name: `long series: ${what}`,
    value,
    unit: "rows",
  }));
  const server = await startServer("2026-03-11", folder);
  const bare = new Database(file);
  try {
    for (const { address, sql } of PAGES) {
      const [empty, page] = await timedInTurn(
        [() => read(server.url + EMPTY), () => read(server.url + address, 200)],
        ROUNDS,
      );
      if (!empty || !page) throw new Error("Two pages were timed.");
      const alone = await timed(() => Promise.resolve(bare.prepare(sql).all()));
      results.push(
        { name: `pages: ${address}, p50`, value: page.p50 / empty.p50, unit: "× the empty page" },
        { name: `pages: ${address}, p95`, value: page.p95 / empty.p95, unit: "× the empty page" },
        { name: `pages: ${address}, p50`, value: page.p50 / alone.p50, unit: "× the bare SQL" },
      );
    }
    results.push(...(await benchLogging(file)));
  } finally {
    bare.close();
    server.stop();
  }
  return results;
}

/** Logging one reaction against one bare commit of a row, on the same file. */
async function benchLogging(
  file: string,
): Promise<{ name: string; value: number; unit: string }[]> {
  const db = openDatabase(file);
  const context = { db, today: day("2026-03-11"), now: new Date("2026-03-11T12:00:00Z") };
  const items = await db.lunchItem.findMany({ take: ROUNDS + WARM_UP, select: { id: true } });
  const child = await db.child.findFirstOrThrow();
  let turn = 0;
  const bare = new Database(file);
  bare.exec("PRAGMA synchronous=FULL; PRAGMA foreign_keys=ON; PRAGMA busy_timeout=5000");
  const insert = bare.prepare(`INSERT INTO "Attempt" ("id") VALUES (?)`);
  const event = bare.prepare(
    `INSERT INTO "ReactionEvent" ("id", "itemId", "childId", "changeJson", "baseRevision", "madeAt") VALUES (?, ?, ?, '{"eaten":2}', 0, ?)`,
  );
  const verdict = bare.prepare(
    `UPDATE "Reaction" SET "eaten" = ?, "revision" = "revision" + 1 WHERE "itemId" = ? AND "childId" = ?`,
  );
  const madeAt = context.now.toISOString();
  const itemAt = (index: number): string => items[index % items.length]?.id ?? "";
  const log = (): Promise<unknown> =>
    logReaction(context, {
      ...{ id: randomUUID(), itemId: itemAt(turn), childId: child.id, device: "bench" },
      ...{ baseRevision: 99, madeAt, change: { eaten: turn++ % 5 } },
    });
  const commit = (): Promise<unknown> => Promise.resolve(insert.run(randomUUID()));
  const rows = (): Promise<unknown> => {
    bare.exec("BEGIN IMMEDIATE");
    event.run(randomUUID(), itemAt(turn), child.id, madeAt);
    verdict.run(turn % 5, itemAt(turn), child.id);
    return Promise.resolve(bare.exec("COMMIT"));
  };
  const [logged, one, same] = await timedInTurn([log, commit, rows], TURNS);
  bare.close();
  await db.$disconnect();
  if (!logged || !one || !same) throw new Error("Three works were timed.");
  return [
    { name: "verdicts: one entry, p50", value: logged.p50 / one.p50, unit: "× the bare commit" },
    { name: "verdicts: one entry, p95", value: logged.p95 / one.p95, unit: "× the bare commit" },
    {
      name: "verdicts: one entry, p50",
      value: logged.p50 / same.p50,
      unit: "× its rows in bare SQL",
    },
    {
      name: "verdicts: one entry, p95",
      value: logged.p95 / same.p95,
      unit: "× its rows in bare SQL",
    },
  ];
}

type Percentiles = { readonly p50: number; readonly p95: number };

/** Turn by turn, so that a busy disk or neighbour slows all of them alike. */
async function timedInTurn(
  works: readonly (() => Promise<unknown>)[],
  rounds: number,
): Promise<Percentiles[]> {
  const times = works.map((): number[] => []);
  for (let round = -WARM_UP; round < rounds; round += 1)
    for (const [index, work] of works.entries()) {
      const started = performance.now();
      await work();
      if (round >= 0) times[index]?.push(performance.now() - started);
    }
  return times.map(percentiles);
}

async function timed(work: () => Promise<unknown>): Promise<Percentiles> {
  for (let round = 0; round < WARM_UP; round += 1) await work();
  const times: number[] = [];
  for (let round = 0; round < ROUNDS; round += 1) {
    const started = performance.now();
    await work();
    times.push(performance.now() - started);
  }
  return percentiles(times);
}

function percentiles(times: readonly number[]): Percentiles {
  const sorted = times.toSorted((left, right) => left - right);
  const at = (share: number): number => sorted[Math.floor(share * (sorted.length - 1))] ?? 0;
  return { p50: at(0.5), p95: at(0.95) };
}

async function read(url: string, status?: number): Promise<void> {
  // A connection kept open too long is closed by the server while we work on something else.
  const response = await fetch(url).catch(() => fetch(url));
  await response.text();
  if (status !== undefined && response.status !== status) {
    throw new Error(`${url} answered ${response.status}`);
  }
}

function weeksSql(from: string, to: string): string {
  return `SELECT e.*, l.*, i.*, f.* FROM "Episode" e JOIN "Lunch" l ON l."episodeId" = e."id"
    JOIN "LunchItem" i ON i."lunchId" = l."id" JOIN "Food" f ON f."id" = i."foodId"
    WHERE l."date" BETWEEN '${from}' AND '${to}'`;
}

function verdictsSql(from: string): string {
  return `SELECT r.*, i.*, l."date" FROM "Reaction" r JOIN "LunchItem" i ON i."id" = r."itemId"
    JOIN "Lunch" l ON l."id" = i."lunchId" WHERE l."date" >= '${from}'`;
}
