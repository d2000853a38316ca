import { performance } from "node:perf_hooks";
import { day, weeksLater, type Day } from "#lib/calendar/index.ts";
import { openDatabase, readNeighbours } from "#lib/db/index.ts";
import { readCopyDeskGround } from "#lib/use-cases/copy-desk-ground.ts";
import { packOf } from "#lib/use-cases/load-copy-desk.ts";
import { publishEpisode } from "#lib/use-cases/publish-episode.ts";
import { buildLongSeries } from "#tests/support/long-series.ts";

const WEEKS = 120;
const WARM_UP = 30;
const TODAY = day("2026-03-11");

/**
 * A whole pack, every piece with its guards, against reading the same records, at ten years of data:
 * first of weeks of which nothing is kept, then of the same weeks with every piece published.
 */
export async function benchDrafts(): Promise<{ name: string; value: number; unit: string }[]> {
  const { file } = await buildLongSeries();
  const db = openDatabase(file);
  const context = { db, today: TODAY, now: new Date("2026-03-11T12:00:00Z") };
  const weeks = await db.episode.findMany({
    where: { weekOf: { lte: weeksLater(day("2026-03-09"), -1) } },
    orderBy: { weekOf: "desc" },
    select: { weekOf: true, revision: true },
    take: WEEKS,
  });
  const mondays = weeks.map(({ weekOf }) => day(weekOf));
  const works = [
    (monday: Day) => readCopyDeskGround(db, monday, TODAY),
    async (monday: Day) => {
      const [ground, near] = await Promise.all([
        readCopyDeskGround(db, monday, TODAY),
        readNeighbours(db, monday),
      ]);
      return ground && packOf(ground, near);
    },
  ] as const;
  const results = named("of fresh pieces", await timedInTurn(mondays, works));
  for (const { weekOf, revision } of weeks.toReversed()) {
    const monday = day(weekOf);
    const on = weeksLater(monday, 1) < TODAY ? weeksLater(monday, 1) : TODAY;
    const outcome = await publishEpisode(context, { monday, revision, on, url: "" });
    if (!outcome.ok) throw new Error(`The week of ${monday} was not published.`);
  }
  results.push(...named("of published ones", await timedInTurn(mondays, works)));
  await db.$disconnect();
  return results;
}

type Percentiles = { readonly p50: number; readonly p95: number };

function named(of: string, [reading, pack]: readonly [Percentiles, Percentiles]) {
  const ratio = { unit: "× the reading" };
  return [
    { name: `drafts: reading ${of}, p95`, value: reading.p95, unit: "ms" },
    { name: `drafts: a full pack ${of}, p50`, value: pack.p50 / reading.p50, ...ratio },
    { name: `drafts: a full pack ${of}, p95`, value: pack.p95 / reading.p95, ...ratio },
  ];
}

/**
 * Both works turn by turn, so that a busy neighbour slows them alike; the second walks half the weeks
 * behind the first, so that nothing is asked for twice running.
 */
async function timedInTurn(
  mondays: readonly Day[],
  works: readonly [(monday: Day) => Promise<unknown>, (monday: Day) => Promise<unknown>],
): Promise<readonly [Percentiles, Percentiles]> {
  const times: [number[], number[]] = [[], []];
  const weekAt = (turn: number): Day => mondays[turn % mondays.length] ?? TODAY;
  for (let turn = 0; turn < WARM_UP + mondays.length; turn += 1) {
    for (const which of [0, 1] as const) {
      const monday = weekAt(turn + which * Math.floor(mondays.length / 2));
      const started = performance.now();
      await works[which](monday);
      if (turn >= WARM_UP) times[which].push(performance.now() - started);
    }
  }
  return [percentiles(times[0]), percentiles(times[1])];
}

function percentiles(times: readonly number[]): Percentiles {
  const sorted = times.toSorted((left, right) => left - right);
  const at = (share: number): number => sorted[Math.floor(share * (sorted.length - 1))] ?? 0;
  return { p50: at(0.5), p95: at(0.95) };
}
