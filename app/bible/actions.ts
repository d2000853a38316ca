"use server";

import { invalid, refused, saved, type FormState } from "#app/_forms/form-state.ts";
import { requestContext } from "#app/_server/context.ts";
import { editSeries } from "#lib/use-cases/edit-series.ts";
import { EditSeriesInput } from "#lib/use-cases/edit-series.input.ts";

/** Public endpoint: trusts nothing it is handed. */
export async function editSeriesAction(input: unknown): Promise<FormState> {
  const parsed = EditSeriesInput.safeParse(input);
  if (!parsed.success) return invalid(parsed.error);
  const outcome = await editSeries(await requestContext(), parsed.data);
  return outcome.ok ? saved : refused("There is no series yet. Start one first.");
}
