import fc from "fast-check";
import type { Db } from "#lib/db/index.ts";
import type { Context } from "#lib/use-cases/context.ts";

/** What the lunches hold, who judges it, and the ids of the items. */
export const FOODS = ["rye-bread", "pear", "gouda", "hummus"] as const;
export const CHILDREN = ["c1", "c2"] as const;
/** Two lunches a year, two items a lunch. */
const DATES = ["2024-03-04", "2024-09-02", "2025-03-03", "2025-09-01", "2026-03-02", "2026-03-03"];
const FREE_DATES = ["2023-01-09", "2024-06-03", "2026-01-12"];
export const ITEMS = DATES.flatMap((_, index) => [`i${index}a`, `i${index}b`]);
const LUNCHES = DATES.map((_, index) => `l${index}`);

/** A series of three years in which half of the items are judged, each with a share and a trick. */
export async function threeYears({ db, now }: Context): Promise<void> {
  for (const id of CHILDREN) {
    await db.child.create({ data: { id, privateName: id, onScreenName: id } });
  }
  const { id: trickId } = await db.trick.findFirstOrThrow({ orderBy: { id: "desc" } });
  for (const [index, date] of DATES.entries()) {
    const childId = CHILDREN[index % 2] ?? "c1";
    const judged = {
      shares: { create: { childId, amount: 5 } },
      tricks: { create: { trickId } },
      reactions: { create: { childId, eaten: index % 5, loggedAt: now } },
    };
    const item = (end: string, foodId: string) =>
      ({ id: `i${index}${end}`, foodId, part: "grain", amount: 60, fate: "packed" }) as const;
    const [a, b] = [item("a", FOODS[index % 4] ?? "pear"), item("b", "gouda")];
    const lunch = { id: `l${index}`, date, items: { create: [{ ...a, ...judged }, b] } };
    await db.episode.create({
      data: { id: `e${index}`, number: index, weekOf: date, lunches: { create: lunch } },
    });
  }
}

const item = fc.constantFrom(...ITEMS);
const child = fc.constantFrom(...CHILDREN);
const food = fc.constantFrom(...FOODS);
const lunch = fc.constantFrom(...LUNCHES);
const eaten = fc.constantFrom(null, 0, 1, 2, 3, 4);

/** Statements by which rows are judged, moved, dressed, shared, renamed, put in the place of others and taken away. */
export const anySql = fc.oneof(
  fc.tuple(item, child, eaten).map(
    ([i, c, e]) =>
      `INSERT INTO "Reaction" ("itemId","childId","eaten","loggedAt") VALUES ('${i}','${c}',${e},'2026-03-11T09:00:00.000Z')
     ON CONFLICT ("itemId","childId") DO UPDATE SET "eaten" = excluded."eaten"`,
  ),
  fc
    .tuple(item, child, eaten)
    .map(
      ([i, c, e]) =>
        `INSERT OR REPLACE INTO "Reaction" ("itemId","childId","eaten","loggedAt") VALUES ('${i}','${c}',${e},'2026-03-11T09:00:00.000Z')`,
    ),
  fc
    .tuple(item, child)
    .map(
      ([i, c]) =>
        `INSERT OR IGNORE INTO "Reaction" ("itemId","childId","face","loggedAt") VALUES ('${i}','${c}',50,'2026-03-11T09:00:00.000Z')`,
    ),
  fc
    .tuple(item, fc.integer({ min: 0, max: 100 }))
    .map(
      ([i, face]) => `UPDATE OR REPLACE "Reaction" SET "face" = ${face} WHERE "itemId" = '${i}'`,
    ),
  fc
    .tuple(item, item)
    .map(([i, j]) => `UPDATE OR IGNORE "Reaction" SET "itemId" = '${i}' WHERE "itemId" = '${j}'`),
  fc
    .tuple(item, child)
    .map(([i, c]) => `UPDATE OR IGNORE "Reaction" SET "childId" = '${c}' WHERE "itemId" = '${i}'`),
  item.map((i) => `DELETE FROM "Reaction" WHERE "itemId" = '${i}'`),
  fc
    .tuple(item, fc.constantFrom("packed", "scrapped", "stepped-in"))
    .map(([i, fate]) => `UPDATE "LunchItem" SET "fate" = '${fate}' WHERE "id" = '${i}'`),
  fc
    .tuple(item, food)
    .map(([i, f]) => `UPDATE "LunchItem" SET "foodId" = '${f}' WHERE "id" = '${i}'`),
  fc
    .tuple(
      item,
      fc.constantFrom(
        `"part" = 'fruit'`,
        `"amount" = "amount" + 1`,
        `"unit" = 'piece'`,
        `"productId" = 'p1'`,
      ),
    )
    .map(([i, set]) => `UPDATE "LunchItem" SET ${set} WHERE "id" = '${i}'`),
  fc
    .tuple(item, lunch)
    .map(([i, l]) => `UPDATE "LunchItem" SET "lunchId" = '${l}' WHERE "id" = '${i}'`),
  item.map((i) => `UPDATE "LunchItem" SET "id" = 'renamed-' || "id" WHERE "id" = '${i}'`),
  item.map((i) => `UPDATE OR IGNORE "LunchItem" SET "id" = '${i}' WHERE "id" = 'renamed-${i}'`),
  fc
    .tuple(item, lunch, food)
    .map(
      ([i, l, f]) =>
        `INSERT OR REPLACE INTO "LunchItem" ("id","lunchId","foodId","part","amount") VALUES ('${i}','${l}','${f}','dip',10)`,
    ),
  item.map((i) => `DELETE FROM "LunchItem" WHERE "id" = '${i}'`),
  fc.tuple(item, child, fc.integer({ min: 0, max: 90 })).map(
    ([i, c, amount]) =>
      `INSERT INTO "ItemShare" ("itemId","childId","amount") VALUES ('${i}','${c}',${amount})
     ON CONFLICT ("itemId","childId") DO UPDATE SET "amount" = excluded."amount"`,
  ),
  fc
    .tuple(item, item)
    .map(([i, j]) => `UPDATE OR REPLACE "ItemShare" SET "itemId" = '${i}' WHERE "itemId" = '${j}'`),
  item.map((i) => `DELETE FROM "ItemShare" WHERE "itemId" = '${i}'`),
  item.map(
    (i) =>
      `INSERT OR IGNORE INTO "ItemTrick" ("itemId","trickId") SELECT '${i}', "id" FROM "Trick" LIMIT 2`,
  ),
  fc
    .tuple(item, item)
    .map(([i, j]) => `UPDATE OR REPLACE "ItemTrick" SET "itemId" = '${i}' WHERE "itemId" = '${j}'`),
  item.map((i) => `DELETE FROM "ItemTrick" WHERE "itemId" = '${i}'`),
  fc
    .tuple(lunch, fc.constantFrom(...DATES, ...FREE_DATES))
    .map(([l, date]) => `UPDATE OR IGNORE "Lunch" SET "date" = '${date}' WHERE "id" = '${l}'`),
  lunch.map((l) => `UPDATE "Lunch" SET "id" = "id" || '-anew' WHERE "id" = '${l}'`),
  fc
    .tuple(lunch, fc.constantFrom(...FREE_DATES))
    .map(
      ([l, date]) =>
        `INSERT OR IGNORE INTO "Lunch" ("id","episodeId","date") VALUES ('${l}','e5','${date}')`,
    ),
  lunch.map((l) => `DELETE FROM "Lunch" WHERE "id" = '${l}'`),
  lunch.map((l) => `DELETE FROM "Episode" WHERE "id" = 'e${l.slice(1)}'`),
  child.map((c) => `UPDATE "Child" SET "id" = "id" || '-anew' WHERE "id" = '${c}'`),
  fc
    .tuple(food, fc.constantFrom("hard-cheese", "egg"))
    .map(([f, family]) => `UPDATE "Food" SET "familyId" = '${family}' WHERE "id" = '${f}'`),
  fc
    .tuple(food, food)
    .map(
      ([f, g]) => `UPDATE "Food" SET "mergedIntoId" = nullif('${g}', '${f}') WHERE "id" = '${f}'`,
    ),
  food.map(
    (f) =>
      `DELETE FROM "Food" WHERE "id" = '${f}' AND "id" NOT IN (SELECT "foodId" FROM "LunchItem")`,
  ),
  fc.constant(`UPDATE "Family" SET "id" = "id" || '-anew' WHERE "id" = 'hard-cheese'`),
);

