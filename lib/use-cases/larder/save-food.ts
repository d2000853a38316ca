import { ok, refuse, type Result } from "#lib/base/index.ts";
import { Food, type FoodGroup } from "#lib/catalog/index.ts";
import { foodColumns, inTransaction, readFoodsById, type Db } from "#lib/db/index.ts";
import type { Context } from "../context.ts";
import type { FoodInput } from "./food.input.ts";
import { slugOf } from "./typed.ts";

export type SaveFoodProblem =
  | { readonly kind: "gone" | "changed-elsewhere" | "family-gone" }
  | { readonly kind: "name-taken"; readonly name: string; readonly id: string };

/**
 * Saves a food as typed, or adds one where the input has no id. From then on a later catalogue leaves
 * it alone. Refuses when another tab saved first and when another food has that very name.
 */
export async function saveFood(
  { db, now }: Context,
  input: FoodInput,
): Promise<Result<string, SaveFoodProblem>> {
  return inTransaction(db, async (tx): Promise<Result<string, SaveFoodProblem>> => {
    const row = input.id === "" ? undefined : await tx.food.findUnique({ where: { id: input.id } });
    if (row === null || row?.mergedIntoId) return refuse({ kind: "gone" });
    if (row && row.revision !== input.revision) return refuse({ kind: "changed-elsewhere" });
    const namesake = await findNamesake(tx, input);
    if (namesake) return refuse({ kind: "name-taken", ...namesake });
    const family = await familyFor(tx, input);
    if (family === undefined) return refuse({ kind: "family-gone" });

    const id = row?.id ?? (await freeId(tx, input.name));
    const before = (await readFoodsById(tx, [id])).get(id);
    const food = foodOf(id, family, input, before);
    // Whoever saves the sheet has read it: a wished food is a food like any other from here on.
    const columns = { ...foodColumns(food), editedAt: now, isWish: false };
    const { ingredients } = input;
    if (row)
      await tx.food.update({
        where: { id },
        data: { ...columns, ingredients, revision: row.revision + 1 },
      });
    else await tx.food.create({ data: { id, ...columns, ingredients } });
    await saveAliases(tx, id, food.aliases);
    return ok(id);
  });
}

/** Words for a refusal. */
export function describeSaveFoodProblem(problem: SaveFoodProblem): string {
  switch (problem.kind) {
    case "gone":
      return "This food was merged or removed meanwhile. Open the Larder again.";
    case "changed-elsewhere":
      return "Another tab changed this food after you opened it. Nothing was overwritten: what you typed still stands here. Reload to see the other version.";
    case "family-gone":
      return "That family is no longer on record. Choose another, or name a new one.";
    case "name-taken":
      return `There is a food called “${problem.name}” already. Give this one another name, or merge the two on the other's page.`;
  }
}

function foodOf(id: string, family: string, input: FoodInput, before: Food | undefined): Food {
  const { pantryDays, pantryOpenedDays, fridgeDays, fridgeOpenedDays } = input;
  const { cutDays, preparedDays, freezerDays } = input;
  return Food.parse({
    id,
    family,
    ...{ name: input.name, group: input.group, form: input.form, holding: input.holding },
    aliases: input.aliases.filter((alias) => alias !== input.name),
    parts: [...new Set([input.part, ...input.otherParts])],
    allergens: input.allergens,
    // What it surely holds needs no "check the label" as well.
    maybeAllergens: input.maybe.filter((allergen) => !input.allergens.includes(allergen)),
    traits: input.traits,
    colours: [...new Set([input.colour, ...input.otherColours])],
    ...{ motifs: input.motifs, pattern: input.pattern, sliceable: input.sliceable },
    seasonMonths:
      input.months.length === 0 || input.months.length === 12
        ? null
        : [...new Set(input.months)].sort((one, other) => one - other),
    shelf: {
      ...{ pantryDays, pantryOpenedDays, fridgeDays, fridgeOpenedDays },
      ...{ cutDays, preparedDays, freezerDays },
    },
    yieldFactor: input.yieldFactor,
    servingGrams: input.servingGrams,
    gramsPerCup: input.gramsPerCup,
    unitWeights: input.unitWeights,
    countUnit: input.countUnit || null,
    servingCents: input.servingMoney ?? 0,
    prepSteps: before?.prepSteps ?? [],
    restDays: input.restDays,
    isStaple: input.isStaple,
  });
}

async function findNamesake(
  tx: Db,
  input: FoodInput,
): Promise<{ readonly id: string; readonly name: string } | undefined> {
  const rows = await tx.$queryRaw<readonly { readonly id: string; readonly name: string }[]>`
    SELECT "id", "name" FROM "Food"
    WHERE lower("name") = lower(${input.name}) AND "id" <> ${input.id} AND "mergedIntoId" IS NULL`;
  return rows[0];
}

/** The id of the chosen family, or of a new one by the typed name; undefined when it is gone. */
async function familyFor(tx: Db, input: FoodInput): Promise<string | undefined> {
  if (input.newFamily === "") {
    const known = await tx.family.count({ where: { id: input.familyId } });
    return known === 1 ? input.familyId : undefined;
  }
  const id = slugOf(input.newFamily) || "family";
  const group: FoodGroup = input.group;
  await tx.family.upsert({
    where: { id },
    create: { id, name: input.newFamily, group },
    update: {},
  });
  return id;
}

/** Words that stand in addresses beside the foods. */
const NOT_IDS = ["new", "tricks", "find"];

async function freeId(tx: Db, name: string): Promise<string> {
  const slug = slugOf(name) || "food";
  const base = NOT_IDS.includes(slug) ? `${slug}-food` : slug;
  for (let turn = 1; ; turn += 1) {
    const id = turn === 1 ? base : `${base}-${turn}`;
    if ((await tx.food.count({ where: { id } })) === 0) return id;
  }
}

/** Aliases that stay keep where they came from; new ones are the user's. */
async function saveAliases(tx: Db, foodId: string, aliases: readonly string[]): Promise<void> {
  await tx.foodAlias.deleteMany({ where: { foodId, name: { notIn: [...aliases] } } });
  const rows = await tx.foodAlias.findMany({ where: { foodId }, select: { name: true } });
  const known = new Set(rows.map(({ name }) => name));
  await tx.foodAlias.createMany({
    data: aliases
      .filter((name) => !known.has(name))
      .map((name) => ({ foodId, name, origin: "user" })),
  });
}
