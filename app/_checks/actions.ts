"use server";

import { refresh } from "next/cache";
import { invalid, refused, saved, type FormState } from "#app/_forms/form-state.ts";
import { requestContext } from "#app/_server/context.ts";
import { KeepFindingInput } from "#lib/use-cases/keep-finding.input.ts";
import { describeKeepProblem, keepFinding } from "#lib/use-cases/keep-finding.ts";

/** Public endpoint: trusts nothing it is handed. */
export async function keepFindingAction(input: unknown): Promise<FormState> {
  const parsed = KeepFindingInput.safeParse(input);
  if (!parsed.success) return invalid(parsed.error);
  const outcome = await keepFinding(await requestContext(), parsed.data);
  if (!outcome.ok) return refused(describeKeepProblem(outcome.problem));
  refresh();
  return saved;
}
