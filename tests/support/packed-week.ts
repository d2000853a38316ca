import { day } from "#lib/calendar/index.ts";
import type { Context } from "#lib/use-cases/context.ts";
import { loadPiece } from "#lib/use-cases/load-copy-desk.ts";
import { testContext } from "#tests/support/test-context.ts";

/** The week of `packedWeek`. */
export const MONDAY = day("2026-03-02");
/** The key of its description. */
export const KEY = { monday: MONDAY, kind: "description", lunchId: null } as const;

/** A series with one lunch that was packed and judged. */
export async function packedWeek(): Promise<Context> {
  const context = testContext();
  const { db } = context;
  await db.series.create({ data: { id: 1, name: "Harbour Boxes", startedOn: "2026-01-05" } });
  await db.child.create({ data: { id: "c1", privateName: "Ines", onScreenName: "Biscuit" } });
  await db.episode.create({
    data: {
      ...{ id: "e1", number: 4, weekOf: MONDAY, workingTitle: "Night Train" },
      lunches: {
        create: {
          ...{ id: "l1", date: MONDAY, packedAt: context.now, minutesUsed: 20 },
          items: {
            create: [
              { id: "i1", foodId: "rye-bread", part: "grain", amount: 60, fate: "packed" },
              { id: "i2", foodId: "pear", part: "fruit", amount: 1, unit: "pear", fate: "packed" },
            ],
          },
        },
      },
    },
  });
  await db.reaction.create({
    data: {
      ...{ itemId: "i1", childId: "c1", eaten: 4, quote: "The crust was the track" },
      loggedAt: context.now,
    },
  });
  return context;
}

/** The description of that week as it stands. */
export async function description(context: Context) {
  const view = await loadPiece(context, MONDAY, "description", undefined);
  if (!view) throw new Error("a piece was expected");
  return view.piece;
}
