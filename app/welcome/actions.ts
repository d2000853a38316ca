"use server";

import { invalid, refused, type FormState } from "#app/_forms/form-state.ts";
import { requestContext } from "#app/_server/context.ts";
import { describeStartProblem, startSeries } from "#lib/use-cases/start-series.ts";
import { StartSeriesInput } from "#lib/use-cases/start-series.input.ts";

/** Public endpoint: trusts nothing it is handed. */
export async function startSeriesAction(input: unknown): Promise<FormState> {
  const parsed = StartSeriesInput.safeParse(input);
  if (!parsed.success) return invalid(parsed.error);
  const outcome = await startSeries(await requestContext(), parsed.data);
  if (!outcome.ok) return refused(describeStartProblem(outcome.problem));
  return { kind: "saved", href: "/slate" };
}
