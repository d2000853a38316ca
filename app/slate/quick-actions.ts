"use server";

import { invalid, refused, type FormState } from "#app/_forms/form-state.ts";
import { requestContext } from "#app/_server/context.ts";
import { QuickLineInput, TeachAliasInput } from "#lib/use-cases/larder/quick-line.input.ts";
import { readQuickLine, type QuickProposal } from "#lib/use-cases/larder/read-quick-line.ts";
import { describeTeachProblem, teachAlias } from "#lib/use-cases/larder/teach-alias.ts";

type Failed = Exclude<FormState, { kind: "saved" }>;

/** Public endpoint: trusts nothing it is handed. Reads only. */
export async function readQuickLineAction(
  input: unknown,
): Promise<Failed | { readonly kind: "read"; readonly items: readonly QuickProposal[] }> {
  const parsed = QuickLineInput.safeParse(input);
  if (!parsed.success) return invalid(parsed.error);
  return { kind: "read", items: await readQuickLine(await requestContext(), parsed.data) };
}

/** Public endpoint: trusts nothing it is handed. */
export async function teachAliasAction(
  input: unknown,
): Promise<Failed | { readonly kind: "taught"; readonly alias: string | null }> {
  const parsed = TeachAliasInput.safeParse(input);
  if (!parsed.success) return invalid(parsed.error);
  const outcome = await teachAlias(await requestContext(), parsed.data);
  if (!outcome.ok) return refused(describeTeachProblem(outcome.problem));
  return { kind: "taught", alias: outcome.value };
}
