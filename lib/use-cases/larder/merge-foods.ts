import { z } from "zod";
import { ok, refuse, type Result } from "#lib/base/index.ts";
import { ALLERGENS, FoodId, type Allergen, type Food } from "#lib/catalog/index.ts";
import {
  FoodFollowers,
  handBackFood,
  handOverFood,
  inTransaction,
  parseColumn,
  readFoodsById,
  readSchoolRules,
  schoolRuleColumns,
  type Db,
} from "#lib/db/index.ts";
import type { SchoolRule } from "#lib/safety/index.ts";
import type { Context } from "../context.ts";

/** Food `from` is a duplicate of food `into`. */
export const MergeFoodsInput = z.object({
  from: z.string().min(1).max(120),
  into: z.string().min(1, { error: "Choose the food it is a duplicate of." }).max(120),
});
export type MergeFoodsInput = z.infer<typeof MergeFoodsInput>;

export const UndoMergeInput = z.object({ changeId: z.string().min(1).max(60) });

export type MergeProblem = { readonly kind: "gone" | "same" };
export type UndoMergeProblem = { readonly kind: "nothing" | "merged-on" };

const SCOPE = "larder-merge";

/** What a merge did, as far as taking it back must know. */
const MergeUndo = z.object({
  from: z.string(),
  into: z.string(),
  followers: FoodFollowers,
  aliasIds: z.array(z.string()),
  /** Allergens of the duplicate that the other did not name: kept as "check the label". */
  addedMaybe: z.array(z.string()),
  /** The foods that school rules named before and after. */
  rules: z.array(z.object({ id: z.string(), before: z.array(FoodId), after: z.array(FoodId) })),
});

/**
 * Merges a duplicate into another food: its appearances, stock, products, avoidances and names follow.
 * An allergen only the duplicate named stays, as "check the label". Nothing is counted twice or lost.
 * It can be taken back. Returns the id of the change.
 */
export async function mergeFoods(
  { db, now }: Context,
  { from, into }: MergeFoodsInput,
): Promise<Result<string, MergeProblem>> {
  if (from === into) return refuse({ kind: "same" });
  return inTransaction(db, async (tx): Promise<Result<string, MergeProblem>> => {
    const rows = await tx.food.findMany({
      where: { id: { in: [from, into] }, mergedIntoId: null },
    });
    const foods = await readFoodsById(tx, [from, into]);
    const [duplicate, other] = [foods.get(from), foods.get(into)];
    if (rows.length !== 2 || !duplicate || !other) return refuse({ kind: "gone" });

    const followers = await handOverFood(tx, from, into);
    const aliasIds = await giveNames(tx, duplicate, other);
    const addedMaybe = allergensLost(duplicate, other);
    await tx.food.update({
      where: { id: into },
      data: {
        ...(addedMaybe.length > 0
          ? { maybeJson: JSON.stringify([...other.maybeAllergens, ...addedMaybe]) }
          : {}),
        editedAt: now,
        revision: { increment: 1 },
      },
    });
    await tx.food.update({
      where: { id: from },
      data: { mergedIntoId: into, revision: { increment: 1 } },
    });
    const rules = await renameInRules(tx, duplicate.id, other.id);
    const undo = { from, into, followers, aliasIds, addedMaybe, rules };
    const change = await tx.change.create({
      data: {
        scope: SCOPE,
        label: `${duplicate.name} merged into ${other.name}`,
        undoJson: JSON.stringify(undo),
        at: now,
      },
    });
    return ok(change.id);
  });
}

/**
 * Takes a merge back: what followed returns, as far as it still stands with the other food. What came
 * since stays where it is. Refuses while the other food is merged on into a third.
 */
