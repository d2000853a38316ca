import type { Day } from "#lib/calendar/index.ts";
import { keepUntilWritten, readVerdicts, type Db, type VerdictRecord } from "#lib/db/index.ts";
import { estimateAll, type Learned } from "#lib/reactions/index.ts";

/**
 * What the verdicts up to today teach about every child and food: `of(child, food, family)` answers
 * for any pair, met or not. Shared until anything is written; nobody may change it.
 */
export function loadEstimates({
  db,
  today,
}: {
  readonly db: Db;
  readonly today: Day;
}): Promise<Learned> {
  return keepUntilWritten(db, `estimates ${today}`, async () =>
    estimateAll(await loadVerdicts({ db }), { today }),
  );
}

/** Every verdict with the item it was given on, oldest first; shared like the estimates. */
export function loadVerdicts({ db }: { readonly db: Db }): Promise<readonly VerdictRecord[]> {
  return keepUntilWritten(db, "verdicts", () => readVerdicts(db));
}
