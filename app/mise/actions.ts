"use server";

import { refresh } from "next/cache";
import { invalid, refused, saved, type FormState } from "#app/_forms/form-state.ts";
import { requestContext } from "#app/_server/context.ts";
import { describeTickProblem, tickPrepStep } from "#lib/use-cases/tick-step.ts";
import { TickStepInput } from "#lib/use-cases/tick-step.input.ts";

/** Public endpoint: trusts nothing it is handed. */
export async function tickStepAction(input: unknown): Promise<FormState> {
  const parsed = TickStepInput.safeParse(input);
  if (!parsed.success) return invalid(parsed.error);
  const outcome = await tickPrepStep(await requestContext(), parsed.data);
  if (!outcome.ok) return refused(describeTickProblem(outcome.problem));
  refresh();
  return saved;
}