export async function undoMerge(
  { db, now }: Context,
  changeId: string,
): Promise<Result<string, UndoMergeProblem>> {
  return inTransaction(db, async (tx): Promise<Result<string, UndoMergeProblem>> => {
    const change = await tx.change.findFirst({
      where: { id: changeId, scope: SCOPE, undoneAt: null },
    });
    if (!change) return refuse({ kind: "nothing" });
    const { from, into, followers, aliasIds, addedMaybe, rules } = parseColumn(
      MergeUndo,
      change.undoJson,
      "Change.undo",
    );
    const other = await tx.food.findUnique({ where: { id: into } });
    if (!other || other.mergedIntoId !== null) return refuse({ kind: "merged-on" });
    await handBackFood(tx, followers, from, into);
    await tx.foodAlias.deleteMany({ where: { id: { in: aliasIds } } });
    const maybe = parseColumn(z.array(z.string()), other.maybeJson, "Food.maybe");
    await tx.food.update({
      where: { id: into },
      data: {
        maybeJson: JSON.stringify(maybe.filter((one) => !addedMaybe.includes(one))),
        revision: { increment: 1 },
      },
    });
    await tx.food.update({
      where: { id: from },
      data: { mergedIntoId: null, revision: { increment: 1 } },
    });
    await restoreRules(tx, FoodId.parse(from), rules);
    await tx.change.update({ where: { id: change.id }, data: { undoneAt: now } });
    return ok(change.label);
  });
}

/** Merges into a food that can be taken back, latest first. */
export async function readMerges(
  db: Db,
  into: string,
): Promise<readonly { readonly changeId: string; readonly label: string }[]> {
  const changes = await db.change.findMany({
    where: { scope: SCOPE, undoneAt: null },
    orderBy: [{ at: "desc" }, { id: "desc" }],
  });
  return changes
    .filter(({ undoJson }) => parseColumn(MergeUndo, undoJson, "Change.undo").into === into)
    .map(({ id, label }) => ({ changeId: id, label }));
}

/** Allergens, certain or possible, of a duplicate that the other food does not speak of at all. */
function allergensLost(duplicate: Food, other: Food): Allergen[] {
  const said = new Set([...other.allergens, ...other.maybeAllergens]);
  const named = new Set([...duplicate.allergens, ...duplicate.maybeAllergens]);
  return ALLERGENS.filter((allergen) => named.has(allergen) && !said.has(allergen));
}

/** Words for a refusal to merge or to take a merge back. */
export function describeMergeProblem({ kind }: MergeProblem | UndoMergeProblem): string {
  switch (kind) {
    case "gone":
      return "One of the two foods is no longer on record, or merged already. Open the Larder again.";
    case "same":
      return "A food cannot be merged into itself. Choose another.";
    case "nothing":
      return "This merge was taken back already.";
    case "merged-on":
      return "The food it was merged into is itself merged into another. Take that merge back first.";
  }
}

/** The other food also answers to the duplicate's names; ids of the names it did not have. */
async function giveNames(tx: Db, duplicate: Food, other: Food): Promise<string[]> {
  const known = new Set([other.name, ...other.aliases].map((name) => name.toLowerCase()));
  const names = [...new Set([duplicate.name, ...duplicate.aliases])];
  const rows = await tx.foodAlias.createManyAndReturn({
    data: names
      .filter((name) => !known.has(name.toLowerCase()))
      .map((name) => ({ foodId: other.id, name, origin: "user" })),
    select: { id: true },
  });
  return rows.map(({ id }) => id);
}

/** School rules that name one food then name the other; what changed in them. */
async function renameInRules(
  tx: Db,
  from: FoodId,
  into: FoodId,
): Promise<z.infer<typeof MergeUndo>["rules"]> {
  const naming = (await readSchoolRules(tx)).filter(({ rule }) => rule.foods.includes(from));
  const rules = naming.map(({ id, rule }) => ({
    ...{ id, rule, before: rule.foods },
    after: [...new Set(rule.foods.map((food) => (food === from ? into : food)))],
  }));
  for (const { id, rule, after } of rules) await writeRule(tx, id, { ...rule, foods: after });
  return rules.map(({ id, before, after }) => ({ id, before, after }));
}

/** Puts rules back; one that was changed since names both foods, for that warns of neither too little. */
async function restoreRules(
  tx: Db,
  from: FoodId,
  changed: z.infer<typeof MergeUndo>["rules"],
): Promise<void> {
  for (const { id, rule } of await readSchoolRules(tx)) {
    const change = changed.find((one) => one.id === id);
    if (!change) continue;
    const isAsLeft = JSON.stringify(rule.foods) === JSON.stringify(change.after);
    const foods = isAsLeft ? change.before : [...new Set([...rule.foods, from])];
    await writeRule(tx, id, { ...rule, foods });
  }
}

async function writeRule(tx: Db, id: string, rule: SchoolRule): Promise<void> {
  await tx.schoolRule.update({ where: { id }, data: schoolRuleColumns(rule) });
}
