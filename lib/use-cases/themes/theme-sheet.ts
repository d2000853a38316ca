import { z } from "zod";
import { ok, refuse, type Result } from "#lib/base/index.ts";
import { isSameEvent, SeasonWindow } from "#lib/calendar/index.ts";
import { Colour } from "#lib/catalog/index.ts";
import { inTransaction, parseColumn, readDaysOff, type Db } from "#lib/db/index.ts";
import type { Context } from "../context.ts";
import type { RetireInput } from "../bible/child-sheet.input.ts";
import type { SheetProblem } from "../bible/sheet-problem.ts";
import { stampOf } from "../bible/stamp.ts";
import type { ThemeInput } from "./theme.input.ts";

type TypedTheme = z.input<typeof ThemeInput>;

const EMPTY: Omit<TypedTheme, "id" | "stamp"> = {
  ...{ name: "", motifs: "", palette: [], season: "always", months: [], month: 12, date: 1 },
  ...{ feast: "easter", before: 14, after: 0, restDays: "", note: "" },
  ...{ event: "", weeks: "week-before" },
};

/** A theme's sheet as its form opens, an empty one without an id, or undefined when there is none. */
export async function loadThemeSheet(
  { db }: { readonly db: Db },
  id: string | undefined,
): Promise<TypedTheme | undefined> {
  if (id === undefined) return { ...EMPTY, id: "", stamp: "" };
  const row = await db.theme.findUnique({ where: { id } });
  if (!row) return undefined;
  const season = parseColumn(SeasonWindow, row.seasonJson, "Theme.season");
  const typed = {
    ...EMPTY,
    ...{ id, name: row.name, note: row.note, season: season.kind },
    motifs: parseColumn(z.array(z.string()), row.motifsJson, "Theme.motifs").join("\n"),
    palette: parseColumn(z.array(Colour), row.paletteJson, "Theme.palette"),
    restDays: row.restDays === null ? "" : String(row.restDays),
    ...(season.kind === "months" ? { months: season.months.map(String) } : {}),
    ...(season.kind === "date" ? { month: season.month, date: season.date } : {}),
    ...(season.kind === "feast" ? { feast: season.feast } : {}),
    ...(season.kind === "event" ? { event: season.event, weeks: season.weeks } : {}),
    ...("before" in season ? { before: season.before, after: season.after } : {}),
  };
  return { ...typed, stamp: stampOf(typed) };
}

/** The names of the days off that a season may go by, as the calendar has them; `kept` is one of them. */
export async function listEvents(
  { db }: { readonly db: Db },
  kept: string,
): Promise<readonly string[]> {
  const labels = (await readDaysOff(db)).map(({ label }) => label.trim());
  const names = [kept, ...labels].filter((name) => name !== "");
  return names.filter((name, index) => names.findIndex((one) => isSameEvent(one, name)) === index);
}

/** Saves a theme. Refuses when another tab saved first, and a name the pool has already. */
export async function saveTheme(
  { db, now }: Context,
  input: ThemeInput,
): Promise<Result<{ readonly id: string }, SheetProblem>> {
  return inTransaction(db, async (tx) => {
    const standing = input.id === "" ? undefined : await loadThemeSheet({ db: tx }, input.id);
    if (input.id !== "" && !standing) return refuse({ kind: "gone" });
    if (standing && standing.stamp !== input.stamp) return refuse({ kind: "changed-elsewhere" });
    const names = await tx.theme.findMany({ select: { id: true, name: true } });
    const name = input.name.toLowerCase();
    if (names.some((one) => one.id !== input.id && one.name.toLowerCase() === name)) {
      return refuse({ kind: "theme-name-taken", field: "name" });
    }
    const data = {
      name: input.name,
      motifsJson: JSON.stringify(input.motifs.map((motif) => motif.toLowerCase())),
      paletteJson: JSON.stringify(input.palette),
      seasonJson: JSON.stringify(seasonOf(input)),
      note: input.note,
      restDays: input.restDays === "" ? null : Number(input.restDays),
      editedAt: now,
    };
    const row = standing
      ? await tx.theme.update({ where: { id: input.id }, data })
      : await tx.theme.create({ data });
    return ok({ id: row.id });
  });
}

/** Retires a theme from the pool, or brings it back; the weeks it was on stay. */
export async function retireTheme(
  { db, now }: Context,
  { id, isRetired }: RetireInput,
): Promise<Result<undefined, SheetProblem>> {
  const { count } = await db.theme.updateMany({
    where: { id },
    data: { retiredAt: isRetired ? now : null, editedAt: now },
  });
  return count === 0 ? refuse({ kind: "gone" }) : ok(undefined);
}

function seasonOf(theme: ThemeInput): SeasonWindow {
  const { season, months, month, date, feast, event, weeks, before, after } = theme;
  switch (season) {
    case "always":
      return { kind: "always" };
    case "months":
      return { kind: "months", months: months.map(Number) };
    case "date":
      return { kind: "date", month, date, before, after };
    case "feast":
      return { kind: "feast", feast, before, after };
    case "event":
      return { kind: "event", event, weeks };
  }
}
