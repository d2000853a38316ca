import { day, type Day } from "#lib/calendar/index.ts";
import { keepUntilWritten, type Db } from "#lib/db/index.ts";
import {
  closestWeeks,
  describeEcho,
  distinctivenessOf,
  type Distinctiveness,
  type EchoAspect,
  type ShownWeek,
} from "#lib/repeats/index.ts";
import type { Context } from "./context.ts";
import { readShownWeeks } from "./shown-weeks.ts";

const CLOSEST_SHOWN = 3;
const EVER = { from: day("1970-01-01"), to: day("2199-12-31") } as const;

/** An earlier week that a week is like. */
export type CloseWeek = {
  readonly monday: Day;
  readonly title: string;
  /** "31 % like the week of Mon 3 March 2025: hummus, cucumber." */
  readonly sentence: string;
};

/** What all weeks of a series are compared with. */
type Ground = {
  readonly weeks: readonly ShownWeek[];
  readonly tells: Distinctiveness;
  readonly nameOf: (aspect: EchoAspect, id: string) => string;
};

/** The three earlier weeks that a week is most like, and why; kept until something is written. */
export function loadClosestWeeks({ db }: Context, monday: Day): Promise<readonly CloseWeek[]> {
  return keepUntilWritten(db, `closest ${monday}`, async () => {
    const { weeks, tells, nameOf } = await readGround(db);
    const week = weeks.find((one) => one.week === monday);
    if (!week) return [];
    const closest = closestWeeks(week, weeks, CLOSEST_SHOWN, tells);
    const titles = await readTitles(
      db,
      closest.map((one) => one.week.week),
    );
    return closest.map(({ week: other, echo }) => ({
      monday: other.week,
      title: titles.get(other.week) ?? "Untitled week",
      sentence: describeEcho(other, echo, nameOf),
    }));
  });
}

function readGround(db: Db): Promise<Ground> {
  return keepUntilWritten(db, "echo ground", async () => {
    const [weeks, foods, families, tricks, themes] = await Promise.all([
      readShownWeeks(db, EVER.from, EVER.to),
      db.food.findMany({ select: { id: true, name: true } }),
      db.family.findMany({ select: { id: true, name: true } }),
      db.trick.findMany({ select: { id: true, name: true } }),
      db.theme.findMany({ select: { id: true, name: true } }),
    ]);
    const names: Readonly<Record<EchoAspect, ReadonlyMap<string, string>>> = {
      foods: mapOf(foods),
      families: mapOf(families.map(({ id, name }) => ({ id, name: `${name} family` }))),
      tricks: mapOf(tricks),
      theme: mapOf(themes.map(({ id, name }) => ({ id: `theme:${id}`, name: `theme ${name}` }))),
    };
    const nameOf: Ground["nameOf"] = (aspect, id) =>
      names[aspect].get(id) ?? id.replace(/^motif:/, "motif ").replaceAll("-", " ");
    return { weeks, tells: distinctivenessOf(weeks), nameOf };
  });
}

async function readTitles(db: Db, mondays: readonly Day[]): Promise<ReadonlyMap<string, string>> {
  const rows = await db.episode.findMany({
    where: { weekOf: { in: [...mondays] } },
    select: { weekOf: true, workingTitle: true, theme: { select: { name: true } } },
  });
  return new Map(
    rows.map(({ weekOf, theme, workingTitle }) => [
      weekOf,
      theme?.name ?? (workingTitle || "Untitled week"),
    ]),
  );
}

function mapOf(
  rows: readonly { readonly id: string; readonly name: string }[],
): ReadonlyMap<string, string> {
  return new Map(rows.map(({ id, name }) => [id, name]));
}
