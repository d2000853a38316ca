import { z } from "zod";
import { groupBy } from "#lib/base/index.ts";
import {
  addDays,
  day,
  daysOfWeek,
  mondayOf,
  monthsLater,
  overlapsSeason,
  SeasonWindow,
  weeksLater,
  type Day,
} from "#lib/calendar/index.ts";
import { Colour } from "#lib/catalog/index.ts";
import { keepUntilWritten, parseColumn, readDaysOff, readSettings } from "#lib/db/index.ts";
import { nearThemes } from "#lib/repeats/index.ts";
import type { Context } from "../context.ts";

/** How far ahead the next possible week is looked for. */
const AHEAD_WEEKS = 156;

export type ThemeView = {
  readonly id: string;
  readonly name: string;
  readonly motifs: readonly string[];
  readonly palette: readonly Colour[];
  readonly season: SeasonWindow;
  readonly isInSeasonNextMonth: boolean;
  readonly note: string;
  readonly isRetired: boolean;
  /** Weeks up to this one it has been on. */
  readonly times: number;
  readonly lastOn: Day | null;
  /** The next week it is planned for. */
  readonly plannedOn: Day | null;
  /** The first Monday from this week on with school when it is at rest no more and in season; null: none is near. */
  readonly possibleOn: Day | null;
  readonly near: readonly { readonly id: string; readonly name: string; readonly shared: string }[];
};

export type IdeaView = {
  readonly id: string;
  readonly text: string;
  readonly receivedOn: Day;
  readonly state: string;
  /** The theme or food it became. */
  readonly becameId: string | null;
};

type Pool = { readonly themes: readonly ThemeView[]; readonly ideas: readonly IdeaView[] };

/**
 * The pool of themes by name, and the ideas of viewers, the newest first. Shared until something is
 * written: the next possible week of every theme takes looking for.
 */
export function loadThemes(context: Context): Promise<Pool> {
  return keepUntilWritten(context.db, `themes ${context.today}`, () => readPool(context));
}

async function readPool({ db, today }: Context): Promise<Pool> {
  const [rows, episodes, settings, ideas, daysOff] = await Promise.all([
    db.theme.findMany({ orderBy: [{ name: "asc" }, { id: "asc" }] }),
    db.episode.findMany({
      where: { themeId: { not: null } },
      orderBy: { weekOf: "asc" },
      select: { themeId: true, weekOf: true },
    }),
    readSettings(db),
    db.viewerIdea.findMany({ orderBy: [{ receivedOn: "desc" }, { id: "desc" }] }),
    readDaysOff(db),
  ]);
  const weeksOf = groupBy(episodes, ({ themeId }) => themeId);
  const named = rows.map((row) => ({
    row,
    id: row.id,
    name: row.name,
    motifs: parseColumn(z.array(z.string()), row.motifsJson, "Theme.motifs"),
  }));
  const inUse = named.filter(({ row }) => row.retiredAt === null);
  const thisWeek = mondayOf(today);
  const nextMonth = [monthsLater(today, 1), addDays(monthsLater(today, 2), -1)] as const;
  const hasSchool = (monday: Day): boolean =>
    daysOfWeek(monday).some(
      (date, index) =>
        settings.schoolDays.includes(index + 1) &&
        !daysOff.some((off) => off.from <= date && off.to >= date),
    );
  const themes = named.map((theme) => {
    const { row } = theme;
    const season = parseColumn(SeasonWindow, row.seasonJson, "Theme.season");
    const weeks = (weeksOf.get(row.id) ?? []).map(({ weekOf }) => day(weekOf));
    const past = weeks.filter((week) => week <= thisWeek);
    const restDays = row.restDays ?? settings.themeRestDays;
    return {
      ...{ id: row.id, name: row.name, motifs: theme.motifs, season, note: row.note },
      palette: parseColumn(z.array(Colour), row.paletteJson, "Theme.palette"),
      isInSeasonNextMonth: overlapsSeason(season, ...nextMonth, daysOff),
      isRetired: row.retiredAt !== null,
      times: past.length,
      lastOn: past.at(-1) ?? null,
      plannedOn: weeks.find((week) => week > thisWeek) ?? null,
      possibleOn: nextWeek(
        thisWeek,
        weeks.at(-1),
        restDays,
        (monday) =>
          hasSchool(monday) && overlapsSeason(season, monday, addDays(monday, 4), daysOff),
      ),
      near: nearThemes(theme, inUse).map((near) => ({
        id: near.theme.id,
        name: near.theme.name,
        shared: [...near.sharedMotifs, ...near.sharedWords].join(", "),
      })),
    };
  });
  return {
    themes,
    ideas: ideas.map(({ id, text, receivedOn, state, becameId }) => ({
      ...{ id, text, state, becameId, receivedOn: day(receivedOn) },
    })),
  };
}

function nextWeek(
  thisWeek: Day,
  lastOn: Day | undefined,
  restDays: number,
  isOpen: (monday: Day) => boolean,
): Day | null {
  const rested = lastOn === undefined ? thisWeek : addDays(lastOn, restDays);
  // A week counts from its Monday: one that begins before the rest is over is too early.
  const from = rested <= thisWeek ? thisWeek : mondayOf(addDays(rested, 6));
  for (let ahead = 0; ahead < AHEAD_WEEKS; ahead += 1) {
    const monday = weeksLater(from, ahead);
    if (isOpen(monday)) return monday;
  }
  return null;
}
