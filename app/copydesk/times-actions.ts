"use server";

import { refresh } from "next/cache";
import { invalid, refused, saved, type FormState } from "#app/_forms/form-state.ts";
import { requestContext } from "#app/_server/context.ts";
import { MarkTimesInput } from "#lib/use-cases/mark-times.input.ts";
import { describeMarkProblem, markTimes } from "#lib/use-cases/mark-times.ts";

/** Public endpoint: trusts nothing it is handed. */
export async function markTimesAction(input: unknown): Promise<FormState> {
  const parsed = MarkTimesInput.safeParse(input);
  if (!parsed.success) return invalid(parsed.error);
  const outcome = await markTimes(await requestContext(), parsed.data);
  if (!outcome.ok) return refused(describeMarkProblem(outcome.problem));
  refresh();
  return saved;
}
