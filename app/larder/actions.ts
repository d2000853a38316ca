"use server";

import { refresh } from "next/cache";
import { invalid, refused, saved, type FormState } from "#app/_forms/form-state.ts";
import { requestContext } from "#app/_server/context.ts";
import { FoodInput } from "#lib/use-cases/larder/food.input.ts";
import {
  describeMergeProblem,
  mergeFoods,
  MergeFoodsInput,
  undoMerge,
  UndoMergeInput,
} from "#lib/use-cases/larder/merge-foods.ts";
import { ProductInput } from "#lib/use-cases/larder/product.input.ts";
import { describeRecallProblem, recall, RecallInput } from "#lib/use-cases/larder/recall.ts";
import { describeRetireProblem, retire, RetireInput } from "#lib/use-cases/larder/retire.ts";
import { FamilyInput } from "#lib/use-cases/larder/family.input.ts";
import { describeSaveFamilyProblem, saveFamily } from "#lib/use-cases/larder/save-family.ts";
import { describeSaveFoodProblem, saveFood } from "#lib/use-cases/larder/save-food.ts";
import { describeSaveProductProblem, saveProduct } from "#lib/use-cases/larder/save-product.ts";
import { describeSaveStepsProblem, saveSteps } from "#lib/use-cases/larder/save-steps.ts";
import { StepsInput } from "#lib/use-cases/larder/steps.input.ts";
import { describeSaveTrickProblem, saveTrick } from "#lib/use-cases/larder/save-trick.ts";
import { TrickInput } from "#lib/use-cases/larder/trick.input.ts";

/** Public endpoint: trusts nothing it is handed. */
export async function saveFoodAction(input: unknown): Promise<FormState> {
  const parsed = FoodInput.safeParse(input);
  if (!parsed.success) return invalid(parsed.error);
  const outcome = await saveFood(await requestContext(), parsed.data);
  if (!outcome.ok) {
    const message = describeSaveFoodProblem(outcome.problem);
    if (outcome.problem.kind === "name-taken")
      return { kind: "invalid", fields: { name: message } };
    return refused(message);
  }
  refresh();
  return { kind: "saved", href: `/larder/${outcome.value}` };
}

/** Public endpoint: trusts nothing it is handed. */
export async function saveStepsAction(input: unknown): Promise<FormState> {
  const parsed = StepsInput.safeParse(input);
  if (!parsed.success) return invalid(parsed.error);
  const outcome = await saveSteps(await requestContext(), parsed.data);
  if (!outcome.ok) return refused(describeSaveStepsProblem(outcome.problem));
  refresh();
  return saved;
}

/** Public endpoint: trusts nothing it is handed. */
export async function saveFamilyAction(input: unknown): Promise<FormState> {
  const parsed = FamilyInput.safeParse(input);
  if (!parsed.success) return invalid(parsed.error);
  const outcome = await saveFamily(await requestContext(), parsed.data);
  if (!outcome.ok) return refused(describeSaveFamilyProblem(outcome.problem));
  refresh();
  return saved;
}

/** Public endpoint: trusts nothing it is handed. */
export async function saveProductAction(input: unknown): Promise<FormState> {
  const parsed = ProductInput.safeParse(input);
  if (!parsed.success) return invalid(parsed.error);
  const outcome = await saveProduct(await requestContext(), parsed.data);
  if (!outcome.ok) return refused(describeSaveProductProblem(outcome.problem));
  refresh();
  return saved;
}

/** Public endpoint: trusts nothing it is handed. */
export async function saveTrickAction(input: unknown): Promise<FormState> {
  const parsed = TrickInput.safeParse(input);
  if (!parsed.success) return invalid(parsed.error);
  const outcome = await saveTrick(await requestContext(), parsed.data);
  if (!outcome.ok) {
    const message = describeSaveTrickProblem(outcome.problem);
    if (outcome.problem.kind === "name-taken")
      return { kind: "invalid", fields: { name: message } };
    return refused(message);
  }
  return { kind: "saved", href: "/larder/tricks" };
}

/** Public endpoint: trusts nothing it is handed. */
export async function retireAction(input: unknown): Promise<FormState> {
  const parsed = RetireInput.safeParse(input);
  if (!parsed.success) return invalid(parsed.error);
  const outcome = await retire(await requestContext(), parsed.data);
  if (!outcome.ok) return refused(describeRetireProblem(outcome.problem));
  refresh();
  return saved;
}

/** Public endpoint: trusts nothing it is handed. */
export async function recallAction(input: unknown): Promise<FormState> {
  const parsed = RecallInput.safeParse(input);
  if (!parsed.success) return invalid(parsed.error);
  const outcome = await recall(await requestContext(), parsed.data);
  if (!outcome.ok) return refused(describeRecallProblem(outcome.problem));
  refresh();
  return saved;
}

/** Public endpoint: trusts nothing it is handed. */
export async function mergeFoodsAction(input: unknown): Promise<FormState> {
  const parsed = MergeFoodsInput.safeParse(input);
  if (!parsed.success) return invalid(parsed.error);
  const outcome = await mergeFoods(await requestContext(), parsed.data);
  if (!outcome.ok) return refused(describeMergeProblem(outcome.problem));
  return { kind: "saved", href: `/larder/${parsed.data.into}` };
}

/** Public endpoint: trusts nothing it is handed. */
export async function undoMergeAction(input: unknown): Promise<FormState> {
  const parsed = UndoMergeInput.safeParse(input);
  if (!parsed.success) return invalid(parsed.error);
  const outcome = await undoMerge(await requestContext(), parsed.data.changeId);
  if (!outcome.ok) return refused(describeMergeProblem(outcome.problem));
  refresh();
  return saved;
}
