import { day, type Day } from "#lib/calendar/index.ts";
import type { Db } from "./client.ts";
import { keepUntilWritten } from "./kept.ts";

/** So many lunches are offered at most. */
const OFFERED_MOST = 30;

type Asked = {
  readonly foodId: string | undefined;
  readonly themeId: string | undefined;
  readonly from: Day | undefined;
  readonly to: Day;
};

/** Packed lunches that fit what is asked, latest first, and every food and theme that could be asked for. */
export async function readBoardLunches(db: Db, { foodId, themeId, from, to }: Asked) {
  const told = { fate: { in: ["packed", "stepped-in"] } };
  const [rows, choices] = await Promise.all([
    db.lunch.findMany({
      where: {
        packedAt: { not: null },
        date: { lte: to, ...(from === undefined ? {} : { gte: from }) },
        ...(themeId === undefined ? {} : { episode: { themeId } }),
        items: { some: { ...told, ...(foodId === undefined ? {} : { foodId }) } },
      },
      orderBy: { date: "desc" },
      take: OFFERED_MOST,
      select: {
        ...{ id: true, date: true },
        episode: { select: { workingTitle: true, theme: { select: { name: true } } } },
        items: {
          where: told,
          orderBy: { position: "asc" },
          select: { food: { select: { name: true } } },
        },
      },
    }),
    readChoices(db),
  ]);
  return {
    ...choices,
    lunches: rows.map(({ id, date, episode, items }) => ({
      ...{ id, date: day(date), title: episode.theme?.name ?? episode.workingTitle },
      foods: items.map(({ food }) => food.name),
    })),
  };
}

/** Foods that were ever packed and themes that were ever on, by name. */
function readChoices(db: Db) {
  return keepUntilWritten(db, "board choices", async () => {
    const [foods, themes] = await Promise.all([
      db.food.findMany({
        where: { items: { some: { fate: { in: ["packed", "stepped-in"] } } } },
        orderBy: { name: "asc" },
        select: { id: true, name: true },
      }),
      db.theme.findMany({
        where: { episodes: { some: {} } },
        orderBy: { name: "asc" },
        select: { id: true, name: true },
      }),
    ]);
    return { foods, themes };
  });
}
