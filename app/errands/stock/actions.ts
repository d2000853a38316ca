"use server";

import { refresh } from "next/cache";
import { invalid, refused, saved, type FormState } from "#app/_forms/form-state.ts";
import { requestContext } from "#app/_server/context.ts";
import { ChangeStockInput, SaveParInput } from "#lib/use-cases/errands/change-stock.input.ts";
import {
  changeStock,
  describeChangeStockProblem,
  savePar,
} from "#lib/use-cases/errands/change-stock.ts";
import {
  describeSettleOwedProblem,
  settleOwedFood,
  SettleOwedInput,
} from "#lib/use-cases/errands/settle-owed.ts";

/** Public endpoint: trusts nothing it is handed. */
export async function changeStockAction(input: unknown): Promise<FormState> {
  const parsed = ChangeStockInput.safeParse(input);
  if (!parsed.success) return invalid(parsed.error);
  const outcome = await changeStock(await requestContext(), parsed.data);
  if (!outcome.ok) return refused(describeChangeStockProblem(outcome.problem));
  refresh();
  return saved;
}

/** Public endpoint: trusts nothing it is handed. */
export async function saveParAction(input: unknown): Promise<FormState> {
  const parsed = SaveParInput.safeParse(input);
  if (!parsed.success) return invalid(parsed.error);
  const outcome = await savePar(await requestContext(), parsed.data);
  if (!outcome.ok) return refused(describeChangeStockProblem(outcome.problem));
  refresh();
  return saved;
}

/** Public endpoint: trusts nothing it is handed. */
export async function settleOwedAction(input: unknown): Promise<FormState> {
  const parsed = SettleOwedInput.safeParse(input);
  if (!parsed.success) return invalid(parsed.error);
  const outcome = await settleOwedFood(await requestContext(), parsed.data);
  if (!outcome.ok) return refused(describeSettleOwedProblem(outcome.problem));
  refresh();
  return saved;
}
