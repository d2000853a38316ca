"use server";

import { redirect } from "next/navigation";
import { requestContext } from "#app/_server/context.ts";
import { refused, invalid, type FormState } from "#app/_forms/form-state.ts";
import {
  changeProposal,
  describeProposalProblem,
} from "#lib/use-cases/proposal/change-proposal.ts";
import { ChangeProposalInput, stepOfForm } from "#lib/use-cases/proposal/change-proposal.input.ts";

/**
 * Public endpoint: trusts nothing it is handed. One step on the desk, sent by a plain form, so that it
 * works without script; a taken proposal opens the slate.
 */
export async function changeProposalAction(
  _: FormState | null,
  form: FormData,
): Promise<FormState> {
  const parsed = ChangeProposalInput.safeParse(stepOfForm(form));
  if (!parsed.success) return invalid(parsed.error);
  const outcome = await changeProposal(await requestContext(), parsed.data);
  if (!outcome.ok) return refused(describeProposalProblem(outcome.problem));
  const month = parsed.data.month.slice(0, 7);
  if (parsed.data.step === "take") redirect(`/slate/${month}`);
  redirect(`/slate/propose/${month}`);
}