type Reaction = { itemId: string; childId: string; eaten: number | null; face: number | null };
type Item = {
  id: string;
  lunchId: string;
  foodId: string;
  productId: string | null;
  fate: string;
} & {
  part: string;
  amount: number;
  unit: string;
};

/** Every verdict, joined by hand from the tables as they are: shares nothing with the door. */
export async function verdictsByHand(db: Db): Promise<unknown[]> {
  const all = <Row>(sql: string): Promise<Row[]> => db.$queryRawUnsafe<Row[]>(sql);
  const reactions = await all<Reaction>(`SELECT * FROM "Reaction" ORDER BY rowid`);
  const items = byId(await all<Item>(`SELECT * FROM "LunchItem"`));
  const lunches = byId(await all<{ id: string; date: string }>(`SELECT * FROM "Lunch"`));
  const foods = byId(
    await all<{ id: string; familyId: string; mergedIntoId: string | null }>(
      `SELECT * FROM "Food"`,
    ),
  );
  const shares = await db.itemShare.findMany();
  const tricks = await db.itemTrick.findMany({ orderBy: { trickId: "asc" } });
  return reactions
    .flatMap(({ itemId, childId, eaten, face }) => {
      const item = items.get(itemId);
      const lunch = lunches.get(item?.lunchId ?? "");
      const own = foods.get(item?.foodId ?? "");
      const food = own && foods.get(own.mergedIntoId ?? own.id);
      if (!item || item.fate === "scrapped" || !lunch || !food) return [];
      const share = shares.find((one) => one.itemId === itemId && one.childId === childId);
      const { part, productId, unit } = item;
      return {
        ...{ itemId, childId, foodId: food.id, familyId: food.familyId, day: lunch.date },
        ...{ eaten, face, part, productId, amount: share?.amount ?? item.amount, unit },
        trickIds: tricks.filter((one) => one.itemId === itemId).map(({ trickId }) => trickId),
      };
    })
    .sort((a, b) => order(a.day, b.day) || order(a.childId, b.childId));
}

function byId<Row extends { readonly id: string }>(rows: readonly Row[]): Map<string, Row> {
  return new Map(rows.map((row) => [row.id, row]));
}

function order(one: string, other: string): number {
  return one < other ? -1 : one > other ? 1 : 0;
}
