import { addDays, type Day } from "#lib/calendar/index.ts";
import type { Db } from "./client.ts";

/** Days back that are looked through for a step that belongs to no food. */
const OWN_DAYS = 90;

/** A step ticked off, with the minutes it took where they were said. */
export type StepTick = {
  readonly stepKey: string;
  readonly at: Date;
  readonly minutes: number | null;
};

/** What was ticked off for a lunch. */
export function readStepTicks(db: Db, lunchId: string): Promise<StepTick[]> {
  return db.stepTick.findMany({
    where: { lunchId },
    select: { stepKey: true, at: true, minutes: true },
  });
}

/** Minutes recorded of the steps of foods, and of what belongs to no food, before a day; newest first. */
export async function readRecordedMinutes(
  db: Db,
  foodIds: readonly string[],
  before: Day,
  /** The step that belongs to no food and is recorded all the same. */
  ownKey: string,
): Promise<(foodId: string | null, step: string) => readonly number[]> {
  const [timings, own] = await Promise.all([
    db.prepTiming.findMany({
      where: { foodId: { in: [...foodIds] }, on: { lt: before } },
      orderBy: [{ on: "desc" }, { id: "asc" }],
      select: { foodId: true, step: true, minutes: true },
    }),
    db.lunch.findMany({
      where: { date: { gte: addDays(before, -OWN_DAYS), lt: before } },
      orderBy: { date: "desc" },
      select: { stepTicks: { where: { stepKey: ownKey }, select: { minutes: true } } },
    }),
  ]);
  const byStep = new Map<string, number[]>();
  const keyOf = (foodId: string, step: string): string => `${foodId}\n${step}`;
  for (const { foodId, step, minutes } of timings) {
    const key = keyOf(foodId, step);
    byStep.set(key, [...(byStep.get(key) ?? []), minutes]);
  }
  const ownMinutes = own.flatMap(({ stepTicks }) =>
    stepTicks.flatMap(({ minutes }) => (minutes === null ? [] : [minutes])),
  );
  return (foodId, step) => (foodId === null ? ownMinutes : (byStep.get(keyOf(foodId, step)) ?? []));
}

/** Where a step's minutes are kept: its lunch's day, its food if it has one, its name there. */
type TimedStep = {
  readonly lunchId: string;
  readonly stepKey: string;
  readonly on: Day;
  readonly foodId: string | null;
  readonly timingName: string;
};

/** Ticks a step off, with the minutes it took if they are said; a second time replaces the first. */
export async function tickStep(
  tx: Db,
  { lunchId, stepKey, on, foodId, timingName }: TimedStep,
  at: Date,
  minutes: number | null,
): Promise<void> {
  await tx.stepTick.upsert({
    where: { lunchId_stepKey: { lunchId, stepKey } },
    create: { lunchId, stepKey, at, minutes },
    update: { minutes },
  });
  const id = timingId(lunchId, stepKey);
  if (minutes === null || foodId === null) {
    await tx.prepTiming.deleteMany({ where: { id } });
    return;
  }
  await tx.prepTiming.upsert({
    where: { id },
    create: { id, foodId, step: timingName, minutes, on },
    update: { minutes },
  });
}

/** Takes a tick back, and with it the minutes that were recorded. */
export async function untickStep(tx: Db, lunchId: string, stepKey: string): Promise<void> {
  await tx.stepTick.deleteMany({ where: { lunchId, stepKey } });
  await tx.prepTiming.deleteMany({ where: { id: timingId(lunchId, stepKey) } });
}

function timingId(lunchId: string, stepKey: string): string {
  return `${lunchId}:${stepKey}`;
}
