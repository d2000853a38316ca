import { addDays, daysOfWeek, type Day } from "#lib/calendar/index.ts";
import { ok, refuse, type Result } from "#lib/base/index.ts";
import { inTransaction, readSettings, type Db } from "#lib/db/index.ts";
import type { Context } from "./context.ts";
import { numberByCalendar } from "./number-episodes.ts";
import type { PencilWeekInput } from "./pencil-week.input.ts";
import { beforeItWas, SLATE } from "./slate-change.ts";

export type PencilProblem = { readonly kind: "week-taken" } | { readonly kind: "theme-gone" };

/**
 * Pencils an episode into an empty week, with an empty lunch on each school day that is not off.
 * Episodes are numbered by the calendar: those after it move up by one unless they are published.
 */
export function pencilWeek(context: Context, input: PencilWeekInput): Promise<Pencilled> {
  return inTransaction(context.db, (tx) => pencilIn(tx, input));
}

type Pencilled = Result<{ readonly id: string }, PencilProblem>;

/** As `pencilWeek`, inside the transaction of a larger change. */
export async function pencilIn(tx: Db, input: PencilWeekInput): Promise<Pencilled> {
  if (await tx.episode.findUnique({ where: { weekOf: input.monday } })) {
    return refuse({ kind: "week-taken" });
  }
  const theme = input.themeId ? await tx.theme.findUnique({ where: { id: input.themeId } }) : null;
  if (input.themeId && !theme) return refuse({ kind: "theme-gone" });
  const dates = await shootDays(tx, input.monday);
  const episode = await tx.episode.create({
    data: {
      number: 0,
      weekOf: input.monday,
      themeId: theme?.id ?? null,
      workingTitle: input.title,
      lunches: { create: dates.map((date) => ({ date })) },
    },
  });
  await numberByCalendar(tx);
  const title = theme?.name ?? (input.title || "a week");
  await tx.change.create({
    data: {
      scope: SLATE,
      label: `${title} pencilled in`,
      undoJson: JSON.stringify(beforeItWas(episode.id)),
    },
  });
  return ok({ id: episode.id });
}

/** Words for a refusal. */
export function describePencilProblem(problem: PencilProblem): string {
  switch (problem.kind) {
    case "week-taken":
      return "That week already has an episode. Open it on the slate.";
    case "theme-gone":
      return "That theme is no longer in the pool. Choose another.";
  }
}

/** The school days of a week that are not off. */
export async function shootDays(db: Db, monday: Day): Promise<Day[]> {
  const settings = await readSettings(db);
  const off = await db.dayOff.findMany({
    where: { to: { gte: monday }, from: { lte: addDays(monday, 6) } },
  });
  return daysOfWeek(monday).filter(
    (date, index) =>
      settings.schoolDays.includes(index + 1) &&
      !off.some((span) => span.from <= date && span.to >= date),
  );
}
