import { day, nearDay } from "#lib/calendar/index.ts";
import { standInsFor, type Allergen, type Food } from "#lib/catalog/index.ts";
import { readFoodsById, readOfferedFoods, readSettings, readShops } from "#lib/db/index.ts";
import { describeGrams } from "#lib/shopping/index.ts";
import { stepsOfFood } from "#lib/kitchen/index.ts";
import type { Context } from "../context.ts";
import { appearancePages, readAppearances, type Appearance } from "./appearances.ts";
import { fieldsOf, text } from "./food-fields.ts";
import type { FoodFields } from "./food.input.ts";
import { readLarderTable, type LarderRow } from "./larder-rows.ts";
import { readMerges } from "./merge-foods.ts";
import { readProducts, type ProductView } from "./read-products.ts";
import { readHolders, type Holders } from "./recall.ts";
import type { FamilyFields } from "./family.input.ts";
import { stepFields } from "./save-steps.ts";
import type { StepsFields } from "./steps.input.ts";

/** A food that can take the place of one that is out. */
type StandInView = {
  readonly id: string;
  readonly name: string;
  readonly why: string;
  /** Allergens it brings, certain or possible. */
  readonly brings: readonly Allergen[];
};

export type FoodView = {
  readonly fields: FoodFields;
  readonly row: LarderRow;
  readonly isOwn: boolean;
  readonly isEdited: boolean;
  /** Only wished for: not proposed or suggested until its sheet is saved. */
  readonly isWish: boolean;
  readonly recallNote: string | null;
  readonly holders: Holders | undefined;
  readonly appearances: readonly Appearance[];
  readonly total: number;
  readonly page: number;
  readonly pages: number;
  readonly products: readonly ProductView[];
  /** Given when nothing of the food can be bought. */
  readonly standIns: readonly StandInView[] | undefined;
  readonly lots: readonly string[];
  readonly merges: readonly { readonly changeId: string; readonly label: string }[];
  readonly shops: readonly { readonly id: string; readonly name: string }[];
  readonly families: readonly { readonly id: string; readonly name: string }[];
  readonly currency: string;
  readonly steps: StepsFields;
  readonly family: FamilyView;
};

/** The kin of a food: what they are called, how long they rest, and who they are. */
type FamilyView = { readonly fields: FamilyFields; readonly kin: readonly string[] };

const STAND_INS_SHOWN = 6;

/** Everything on a food's page; where it was merged, the id of the food that has its history now. */
export async function loadFood(
  context: Context,
  id: string,
  page: number,
): Promise<FoodView | { readonly mergedInto: string } | undefined> {
  const { db } = context;
  const stored = await db.food.findUnique({ where: { id } });
  if (!stored) return undefined;
  if (stored.mergedIntoId !== null) return { mergedInto: stored.mergedIntoId };
  const [byId, foods, table, settings, shops, families, history, merges] = await Promise.all([
    readFoodsById(db, [id]),
    readOfferedFoods(db),
    readLarderTable(context),
    readSettings(db),
    readShops(db),
    db.family.findMany({ orderBy: { name: "asc" } }),
    readAppearances(db, { kind: "food", id }, page),
    readMerges(db, id),
  ]);
  const food = byId.get(id);
  const row = table.rows.find((one) => one.id === id);
  if (!food || !row) return undefined;
  const openShops = shops.filter((shop) => !shop.isRetired);
  const products = await readProducts(context, food, openShops);
  const current = products.filter(({ isRetired }) => !isRetired);
  const isNoneSold =
    current.length > 0 && current.every(({ fields }) => fields.status !== "available");
  const isRecalled = stored.recalledAt !== null;
  const recalledProduct = products.find(({ recallNote }) => recallNote !== null);
  return {
    fields: fieldsOf(food, stored),
    row,
    isOwn: stored.catalogueVersion === null,
    isEdited: stored.editedAt !== null,
    isWish: stored.isWish,
    recallNote: isRecalled ? stored.recallNote : null,
    holders: isRecalled
      ? await readHolders(db, food)
      : recalledProduct && (await readHolders(db, food, recalledProduct.fields.id)),
    ...{ appearances: history.appearances, total: history.total, page },
    pages: appearancePages(history.total),
    products,
    standIns: isNoneSold || isRecalled ? standInViews(food, foods) : undefined,
    lots: await readLotTexts(context, food),
    merges,
    shops: openShops.map(({ id: shopId, name }) => ({ id: shopId, name })),
    families: families.map(({ id: familyId, name }) => ({ id: familyId, name })),
    currency: settings.currency,
    steps: { foodId: id, revision: stored.revision, steps: stepFields(stepsOfFood(food)) },
    family: familyView(
      food,
      families.find((family) => family.id === food.family),
      foods,
    ),
  };
}

function familyView(
  food: Food,
  family: { readonly name: string; readonly restDays: number | null } | undefined,
  foods: readonly Food[],
): FamilyView {
  return {
    fields: {
      familyId: food.family,
      name: family?.name ?? food.family,
      restDays: text(family?.restDays ?? null),
    },
    kin: foods
      .filter((other) => other.family === food.family && other.id !== food.id)
      .map(({ name }) => name),
  };
}

function standInViews(food: Food, foods: readonly Food[]): StandInView[] {
  return standInsFor(food, foods)
    .slice(0, STAND_INS_SHOWN)
    .map(({ food: other, isSameFamily, sharesColour, newAllergens }) => ({
      id: other.id,
      name: other.name,
      why: [
        isSameFamily ? "same family" : "same group",
        `also ${other.parts.find((part) => food.parts.includes(part)) ?? ""}`,
        sharesColour && "same colour",
      ]
        .filter((word) => typeof word === "string")
        .join(", "),
      brings: newAllergens,
    }));
}

async function readLotTexts({ db, today }: Context, food: Food): Promise<string[]> {
  const lots = await db.stock.findMany({
    where: { foodId: food.id, goneOn: null },
    orderBy: { boughtOn: "asc" },
  });
  return lots.map(({ grams, place, boughtOn, openedOn }) =>
    [
      describeGrams(grams),
      place,
      boughtOn !== null && `bought ${nearDay(day(boughtOn), today)}`,
      openedOn !== null && `opened ${nearDay(day(openedOn), today)}`,
    ]
      .filter((word) => typeof word === "string")
      .join(", "),
  );
}
