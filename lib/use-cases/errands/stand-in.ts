import { z } from "zod";
import { ok, refuse, type Result } from "#lib/base/index.ts";
import { Day, daysOfWeek } from "#lib/calendar/index.ts";
import { gramsOf, type Food } from "#lib/catalog/index.ts";
import {
  inTransaction,
  readChildren,
  readEpisode,
  readOfferedFoods,
  readSchoolRules,
  type Db,
  type EpisodeRecord,
  type ItemRecord,
} from "#lib/db/index.ts";
import { findStandIns, hardFilter, type ChildProfile } from "#lib/safety/index.ts";
import type { Context } from "../context.ts";
import { keepForUndo } from "../slate-change.ts";

const FoodRef = z.string().min(1).max(120);
export const FindStandInsInput = z.object({ monday: Day, foodId: FoodRef });
export const StandInInput = z.object({ monday: Day, foodId: FoodRef, standInId: FoodRef });
export type StandInInput = z.infer<typeof StandInInput>;

export type StandInProblem = { readonly kind: "not-planned" | "food-gone" | "kept-out" };

const OFFERED_MOST = 6;

/**
 * Foods that could take the place of one that a shop had none of: they play its part and nothing on record
 * speaks against them on the days it is planned. Labels and the school come first all the same.
 */
export async function listStandIns(
  { db, today }: Context,
  { monday, foodId }: z.infer<typeof FindStandInsInput>,
): Promise<readonly { readonly id: string; readonly name: string }[]> {
  const planned = await plannedFrom(db, monday, today, foodId);
  const [first] = planned.items;
  if (!first) return [];
  const foods = await readOfferedFoods(db);
  const { children, rules } = await householdOf(db);
  const motifs = planned.episode?.theme?.motifs ?? [];
  const ground = { children, rules, day: first.day, themeMotifs: motifs };
  const found = findStandIns({ food: first.item.food, part: first.item.part }, foods, ground, 40);
  return found
    .filter((food) => planned.items.every(({ day }) => hardFilter(children, rules, day)(food)))
    .slice(0, OFFERED_MOST)
    .map(({ id, name }) => ({ id, name }));
}

/**
 * Puts another food in the place of one in the week's lunches that are still to be made, gram for gram;
 * the slate can take it back. Refuses a food that an avoidance or a school rule keeps out.
 */
export async function putStandIn(
  { db, today }: Context,
  { monday, foodId, standInId }: StandInInput,
): Promise<Result<undefined, StandInProblem>> {
  return inTransaction(db, async (tx) => {
    const { items, episode } = await plannedFrom(tx, monday, today, foodId);
    if (items.length === 0 || !episode) return refuse({ kind: "not-planned" });
    const food = (await readOfferedFoods(tx)).find(({ id }) => id === standInId);
    if (!food) return refuse({ kind: "food-gone" });
    const { children, rules } = await householdOf(tx);
    if (!items.every(({ day }) => hardFilter(children, rules, day)(food))) {
      return refuse({ kind: "kept-out" });
    }
    await keepForUndo(tx, [episode.id], `${food.name} in the place of another food`);
    for (const { item } of items) await replaceFood(tx, item, food);
    for (const lunchId of new Set(items.map((one) => one.lunchId))) {
      await tx.lunch.update({ where: { id: lunchId }, data: { revision: { increment: 1 } } });
    }
    return ok(undefined);
  });
}

/** Words for a refusal. */
export function describeStandInProblem({ kind }: StandInProblem): string {
  switch (kind) {
    case "not-planned":
      return "No lunch still to be made has it any more.";
    case "food-gone":
      return "That food is no longer in the Larder, or it is only a wish whose page nobody has filled in.";
    case "kept-out":
      return "A child avoids it, or the school keeps it out on one of these days.";
  }
}

async function plannedFrom(
  db: Db,
  monday: Day,
  today: Day,
  foodId: string,
): Promise<{
  readonly episode: EpisodeRecord | undefined;
  readonly items: readonly {
    readonly lunchId: string;
    readonly day: Day;
    readonly item: ItemRecord;
  }[];
}> {
  const episode = await readEpisode(db, monday);
  const days = daysOfWeek(monday).filter((day) => day > today);
  const items = (episode?.lunches ?? [])
    .filter((lunch) => !lunch.isPacked && days.includes(lunch.date))
    .flatMap((lunch) =>
      lunch.items
        .filter((item) => item.food.id === foodId && item.fate !== "scrapped")
        .map((item) => ({ lunchId: lunch.id, day: lunch.date, item })),
    );
  return { episode, items };
}

async function replaceFood(tx: Db, item: ItemRecord, food: Food): Promise<void> {
  const one = gramsOf(item.food, { amount: 1, unit: item.unit });
  const perUnit = one.ok ? one.value : undefined;
  const grams = perUnit === undefined ? food.servingGrams : item.amount * perUnit;
  await tx.lunchItem.update({
    where: { id: item.id },
    data: { foodId: food.id, productId: null, amount: rounded(grams), unit: "g" },
  });
  await tx.itemTrick.deleteMany({ where: { itemId: item.id } });
  for (const { childId, amount } of item.shares) {
    const share = perUnit === undefined ? (amount > 0 ? food.servingGrams : 0) : amount * perUnit;
    await tx.itemShare.update({
      where: { itemId_childId: { itemId: item.id, childId } },
      data: { amount: rounded(share) },
    });
  }
}

function rounded(grams: number): number {
  return Math.round(grams * 10) / 10;
}

async function householdOf(db: Db) {
  const [children, rules] = await Promise.all([readChildren(db), readSchoolRules(db)]);
  return {
    children: children
      .filter((child) => !child.isRetired)
      .map((child): ChildProfile => ({
        id: child.id,
        name: child.onScreenName,
        avoidances: child.avoidances.map(({ avoidance }) => avoidance),
      })),
    rules: rules.filter(({ isActive }) => isActive).map(({ rule }) => rule),
  };
}
