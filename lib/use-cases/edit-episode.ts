import { z } from "zod";
import { ok, refuse, type Result } from "#lib/base/index.ts";
import { addDays, Day, daysBetween, mondayOf } from "#lib/calendar/index.ts";
import { inTransaction, type Db } from "#lib/db/index.ts";
import type { Context } from "./context.ts";
import { numberByCalendar } from "./number-episodes.ts";
import { shootDays } from "./pencil-week.ts";
import { keepForUndo } from "./slate-change.ts";

/** What an episode is called and keeps back, and the revision the page was opened with. */
export const EditEpisodeInput = z.object({
  episodeId: z.string().min(1).max(60),
  revision: z.number().int().min(1),
  themeId: z.string().max(120),
  title: z.string().trim().max(120, { error: "Keep the title under 120 letters." }),
  notes: z.string().trim().max(4000, { error: "Keep the notes under 4,000 letters." }),
  surprise: z.string().trim().max(300, { error: "Keep the surprise under 300 letters." }),
  revealOn: z.union([z.literal(""), Day]),
});
export type EditEpisodeInput = z.infer<typeof EditEpisodeInput>;

export const MoveEpisodeInput = z.object({
  episodeId: z.string().min(1).max(60),
  monday: Day.refine((value) => mondayOf(value) === value, {
    error: "A theme week begins on a Monday.",
  }),
});
export type MoveEpisodeInput = z.infer<typeof MoveEpisodeInput>;

export const RemoveEpisodeInput = z.object({ episodeId: z.string().min(1).max(60) });

export type EpisodeProblem =
  | { readonly kind: "gone" | "changed-elsewhere" | "theme-gone" | "has-happened" | "published" }
  | { readonly kind: "day-off"; readonly date: string };

/** Saves an episode's theme, title, notes and surprise. */
export async function editEpisode(
  { db }: Context,
  input: EditEpisodeInput,
): Promise<Result<undefined, EpisodeProblem>> {
  return inTransaction(db, async (tx) => {
    const episode = await tx.episode.findUnique({ where: { id: input.episodeId } });
    if (!episode) return refuse({ kind: "gone" });
    if (episode.revision !== input.revision) return refuse({ kind: "changed-elsewhere" });
    const isKnown =
      !input.themeId || (await tx.theme.count({ where: { id: input.themeId } })) === 1;
    if (!isKnown) return refuse({ kind: "theme-gone" });
    await keepForUndo(tx, [episode.id], `the words of episode ${episode.number}`);
    await tx.episode.update({
      where: { id: episode.id },
      data: {
        themeId: input.themeId || null,
        workingTitle: input.title,
        notes: input.notes,
        surprise: input.surprise,
        surpriseRevealOn: input.revealOn || null,
        revision: { increment: 1 },
      },
    });
    return ok(undefined);
  });
}

/**
 * Moves an episode to another week; one that stands there comes to this week in its place. Each lunch
 * keeps its weekday. Refuses when something was packed, or when a filled lunch would fall on a day off.
 */
export async function moveEpisode(
  { db }: Context,
  { episodeId, monday }: MoveEpisodeInput,
): Promise<Result<undefined, EpisodeProblem>> {
  return inTransaction(db, async (tx): Promise<Result<undefined, EpisodeProblem>> => {
    const moving = await readMovable(tx, { id: episodeId });
    if (!moving) return refuse({ kind: "gone" });
    const there = await readMovable(tx, { weekOf: monday });
    if (there?.id === moving.id) return ok(undefined);
    const pair = there ? [moving, there] : [moving];
    for (const one of pair) {
      if (one.publishedAt) return refuse({ kind: "published" });
      if (one.lunches.some((lunch) => lunch.packedAt)) return refuse({ kind: "has-happened" });
    }
    const from = moving.weekOf;
    await keepForUndo(
      tx,
      pair.map(({ id }) => id),
      `episode ${moving.number} moved`,
    );
    if (there) await setWeek(tx, there, `aside-${there.id}`);
    for (const [episode, week] of [
      [moving, monday],
      ...(there ? [[there, from] as const] : []),
    ] as const) {
      const clash = await shiftTo(tx, episode, week as Day);
      // Throwing takes the whole transaction back.
      if (clash !== undefined) throw new DayOff(clash);
    }
    await numberByCalendar(tx);
    return ok(undefined);
  }).catch((problem: unknown) => {
    if (problem instanceof DayOff) return refuse({ kind: "day-off" as const, date: problem.date });
    throw problem;
  });
}

/** Removes an episode that has not been shot; it can be taken back. */
export async function removeEpisode(
  { db }: Context,
  episodeId: string,
): Promise<Result<undefined, EpisodeProblem>> {
  return inTransaction(db, async (tx) => {
    const episode = await readMovable(tx, { id: episodeId });
    if (!episode) return refuse({ kind: "gone" });
    if (episode.publishedAt) return refuse({ kind: "published" });
    if (episode.lunches.some((lunch) => lunch.packedAt)) return refuse({ kind: "has-happened" });
    await keepForUndo(tx, [episode.id], `episode ${episode.number} removed`);
    await tx.episode.delete({ where: { id: episode.id } });
    await numberByCalendar(tx);
    return ok(undefined);
  });
}

/** Words for a refusal. */
export function describeEpisodeProblem(problem: EpisodeProblem): string {
  switch (problem.kind) {
    case "gone":
      return "This episode was removed meanwhile. Open the slate again.";
    case "changed-elsewhere":
      return "Another tab changed this episode after you opened it. Nothing was overwritten: what you typed still stands here. Reload to see the other version.";
    case "theme-gone":
      return "That theme is no longer in the pool. Choose another.";
    case "has-happened":
      return "A lunch of that week is packed, so the week stays where it happened.";
    case "published":
      return "That episode is published, so it stays where it is.";
    case "day-off":
      return `The lunch planned for that weekday would fall on ${problem.date}, which has no lunch. Empty it first, or choose another week.`;
  }
}

class DayOff extends Error {
  readonly date: string;
  constructor(date: string) {
    super(`No lunch on ${date}`);
    this.date = date;
  }
}

function readMovable(tx: Db, where: { id: string } | { weekOf: string }) {
  return tx.episode.findUnique({
    where: where as { id: string },
    include: { lunches: { include: { _count: { select: { items: true } } } } },
  });
}
type Movable = NonNullable<Awaited<ReturnType<typeof readMovable>>>;

async function setWeek(tx: Db, episode: Movable, week: string): Promise<void> {
  await tx.episode.update({ where: { id: episode.id }, data: { weekOf: week } });
  for (const lunch of episode.lunches) {
    await tx.lunch.update({ where: { id: lunch.id }, data: { date: `aside-${lunch.id}` } });
  }
}

/** Puts an episode into a week; returns the date on which a filled lunch would have no place. */
async function shiftTo(tx: Db, episode: Movable, monday: Day): Promise<string | undefined> {
  const days = new Set<string>(await shootDays(tx, monday));
  const shift = daysBetween(episode.weekOf as Day, monday);
  await setWeek(tx, episode, monday);
  for (const lunch of episode.lunches) {
    const date = addDays(lunch.date as Day, shift);
    if (days.delete(date)) await tx.lunch.update({ where: { id: lunch.id }, data: { date } });
    else if (lunch._count.items > 0) return date;
    else await tx.lunch.delete({ where: { id: lunch.id } });
  }
  await tx.lunch.createMany({ data: [...days].map((date) => ({ date, episodeId: episode.id })) });
  return undefined;
}
