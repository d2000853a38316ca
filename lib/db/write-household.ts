import type { Avoidance, SchoolRule } from "#lib/safety/index.ts";
import type { Db } from "./client.ts";
import { schoolRuleColumns, type ChildRecord, type ShopRecord } from "./household.ts";

type ChildColumns = Omit<ChildRecord, "id" | "position" | "isRetired" | "avoidances"> & {
  readonly avoidances: readonly { readonly avoidance: Avoidance; readonly note: string }[];
};

/** Writes a child and everything it avoids; without an id it becomes the last child. Returns its id. */
export async function writeChild(
  db: Db,
  id: string | undefined,
  { avoidances, ...columns }: ChildColumns,
): Promise<string> {
  const row =
    id === undefined
      ? await db.child.create({ data: { ...columns, position: await db.child.count() } })
      : await db.child.update({ where: { id }, data: columns });
  await db.avoidance.deleteMany({ where: { childId: row.id } });
  // One by one, so that their ids keep the order.
  for (const { avoidance, note } of avoidances) {
    await db.avoidance.create({ data: { ...avoidanceColumns(avoidance), note, childId: row.id } });
  }
  return row.id;
}

function avoidanceColumns(avoidance: Avoidance) {
  const { severity } = avoidance;
  if ("allergen" in avoidance) return { severity, allergen: avoidance.allergen };
  return "food" in avoidance
    ? { severity, foodId: avoidance.food }
    : { severity, familyId: avoidance.family };
}

/** Writes a school rule; without an id it becomes the last one. Returns its id. */
export async function writeSchoolRule(
  db: Db,
  id: string | undefined,
  rule: SchoolRule,
  isActive: boolean,
): Promise<string> {
  const data = { ...schoolRuleColumns(rule), active: isActive };
  const row =
    id === undefined
      ? await db.schoolRule.create({ data: { ...data, position: await db.schoolRule.count() } })
      : await db.schoolRule.update({ where: { id }, data });
  return row.id;
}

type ShopColumns = Omit<ShopRecord, "id" | "distanceOrder" | "isRetired">;

/** Writes a shop; without an id it becomes the farthest one. Returns its id. */
export async function writeShop(
  db: Db,
  id: string | undefined,
  { days, aisles, ...columns }: ShopColumns,
): Promise<string> {
  const data = {
    ...columns,
    daysJson: JSON.stringify(days),
    aislesJson: JSON.stringify(aisles),
  };
  if (id !== undefined) return (await db.shop.update({ where: { id }, data })).id;
  const farthest = await db.shop.aggregate({ _max: { distanceOrder: true } });
  const distanceOrder = (farthest._max.distanceOrder ?? 0) + 1;
  return (await db.shop.create({ data: { ...data, distanceOrder } })).id;
}

/** Makes these the shops' order of distance, nearest first. */
export async function writeShopOrder(db: Db, ids: readonly string[]): Promise<void> {
  for (const [index, id] of ids.entries()) {
    await db.shop.update({ where: { id }, data: { distanceOrder: index + 1 } });
  }
}

/** Makes these the only days off. */
export async function replaceDaysOff(
  db: Db,
  daysOff: readonly { readonly from: string; readonly to: string; readonly label: string }[],
): Promise<void> {
  await db.dayOff.deleteMany();
  await db.dayOff.createMany({ data: [...daysOff] });
}
