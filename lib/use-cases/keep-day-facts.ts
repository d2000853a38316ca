import { ok, refuse, type Result } from "#lib/base/index.ts";
import type { Day } from "#lib/calendar/index.ts";
import {
  applyFactsEntry,
  inTransaction,
  isFactsEntryKnown,
  readFactsGround,
  type Db,
} from "#lib/db/index.ts";
import {
  settleDayFacts,
  type DayFacts,
  type DayFactsConflict,
  type DayFactsEntry,
} from "#lib/reactions/index.ts";
import type { Context } from "./context.ts";
import type { KeepDayFactsInput } from "./keep-day-facts.input.ts";

export type FactsProblem = { readonly kind: "gone" };

/** The facts of a day as they stand after an entry. */
export type FactsState = {
  readonly lunchId: string;
  readonly revision: number;
  readonly values: DayFacts;
  readonly conflicts: readonly DayFactsConflict[];
};

/**
 * Applies entries about filming days in one commit, each exactly once, however often and in whatever
 * order they are sent. Where two phones said different things, both are kept for the user to choose.
 */
export async function keepDayFacts(
  { db }: Context,
  inputs: readonly KeepDayFactsInput[],
): Promise<Result<FactsState, FactsProblem>[]> {
  return inTransaction(db, async (tx) => {
    const outcomes: Result<FactsState, FactsProblem>[] = [];
    for (const input of inputs) outcomes.push(await apply(tx, input));
    return outcomes;
  });
}

async function apply(tx: Db, input: KeepDayFactsInput): Promise<Result<FactsState, FactsProblem>> {
  const { lunchId, id, device, baseRevision } = input;
  const ground = await readFactsGround(tx, lunchId);
  if (!ground) return refuse({ kind: "gone" });
  const before = ground.entries;
  if (await isFactsEntryKnown(tx, id))
    return ok({ lunchId, revision: before.length, ...settleDayFacts(before) });
  const change: Partial<DayFacts> = Object.fromEntries(
    Object.entries(input.change).filter(([, value]) => value !== undefined),
  );
  const madeAt = new Date(input.madeAt).toISOString();
  const revision = before.length + 1;
  const entry: DayFactsEntry = { id, device, baseRevision, madeAt, revision, change };
  const settled = settleDayFacts([...before, entry]);
  await applyFactsEntry(tx, lunchId, entry, ground, settled.values);
  return ok({ lunchId, revision, ...settled });
}

/** Sets the minutes of a day from a page that shows them as they stand; in the caller's transaction. */
export async function noteMinutes(
  tx: Db,
  { id, lunchId, minutes, now }: { id: string; lunchId: string; minutes: number; now: Date },
): Promise<void> {
  const ground = await readFactsGround(tx, lunchId);
  if (!ground || settleDayFacts(ground.entries).values.minutes === minutes) return;
  const seen = { device: "call sheet", baseRevision: ground.entries.length };
  await apply(tx, { id, lunchId, ...seen, madeAt: now.toISOString(), change: { minutes } });
}

/** The facts of a lunch as they stand; undefined when there is no such lunch. */
export async function readDayFacts(db: Db, lunchId: string): Promise<FactsState | undefined> {
  const ground = await readFactsGround(db, lunchId);
  if (!ground) return undefined;
  return { lunchId, revision: ground.entries.length, ...settleDayFacts(ground.entries) };
}

/** The facts of a day as they stand, for a phone that looks again. */
export async function loadDayFacts({ db }: Context, date: Day): Promise<FactsState | undefined> {
  const lunch = await db.lunch.findUnique({ where: { date }, select: { id: true } });
  return lunch ? readDayFacts(db, lunch.id) : undefined;
}

/** Words for a refusal. */
export function describeFactsProblem({ kind }: FactsProblem): string {
  switch (kind) {
    case "gone":
      return "This lunch was removed meanwhile.";
  }
}
