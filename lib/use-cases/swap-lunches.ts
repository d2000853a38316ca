import { z } from "zod";
import { ok, refuse, type Result } from "#lib/base/index.ts";
import { addDays, Day, daySpan, mediumDay, shortDay } from "#lib/calendar/index.ts";
import { inTransaction } from "#lib/db/index.ts";
import type { Context } from "./context.ts";
import { keepForUndo } from "./slate-change.ts";

export const SwapLunchesInput = z.object({ from: Day, to: Day });
export type SwapLunchesInput = z.infer<typeof SwapLunchesInput>;

export type SwapLunchesProblem =
  | { readonly kind: "no-lunch"; readonly date: Day }
  | { readonly kind: "packed" | "published"; readonly date: Day };

/**
 * Two lunches change places, each with its items, its angle and its notes; they may stand in different
 * weeks. Refuses where a day has no lunch, and once a lid was shut or an episode published.
 */
export async function swapLunches(
  { db }: Context,
  { from, to }: SwapLunchesInput,
): Promise<Result<undefined, SwapLunchesProblem>> {
  return inTransaction(db, async (tx): Promise<Result<undefined, SwapLunchesProblem>> => {
    const read = (date: Day) =>
      tx.lunch.findUnique({
        where: { date },
        include: { episode: { select: { publishedAt: true } } },
      });
    const [one, other] = [await read(from), await read(to)];
    if (!one) return refuse({ kind: "no-lunch", date: from });
    if (!other) return refuse({ kind: "no-lunch", date: to });
    if (one.id === other.id) return ok(undefined);
    for (const [lunch, date] of [
      [one, from],
      [other, to],
    ] as const) {
      if (lunch.packedAt) return refuse({ kind: "packed", date });
      if (lunch.episode.publishedAt) return refuse({ kind: "published", date });
    }
    const label = `${shortDay(from)} and ${shortDay(to)} changed places`;
    await keepForUndo(tx, [...new Set([one.episodeId, other.episodeId])], label);
    // Dates are unique: one steps aside first.
    await tx.lunch.update({ where: { id: one.id }, data: { date: `aside-${one.id}` } });
    for (const [lunch, place] of [
      [other, one],
      [one, other],
    ] as const) {
      const { date, episodeId } = place;
      const revision = { increment: 1 };
      await tx.lunch.update({ where: { id: lunch.id }, data: { date, episodeId, revision } });
    }
    return ok(undefined);
  });
}

/** Words for a refusal. */
export function describeSwapLunchesProblem({ kind, date }: SwapLunchesProblem): string {
  switch (kind) {
    case "no-lunch":
      return `No lunch is pencilled on ${mediumDay(date)}. Choose another day.`;
    case "packed":
      return `The lunch of ${mediumDay(date)} is packed, so it stays where it happened.`;
    case "published":
      return `The episode of ${mediumDay(date)} is published, so its lunches stay where they are.`;
  }
}

/** A lunch that can still change its day. */
export type OpenLunch = {
  readonly date: Day;
  /** "Wed 11: Dining car", with the first foods where it has no name. */
  readonly words: string;
};

/** Lunches not yet packed from two weeks before a Monday to five weeks after it, by week. */
export async function listOpenLunches(
  { db }: Context,
  monday: Day,
): Promise<readonly { readonly week: string; readonly lunches: readonly OpenLunch[] }[]> {
  const rows = await db.episode.findMany({
    where: {
      weekOf: { gte: addDays(monday, -14), lte: addDays(monday, 35) },
      publishedAt: null,
    },
    orderBy: { weekOf: "asc" },
    select: {
      weekOf: true,
      lunches: {
        where: { packedAt: null },
        orderBy: { date: "asc" },
        select: {
          date: true,
          angle: true,
          items: {
            select: { food: { select: { name: true } } },
            orderBy: { position: "asc" },
            take: 2,
          },
        },
      },
    },
  });
  return rows
    .filter(({ lunches }) => lunches.length > 0)
    .map(({ weekOf, lunches }) => {
      const first = Day.parse(weekOf);
      return {
        week: daySpan(first, addDays(first, 4)),
        lunches: lunches.map(({ date, angle, items }) => {
          const on = Day.parse(date);
          const foods = items.map(({ food }) => food.name).join(", ");
          return { date: on, words: `${shortDay(on)}: ${angle || foods || "still empty"}` };
        }),
      };
    });
}
