"use server";

import { refresh } from "next/cache";
import { invalid, refused, saved, type FormState } from "#app/_forms/form-state.ts";
import { requestContext } from "#app/_server/context.ts";
import {
  PieceInput,
  SaveDraftInput,
  SettleFindingInput,
  UpdateDraftInput,
} from "#lib/use-cases/save-draft.input.ts";
import {
  describeDraftProblem,
  dropDraft,
  keepDraft,
  saveDraft,
  settleFinding,
  updateDraft,
} from "#lib/use-cases/save-draft.ts";

/** Public endpoint: trusts nothing it is handed. */
export async function saveDraftAction(input: unknown): Promise<FormState> {
  const parsed = SaveDraftInput.safeParse(input);
  if (!parsed.success) return invalid(parsed.error);
  return answer(await saveDraft(await requestContext(), parsed.data));
}

/** Public endpoint: trusts nothing it is handed. */
export async function keepDraftAction(input: unknown): Promise<FormState> {
  const parsed = PieceInput.safeParse(input);
  if (!parsed.success) return invalid(parsed.error);
  return answer(await keepDraft(await requestContext(), parsed.data));
}

/** Public endpoint: trusts nothing it is handed. */
export async function dropDraftAction(input: unknown): Promise<FormState> {
  const parsed = PieceInput.safeParse(input);
  if (!parsed.success) return invalid(parsed.error);
  return answer(await dropDraft(await requestContext(), parsed.data));
}

/** Public endpoint: trusts nothing it is handed. */
export async function settleFindingAction(input: unknown): Promise<FormState> {
  const parsed = SettleFindingInput.safeParse(input);
  if (!parsed.success) return invalid(parsed.error);
  return answer(await settleFinding(await requestContext(), parsed.data));
}

/** Public endpoint: trusts nothing it is handed. */
export async function updateDraftAction(input: unknown): Promise<FormState> {
  const parsed = UpdateDraftInput.safeParse(input);
  if (!parsed.success) return invalid(parsed.error);
  return answer(await updateDraft(await requestContext(), parsed.data));
}

function answer(outcome: Awaited<ReturnType<typeof saveDraft>>): FormState {
  if (!outcome.ok) return refused(describeDraftProblem(outcome.problem));
  refresh();
  return saved;
}
