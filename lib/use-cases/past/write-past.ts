import { randomUUID } from "node:crypto";
import { taughtAlias, type Food } from "#lib/catalog/index.ts";
import { foodColumns, insertRows, writeShop, type Db } from "#lib/db/index.ts";
import { numberByCalendar } from "../number-episodes.ts";
import type { PastGround } from "./ground.ts";
import type { NamedPhrase } from "./name-foods.ts";
import { ownFood } from "./own-food.ts";
import type { PastPlan, PlannedItem, PlannedLunch } from "./plan-past.ts";

/** The clock of lunches whose own was never noted, in UTC. */
const PACKED_AT = "T07:00:00.000Z";
const JUDGED_AT = "T16:00:00.000Z";

type Row = Record<string, string | number | boolean | null>;
type Rows = Record<"Episode" | "Lunch" | "LunchItem" | "ItemTrick" | "Reaction", Row[]>;

/** Writes what a plan says, in a few statements. Call it in the transaction that planned it. */
export async function writePast(
  tx: Db,
  plan: PastPlan,
  ground: PastGround,
  phrases: readonly NamedPhrase[],
  now: Date,
): Promise<void> {
  const items = plan.weeks.flatMap((week) => week.lunches.flatMap((lunch) => lunch.items));
  const foodIdOf = await addFoods(tx, items, ground);
  const shopIdOf = await addShops(tx, items, ground);
  const themeIdOf = await addThemes(tx, plan, ground);
  const rows: Rows = { Episode: [], Lunch: [], LunchItem: [], ItemTrick: [], Reaction: [] };
  for (const week of plan.weeks) {
    const episodeId = week.standingId ?? randomUUID();
    const themeId = week.theme === null ? null : themeIdOf(week.theme);
    if (week.standingId === null) {
      const lockedAt = now.toISOString();
      rows.Episode.push({ id: episodeId, number: 0, weekOf: week.monday, themeId, lockedAt });
    } else if (themeId !== null) {
      await tx.episode.update({
        where: { id: episodeId },
        data: { themeId, revision: { increment: 1 } },
      });
    }
    for (const lunch of week.lunches) {
      const lunchId = lunch.standingId ?? randomUUID();
      if (lunch.standingId === null) {
        rows.Lunch.push({ id: lunchId, episodeId, date: lunch.date, packedAt: packedAt(lunch) });
      } else if (lunch.itemCount === 0) {
        await tx.lunch.update({ where: { id: lunchId }, data: { packedAt: packedAt(lunch) } });
      }
      addItems(rows, lunch, lunchId, { foodIdOf, shopIdOf });
    }
  }
  for (const table of ["Episode", "Lunch", "LunchItem", "ItemTrick", "Reaction"] as const) {
    await insertRows(tx, table, rows[table]);
  }
  await learnAliases(tx, phrases);
  await numberByCalendar(tx);
}

function packedAt({ date }: PlannedLunch): string {
  return `${date}${PACKED_AT}`;
}

function addItems(
  rows: Rows,
  lunch: PlannedLunch,
  lunchId: string,
  ids: { readonly foodIdOf: IdOf<PlannedItem>; readonly shopIdOf: IdOf<string> },
): void {
  lunch.items.forEach((item, index) => {
    const itemId = item.standingId ?? randomUUID();
    const { part, amount, unit, shop, trickIds } = item.line;
    if (item.standingId === null) {
      const shopId = shop === "" ? null : ids.shopIdOf(shop);
      const position = lunch.itemCount + index;
      const row = { part, position, amount, unit, shopId, fate: "packed" };
      rows.LunchItem.push({ id: itemId, lunchId, foodId: ids.foodIdOf(item), ...row });
      for (const trickId of new Set(trickIds)) rows.ItemTrick.push({ itemId, trickId });
    }
    for (const { childId, eaten, face, quote } of item.verdicts) {
      const loggedAt = `${lunch.date}${JUDGED_AT}`;
      rows.Reaction.push({ itemId, childId, eaten, face, quote, loggedAt });
    }
  });
}

type IdOf<Thing> = (thing: Thing) => string;

async function addFoods(
  tx: Db,
  items: readonly PlannedItem[],
  ground: PastGround,
): Promise<IdOf<PlannedItem>> {
  const added = new Map<string, Food>();
  const families = await tx.family.findMany({ select: { id: true } });
  const foods = await tx.food.findMany({ select: { id: true } });
  const taken = new Set([...families, ...foods].map(({ id }) => id));
  for (const { line } of items) {
    if ("id" in line.food || added.has(line.food.newName.toLowerCase())) continue;
    const food = ownFood(line.food.newName, line.part, taken);
    taken.add(food.id);
    added.set(food.name.toLowerCase(), food);
    await tx.family.create({ data: { id: food.family, name: food.name, group: food.group } });
    await tx.food.create({ data: { id: food.id, ...foodColumns(food) } });
  }
  return ({ line: { food } }) =>
    "id" in food
      ? food.id
      : (added.get(food.newName.toLowerCase())?.id ?? ground.foods[0]?.id ?? "");
}

async function addShops(
  tx: Db,
  items: readonly PlannedItem[],
  { shops }: PastGround,
): Promise<IdOf<string>> {
  const ids = new Map(shops.map(({ id, name }) => [name.toLowerCase(), id]));
  for (const { line } of items) {
    const key = line.shop.toLowerCase();
    if (line.shop === "" || ids.has(key)) continue;
    const columns = { name: line.shop, days: [], hours: "", aisles: [], note: "" };
    ids.set(key, await writeShop(tx, undefined, columns));
  }
  return (name) => ids.get(name.toLowerCase()) ?? "";
}

async function addThemes(tx: Db, plan: PastPlan, { themes }: PastGround): Promise<IdOf<string>> {
  const ids = new Map(themes.map(({ id, name }) => [name.toLowerCase(), id]));
  for (const { theme } of plan.weeks) {
    if (theme === null || ids.has(theme.toLowerCase())) continue;
    const row = await tx.theme.create({ data: { name: theme } });
    ids.set(theme.toLowerCase(), row.id);
  }
  return (name) => ids.get(name.toLowerCase()) ?? "";
}

/** What the user corrected is known the next time. */
async function learnAliases(tx: Db, phrases: readonly NamedPhrase[]): Promise<void> {
  for (const { phrase, named } of phrases) {
    if (named.kind !== "food" || named.by !== "chosen") continue;
    const name = taughtAlias(phrase, named.food);
    const data = name === null ? null : { foodId: named.food.id, name, origin: "learned" };
    if (data && (await tx.foodAlias.count({ where: data })) === 0) {
      await tx.foodAlias.create({ data });
    }
  }
}
