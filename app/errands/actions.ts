"use server";

import { refresh } from "next/cache";
import { z } from "zod";
import { invalid, refused, saved, type FormState } from "#app/_forms/form-state.ts";
import { requestContext } from "#app/_server/context.ts";
import { Day } from "#lib/calendar/index.ts";
import { ChangeRunsInput } from "#lib/use-cases/errands/change-runs.input.ts";
import { changeRuns, describeChangeRunsProblem } from "#lib/use-cases/errands/change-runs.ts";
import { planAnew } from "#lib/use-cases/errands/plan-anew.ts";
import { sayWeight, SayWeightInput } from "#lib/use-cases/errands/say-weight.ts";
import {
  describeStandInProblem,
  FindStandInsInput,
  listStandIns,
  putStandIn,
  StandInInput,
} from "#lib/use-cases/errands/stand-in.ts";
import { TickLinesInput } from "#lib/use-cases/errands/tick-lines.input.ts";
import { tickLines, type Ticked } from "#lib/use-cases/errands/tick-lines.ts";

/** What all devices know after a round of ticks. */
type TickState = ({ readonly kind: "ticked" } & Ticked) | Exclude<FormState, { kind: "saved" }>;

/** Public endpoint: trusts nothing it is handed. */
export async function tickLinesAction(input: unknown): Promise<TickState> {
  const parsed = TickLinesInput.safeParse(input);
  if (!parsed.success) return invalid(parsed.error);
  const ticked = await tickLines(await requestContext(), parsed.data);
  refresh();
  return { kind: "ticked", ...ticked };
}

/** Public endpoint: trusts nothing it is handed. */
export async function changeRunsAction(input: unknown): Promise<FormState> {
  const parsed = ChangeRunsInput.safeParse(input);
  if (!parsed.success) return invalid(parsed.error);
  const outcome = await changeRuns(await requestContext(), parsed.data);
  if (!outcome.ok) return refused(describeChangeRunsProblem(outcome.problem));
  refresh();
  return saved;
}

/** Public endpoint: trusts nothing it is handed. */
export async function planAnewAction(input: unknown): Promise<FormState> {
  const parsed = z.object({ monday: Day }).safeParse(input);
  if (!parsed.success) return invalid(parsed.error);
  await planAnew(await requestContext(), parsed.data.monday);
  refresh();
  return saved;
}

/** Public endpoint: trusts nothing it is handed. What could be used instead; nothing for a bad question. */
export async function findStandInsAction(
  input: unknown,
): Promise<readonly { readonly id: string; readonly name: string }[]> {
  const parsed = FindStandInsInput.safeParse(input);
  return parsed.success ? listStandIns(await requestContext(), parsed.data) : [];
}

/** Public endpoint: trusts nothing it is handed. */
export async function standInAction(input: unknown): Promise<FormState> {
  const parsed = StandInInput.safeParse(input);
  if (!parsed.success) return invalid(parsed.error);
  const outcome = await putStandIn(await requestContext(), parsed.data);
  if (!outcome.ok) return refused(describeStandInProblem(outcome.problem));
  refresh();
  return saved;
}

/** Public endpoint: trusts nothing it is handed. */
export async function sayWeightAction(input: unknown): Promise<FormState> {
  const parsed = SayWeightInput.safeParse(input);
  if (!parsed.success) return invalid(parsed.error);
  const outcome = await sayWeight(await requestContext(), parsed.data);
  if (!outcome.ok) return refused("That food is no longer in the Larder.");
  refresh();
  return saved;
}
