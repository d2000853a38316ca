import { z } from "zod";
import { daysAgo } from "#lib/calendar/index.ts";
import { Colour, TrickKind } from "#lib/catalog/index.ts";
import { keepUntilWritten, parseColumn, readSeen } from "#lib/db/index.ts";
import type { Context } from "../context.ts";
import { readNamedFoods } from "./named-foods.ts";
import type { TrickFields } from "./trick.input.ts";

/** A trick as its page shows it. */
export type TrickView = {
  readonly fields: TrickFields;
  readonly isRetired: boolean;
  readonly times: number;
  readonly lastText: string;
};

export type TricksView = {
  readonly tricks: readonly TrickView[];
  /** Foods that can carry a cutter shape. */
  readonly sliceable: number;
};

const Words = z.array(z.string());

/** Every trick, retired ones last, with how often and when last it was on. */
export function loadTricks({ db, today }: Context): Promise<TricksView> {
  return keepUntilWritten(db, `tricks ${today}`, async () => {
    const [rows, seen, foods] = await Promise.all([
      db.trick.findMany({ orderBy: [{ retiredAt: "asc" }, { kind: "asc" }, { name: "asc" }] }),
      readSeen(db, "trick", today),
      readNamedFoods(db),
    ]);
    const tricks = rows.map((row): TrickView => {
      const on = seen.get(row.id);
      return {
        fields: {
          ...{ id: row.id, editedAt: row.editedAt?.toISOString() ?? "", name: row.name },
          kind: TrickKind.parse(row.kind),
          motifs: parseColumn(Words, row.motifsJson, "Trick.motifs").join(", "),
          colours: parseColumn(z.array(Colour), row.coloursJson, "Trick.colours"),
          ...{ minutes: String(row.minutes), needsSliceable: row.needsSliceable },
        },
        isRetired: row.retiredAt !== null,
        times: on?.times ?? 0,
        lastText: on?.last == null ? "not yet" : daysAgo(on.last, today),
      };
    });
    return { tricks, sliceable: foods.filter((food) => food.sliceable).length };
  });
}
