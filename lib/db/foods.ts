import { z } from "zod";
import {
  Allergen,
  Colour,
  Food,
  FoodId,
  Part,
  PrepStep,
  ShelfLives,
  Trait,
  Trick,
} from "#lib/catalog/index.ts";
import type { Db } from "./client.ts";
import type { Prisma } from "./generated/client.ts";
import { parseColumn } from "./json.ts";
import { keepUntilWritten } from "./kept.ts";

const Slugs = z.array(z.string());
const Months = z.array(z.number().int().min(1).max(12)).nullable();
const Weights = z.record(z.string(), z.number().positive());

type FoodRow = Prisma.FoodGetPayload<{ include: { aliases: { select: { name: true } } } }>;

/** A food row as the domain knows it. */
export function foodOfRow(row: FoodRow): Food {
  return {
    id: FoodId.parse(row.id),
    name: row.name,
    aliases: row.aliases.map((alias) => alias.name),
    family: Food.shape.family.parse(row.familyId),
    group: Food.shape.group.parse(row.group),
    parts: parseColumn(z.array(Part), row.partsJson, "Food.parts"),
    allergens: parseColumn(z.array(Allergen), row.allergensJson, "Food.allergens"),
    maybeAllergens: parseColumn(z.array(Allergen), row.maybeJson, "Food.maybe"),
    traits: parseColumn(z.array(Trait), row.traitsJson, "Food.traits"),
    colours: parseColumn(z.array(Colour), row.coloursJson, "Food.colours"),
    motifs: parseColumn(Slugs, row.motifsJson, "Food.motifs"),
    pattern: Food.shape.pattern.parse(row.pattern),
    form: Food.shape.form.parse(row.form),
    holding: Food.shape.holding.parse(row.holding),
    sliceable: row.sliceable,
    seasonMonths:
      row.seasonJson === null ? null : parseColumn(Months, row.seasonJson, "Food.season"),
    shelf: parseColumn(ShelfLives, row.shelfJson, "Food.shelf"),
    yieldFactor: row.yieldFactor,
    servingGrams: row.servingGrams,
    gramsPerCup: row.gramsPerCup,
    unitWeights: parseColumn(Weights, row.unitsJson, "Food.units"),
    countUnit: row.countUnit,
    servingCents: row.servingCents,
    prepSteps: parseColumn(z.array(PrepStep), row.stepsJson, "Food.steps"),
    restDays: row.restDays,
    isStaple: row.isStaple,
  };
}

/** A food as its row's columns, for writing; aliases are rows of their own. */
export function foodColumns(food: Food): Omit<Prisma.FoodUncheckedCreateInput, "id"> {
  return {
    name: food.name,
    familyId: food.family,
    group: food.group,
    partsJson: JSON.stringify(food.parts),
    allergensJson: JSON.stringify(food.allergens),
    maybeJson: JSON.stringify(food.maybeAllergens),
    traitsJson: JSON.stringify(food.traits),
    coloursJson: JSON.stringify(food.colours),
    motifsJson: JSON.stringify(food.motifs),
    pattern: food.pattern,
    form: food.form,
    holding: food.holding,
    sliceable: food.sliceable,
    seasonJson: food.seasonMonths === null ? null : JSON.stringify(food.seasonMonths),
    shelfJson: JSON.stringify(food.shelf),
    yieldFactor: food.yieldFactor,
    servingGrams: food.servingGrams,
    gramsPerCup: food.gramsPerCup,
    unitsJson: JSON.stringify(food.unitWeights),
    countUnit: food.countUnit,
    servingCents: food.servingCents,
    stepsJson: JSON.stringify(food.prepSteps),
    restDays: food.restDays,
    isStaple: food.isStaple,
  };
}

type KeptFood = { readonly food: Food; readonly isInUse: boolean; readonly isWish: boolean };

/** Every food in use (not retired, not merged away), by name. */
export async function readFoods(db: Db): Promise<Food[]> {
  const foods = await readAllFoods(db);
  return [...foods.values()].filter(({ isInUse }) => isInUse).map(({ food }) => food);
}

/**
 * The foods that Noonbook itself may propose or suggest, by name: those in use without the ones that
 * are only wished for, whose sheet and label nobody has read yet.
 */
export async function readOfferedFoods(db: Db): Promise<Food[]> {
  const foods = await readAllFoods(db);
  return [...foods.values()]
    .filter(({ isInUse, isWish }) => isInUse && !isWish)
    .map(({ food }) => food);
}

/** The foods with these ids, retired ones too, by id. */
export async function readFoodsById(
  db: Db,
  ids: readonly string[],
): Promise<ReadonlyMap<string, Food>> {
  const foods = await readAllFoods(db);
  return new Map(
    ids.flatMap((id) => {
      const kept = foods.get(id);
      return kept ? [[id, kept.food] as const] : [];
    }),
  );
}

function readAllFoods(db: Db): Promise<ReadonlyMap<string, KeptFood>> {
  return keepUntilWritten(db, "foods", async () => {
    const rows = await db.food.findMany({
      include: { aliases: { select: { name: true } } },
      orderBy: { name: "asc" },
    });
    return new Map(
      rows.map((row) => {
        const isInUse = row.retiredAt === null && row.mergedIntoId === null;
        return [row.id, { food: foodOfRow(row), isInUse, isWish: row.isWish }] as const;
      }),
    );
  });
}

/** Every trick in use, by name. */
export async function readTricks(db: Db): Promise<Trick[]> {
  const rows = await db.trick.findMany({ where: { retiredAt: null }, orderBy: { name: "asc" } });
  return rows.map((row) => ({
    id: Trick.shape.id.parse(row.id),
    name: row.name,
    kind: Trick.shape.kind.parse(row.kind),
    motifs: parseColumn(Slugs, row.motifsJson, "Trick.motifs"),
    colours: parseColumn(z.array(Colour), row.coloursJson, "Trick.colours"),
    minutes: row.minutes,
    needsSliceable: row.needsSliceable,
  }));
}
