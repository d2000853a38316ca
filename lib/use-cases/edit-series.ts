import { ok, refuse, type Result } from "#lib/base/index.ts";
import { inTransaction, readSettings, writeSettings } from "#lib/db/index.ts";
import type { Context } from "./context.ts";
import type { EditSeriesInput } from "./edit-series.input.ts";

/** The first sheet of the series bible as it stands, or undefined before there is a series. */
export async function loadBible({ db }: Context): Promise<EditSeriesInput | undefined> {
  const series = await db.series.findUnique({ where: { id: 1 } });
  if (!series) return undefined;
  const { departure, wordsPerMinute, signOn, signOff } = await readSettings(db);
  return { name: series.name, departure, wordsPerMinute, signOn, signOff };
}

/** Saves the first sheet, all or nothing. Refuses when there is no series. */
export async function editSeries(
  { db }: Context,
  { name, ...settings }: EditSeriesInput,
): Promise<Result<undefined, { readonly kind: "no-series" }>> {
  return inTransaction(db, async (tx) => {
    const { count } = await tx.series.updateMany({ where: { id: 1 }, data: { name } });
    if (count === 0) return refuse({ kind: "no-series" });
    await writeSettings(tx, settings);
    return ok(undefined);
  });
}
