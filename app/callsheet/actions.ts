"use server";

import { refresh } from "next/cache";
import { invalid, refused, saved, type FormState } from "#app/_forms/form-state.ts";
import { requestContext } from "#app/_server/context.ts";
import { describePackProblem, packLunch, PackLunchInput } from "#lib/use-cases/pack-lunch.ts";
import { StepInLunchInput } from "#lib/use-cases/step-in-lunch.input.ts";
import { describeStepInLunchProblem, stepInLunch } from "#lib/use-cases/step-in-lunch.ts";
import { describeUndoSwapProblem, undoSwap, UndoSwapInput } from "#lib/use-cases/undo-swap.ts";
import { describeSwapProblem, swapItem, SwapItemInput } from "#lib/use-cases/swap-item.ts";

/** Public endpoint: trusts nothing it is handed. */
export async function packLunchAction(input: unknown): Promise<FormState> {
  const parsed = PackLunchInput.safeParse(input);
  if (!parsed.success) return invalid(parsed.error);
  const outcome = await packLunch(await requestContext(), parsed.data);
  if (!outcome.ok) return refused(describePackProblem(outcome.problem));
  refresh();
  return saved;
}

/** Public endpoint: trusts nothing it is handed. */
export async function swapItemAction(input: unknown): Promise<FormState> {
  const parsed = SwapItemInput.safeParse(input);
  if (!parsed.success) return invalid(parsed.error);
  const outcome = await swapItem(await requestContext(), parsed.data);
  if (!outcome.ok) return refused(describeSwapProblem(outcome.problem));
  refresh();
  return saved;
}

/** Public endpoint: trusts nothing it is handed. */
export async function stepInLunchAction(input: unknown): Promise<FormState> {
  const parsed = StepInLunchInput.safeParse(input);
  if (!parsed.success) return invalid(parsed.error);
  const outcome = await stepInLunch(await requestContext(), parsed.data);
  if (!outcome.ok) return refused(describeStepInLunchProblem(outcome.problem));
  refresh();
  return saved;
}

/** Public endpoint: trusts nothing it is handed. */
export async function undoSwapAction(input: unknown): Promise<FormState> {
  const parsed = UndoSwapInput.safeParse(input);
  if (!parsed.success) return invalid(parsed.error);
  const outcome = await undoSwap(await requestContext(), parsed.data);
  if (!outcome.ok) return refused(describeUndoSwapProblem(outcome.problem));
  refresh();
  return saved;
}
