import type { Day } from "#lib/calendar/index.ts";
import { groupBy } from "#lib/base/index.ts";
import { keepUntilWritten, readShown, type Db, type Settings } from "#lib/db/index.ts";
import type { RestRules, ShownWeek } from "#lib/repeats/index.ts";
import { restKey } from "#lib/repeats/index.ts";

/** The weeks from one day to another as the repeat rules see them; shared until something is written. */
export function readShownWeeks(db: Db, from: Day, to: Day): Promise<readonly ShownWeek[]> {
  return keepUntilWritten(db, `shown ${from} ${to}`, async () => {
    const rows = await readShown(db, from, to);
    return [...groupBy(rows, (row) => row.weekOf)].map(([week, items]) => ({
      week,
      themeId: items[0]?.themeId ?? null,
      motifs: JSON.parse(items[0]?.motifs ?? "[]") as string[],
      items: items.map((row) => ({
        on: row.date,
        foodId: row.foodId,
        familyId: row.familyId,
        productId: row.productId,
        trickIds: row.trickIds,
        isStaple: row.isStaple,
      })),
    }));
  });
}

/** The series' rest windows: the settings by level, and each food's or family's own. */
export async function readRestRules(db: Db, settings: Settings): Promise<RestRules> {
  const [foods, families, themes] = await Promise.all([
    db.food.findMany({ where: { restDays: { not: null } }, select: { id: true, restDays: true } }),
    db.family.findMany({
      where: { restDays: { not: null } },
      select: { id: true, restDays: true },
    }),
    db.theme.findMany({ where: { restDays: { not: null } }, select: { id: true, restDays: true } }),
  ]);
  const own = new Map<string, number>();
  for (const row of foods) own.set(restKey("food", row.id), row.restDays ?? 0);
  for (const row of families) own.set(restKey("family", row.id), row.restDays ?? 0);
  for (const row of themes) own.set(restKey("theme", row.id), row.restDays ?? 0);
  return {
    days: {
      product: settings.productRestDays,
      food: settings.foodRestDays,
      family: settings.familyRestDays,
      trick: settings.trickRestDays,
      theme: settings.themeRestDays,
      // A motif is a hint, not a rule of its own: themes near each other are told by the echo.
      motif: 0,
    },
    own,
  };
}
