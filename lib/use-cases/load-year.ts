import {
  addDays,
  day,
  mondayOf,
  overlapsSeason,
  SeasonWindow,
  weeksLater,
  type Day,
} from "#lib/calendar/index.ts";
import { keepUntilWritten, parseColumn, readSettings, type Db } from "#lib/db/index.ts";
import { momentsOf, spreadThemes } from "#lib/planner/index.ts";
import type { Context } from "./context.ts";
import { bonusNearItsDay } from "./theme-moments.ts";

const WEEKS = 52;
/** The same ISO weekday a year earlier is 52 weeks back. */
const YEAR_WEEKS = 52;
/** So many years back the page looks at the same weeks. */
const YEARS_BACK = 3;

export type YearWeek = {
  readonly monday: Day;
  /** What is on the slate, or undefined. */
  readonly planned: { readonly number: number; readonly title: string } | undefined;
  /** A theme of the pool that would suit an empty week; null: none is at rest and in season. */
  readonly toCome: { readonly id: string; readonly name: string; readonly why: string } | null;
  readonly moments: readonly string[];
  readonly offLabels: readonly string[];
  /** Every school day of it is off. */
  readonly isOff: boolean;
  /** What was on in the same weeks of earlier years, the latest first. */
  readonly before: readonly { readonly monday: Day; readonly title: string }[];
};

/**
 * The next twelve months week by week: what is planned, what could come, and what was on before. Shared
 * until something is written.
 */
export function loadYear({ db, today }: Context): Promise<readonly YearWeek[]> {
  return keepUntilWritten(db, `year ${today}`, () => readYear(db, today));
}

async function readYear(db: Db, today: Day): Promise<readonly YearWeek[]> {
  const mondays = Array.from({ length: WEEKS }, (_, week) => weeksLater(mondayOf(today), week));
  const [first, last] = [mondays[0] ?? today, addDays(mondays.at(-1) ?? today, 6)];
  const [settings, episodes, rows, off, lunchesBefore, firstLunch] = await Promise.all([
    readSettings(db),
    db.episode.findMany({
      orderBy: { weekOf: "asc" },
      select: {
        ...{ number: true, weekOf: true, workingTitle: true, themeId: true },
        theme: { select: { name: true } },
      },
    }),
    db.theme.findMany({ where: { retiredAt: null }, orderBy: { id: "asc" } }),
    db.dayOff.findMany({ where: { to: { gte: first }, from: { lte: last } } }),
    db.lunch.count({ where: { date: { lt: first } } }),
    db.lunch.findFirst({ orderBy: { date: "asc" }, select: { date: true } }),
  ]);
  const onWeek = new Map(episodes.map((episode) => [episode.weekOf, episode]));
  const titleOf = (monday: Day): string | undefined => {
    const episode = onWeek.get(monday);
    return episode && (episode.theme?.name ?? (episode.workingTitle || "Untitled week"));
  };
  const shootDays = mondays.map((monday) =>
    settings.schoolDays
      .map((weekday) => addDays(monday, weekday - 1))
      .filter((date) => !off.some((span) => span.from <= date && span.to >= date)),
  );
  const moments = momentsOf(
    mondays,
    shootDays.flat(),
    lunchesBefore,
    firstLunch ? day(firstLunch.date) : undefined,
  );
  const spread = spreadThemes(
    mondays.filter((monday, week) => !onWeek.has(monday) && (shootDays[week]?.length ?? 0) > 0),
    rows.map((row) => {
      const season = parseColumn(SeasonWindow, row.seasonJson, "Theme.season");
      return {
        ...{ id: row.id, name: row.name, restDays: row.restDays ?? settings.themeRestDays },
        shownOn: episodes
          .filter(({ themeId }) => themeId === row.id)
          .map(({ weekOf }) => day(weekOf)),
        isSeasonal: season.kind !== "always",
        near: new Set(bonusNearItsDay(season, mondays).map(({ monday }) => monday)),
        possible: new Set(
          mondays.filter((monday) => overlapsSeason(season, monday, addDays(monday, 4))),
        ),
      };
    }),
  );
  return mondays.map((monday, week) => ({
    monday,
    isOff: shootDays[week]?.length === 0,
    planned: plannedOf(onWeek.get(monday)?.number, titleOf(monday)),
    toCome: spread.get(monday) ?? null,
    moments: moments.filter((moment) => moment.monday === monday).map(({ words }) => words),
    offLabels: off
      .filter(({ from, to }) => from <= addDays(monday, 4) && to >= monday)
      .map(({ label }) => label),
    before: Array.from({ length: YEARS_BACK }, (_, years) =>
      weeksLater(monday, -YEAR_WEEKS * (years + 1)),
    ).flatMap((past) => {
      const title = titleOf(past);
      return title === undefined ? [] : [{ monday: past, title }];
    }),
  }));
}

function plannedOf(number: number | undefined, title: string | undefined): YearWeek["planned"] {
  return number === undefined || title === undefined ? undefined : { number, title };
}
