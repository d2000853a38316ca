"use server";

import path from "node:path";
import { refresh } from "next/cache";
import { invalid, refused, saved, type FormState } from "#app/_forms/form-state.ts";
import { requestContext } from "#app/_server/context.ts";
import { dataFolder } from "#app/_server/places.ts";
import { bringPast, describePastProblem, lookAtPast } from "#lib/use-cases/past/bring-past.ts";
import { PastInput, WholeInput } from "#lib/use-cases/past/past.input.ts";
import type { PastReport } from "#lib/use-cases/past/report-past.ts";
import { bringWhole, describeWholeProblem } from "#lib/use-cases/past/whole-series.ts";

export type PastAnswer =
  Exclude<FormState, { kind: "saved" }> | { readonly kind: "told"; readonly report: PastReport };

/** Public endpoint, like all below: trusts nothing it is handed. Writes nothing. */
export async function lookAtPastAction(input: unknown): Promise<PastAnswer> {
  const parsed = PastInput.safeParse(input);
  if (!parsed.success) return invalid(parsed.error);
  return { kind: "told", report: await lookAtPast(await requestContext(), parsed.data) };
}

export async function bringPastAction(input: unknown): Promise<PastAnswer> {
  const parsed = PastInput.safeParse(input);
  if (!parsed.success) return invalid(parsed.error);
  const outcome = await bringPast(await requestContext(), parsed.data);
  if (!outcome.ok) return refused(describePastProblem(outcome.problem));
  refresh();
  return { kind: "told", report: outcome.value };
}

export async function bringWholeAction(input: unknown): Promise<FormState> {
  const parsed = WholeInput.safeParse(input);
  if (!parsed.success) return invalid(parsed.error);
  const context = await requestContext();
  const stamp = context.now.toISOString().replaceAll(/[:.]/g, "-");
  const copyTo = path.join(/* turbopackIgnore: true */ dataFolder(), `before-${stamp}.db`);
  const outcome = await bringWhole(context, parsed.data.text, copyTo);
  if (!outcome.ok) return refused(describeWholeProblem(outcome.problem));
  refresh();
  return saved;
}
