import type { z } from "zod";
import { ok, refuse, type Result } from "#lib/base/index.ts";
import { inTransaction, readSettings, writeSettings, type Db } from "#lib/db/index.ts";
import { USUAL_CARRYING, type Carrying } from "#lib/safety/index.ts";
import type { Context } from "../context.ts";
import type { ChecksInput } from "./checks-sheet.input.ts";
import type { SheetProblem } from "./sheet-problem.ts";
import { stampOf } from "./stamp.ts";

type ChecksSheet = z.input<typeof ChecksInput>;

/** The checks sheet as its form holds it; what nobody said yet is filled with the usual. */
export async function loadChecksSheet({ db }: { readonly db: Db }): Promise<ChecksSheet> {
  const { carrying, climateC, balanceScheme } = await readSettings(db);
  const how = carrying ?? USUAL_CARRYING;
  return {
    stamp: stampOf({ carrying, climateC, balanceScheme }),
    ...{ bag: how.bag, packs: how.packs, packGrams: how.packGrams },
    ...{ freezesDrink: how.freezesDrink, isPrechilled: how.isPrechilled },
    ...{ fridgeC: String(how.fridgeC), bagReading: readingTyped(how.bagReading) },
    ...{ jarMl: how.jarMl, isJarPreheated: how.isJarPreheated, fillC: String(how.fillC) },
    ...{ jarReading: readingTyped(how.jarReading), waits: how.waits },
    ...{ indoorC: String(how.indoorC), lidMinutes: how.lidMinutes },
    climate: Array.from({ length: 12 }, (_, month) => String(climateC?.[month] ?? "")),
    balanceScheme,
  };
}

/** Saves the sheet, all or nothing. Refuses when another tab saved it first. */
export function saveChecksSheet(
  { db }: Context,
  { stamp, climate, balanceScheme, ...carrying }: ChecksInput,
): Promise<Result<undefined, SheetProblem>> {
  return inTransaction(db, async (tx) => {
    if ((await loadChecksSheet({ db: tx })).stamp !== stamp)
      return refuse({ kind: "changed-elsewhere" });
    await writeSettings(tx, { carrying, climateC: climate, balanceScheme });
    return ok(undefined);
  });
}

function readingTyped(reading: Carrying["jarReading"]): ChecksSheet["jarReading"] {
  const typed = (value: number | undefined): string => (value === undefined ? "" : String(value));
  return {
    waterMl: typed(reading?.waterMl),
    startC: typed(reading?.startC),
    hours: typed(reading?.hours),
    readC: typed(reading?.readC),
    roomC: typed(reading?.roomC),
  };
}
