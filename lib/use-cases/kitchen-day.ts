import { minutesOfDay } from "#lib/calendar/index.ts";
import type { Trick } from "#lib/catalog/index.ts";
import { listSteps, PACKING, type Kitchen, type KitchenStep } from "#lib/kitchen/index.ts";
import {
  keepUntilWritten,
  readRecordedMinutes,
  readTricks,
  type Db,
  type LunchRecord,
  type Settings,
} from "#lib/db/index.ts";

const DAY_MINUTES = 24 * 60;

/** The kitchen as the settings have it, in minutes from midnight of a lunch's day. */
export function kitchenOf(settings: Settings): Kitchen {
  const eveningFrom = minutesOfDay(settings.eveningFrom);
  const bedtime = minutesOfDay(settings.bedtime);
  return {
    eveningFrom: eveningFrom - DAY_MINUTES,
    // Past midnight, bedtime is on the lunch's own day.
    bedtime: bedtime > eveningFrom ? bedtime - DAY_MINUTES : bedtime,
    morningFrom: minutesOfDay(settings.morningFrom),
    departure: minutesOfDay(settings.departure),
    cooks: settings.cooks,
    appliances: settings.appliances,
  };
}

/**
 * The steps of a lunch, with minutes learned from what was recorded before its day, so that ticking one
 * off does not move the plan under the cook's hands.
 */
export async function readSteps(db: Db, lunch: LunchRecord): Promise<KitchenStep[]> {
  const items = lunch.items.filter(({ fate }) => fate !== "scrapped");
  const [tricks, tins, recorded] = await Promise.all([
    keepUntilWritten(db, "tricks by id", async () => byId(await readTricks(db))),
    db.child.count({ where: { retiredAt: null } }),
    readRecordedMinutes(
      db,
      items.map(({ food }) => food.id),
      lunch.date,
      PACKING,
    ),
  ]);
  return listSteps(
    items.map((item) => ({
      food: item.food,
      tricks: item.tricks.flatMap(({ id }) => tricks.get(id) ?? []),
    })),
    tins,
    recorded,
  );
}

function byId(tricks: readonly Trick[]): ReadonlyMap<string, Trick> {
  return new Map(tricks.map((trick) => [trick.id, trick]));
}

/**
 * A clock time in minutes from midnight of a lunch's day: what lies after the departure is the evening
 * before.
 */
export function onTheAxis(clock: Parameters<typeof minutesOfDay>[0], kitchen: Kitchen): number {
  const minutes = minutesOfDay(clock);
  return minutes > kitchen.departure ? minutes - DAY_MINUTES : minutes;
}
