import { keepRecent } from "#lib/base/index.ts";
import type { Day } from "#lib/calendar/index.ts";
import { readVerdicts, type Db, type VerdictRecord } from "#lib/db/index.ts";
import { estimateAll, type Learned } from "#lib/reactions/index.ts";

/** By the list learned from, which stays the same one while no verdict changes, and by day. */
const learnedFrom = new WeakMap<readonly VerdictRecord[], Map<Day, Learned>>();
/** Estimates of no more days than this are kept. */
const DAYS_MOST = 4;

/**
 * What the verdicts up to today teach about every child and food: `of(child, food, family)` answers
 * for any pair, met or not. Shared until a verdict changes; nobody may change it.
 */
export async function loadEstimates({
  db,
  today,
}: {
  readonly db: Db;
  readonly today: Day;
}): Promise<Learned> {
  const verdicts = await readVerdicts(db);
  const byDay = learnedFrom.get(verdicts) ?? new Map<Day, Learned>();
  learnedFrom.set(verdicts, byDay);
  const learned = byDay.get(today) ?? estimateAll(verdicts, { today });
  return keepRecent(byDay, today, learned, DAYS_MOST);
}
