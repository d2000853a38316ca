"use server";

import { invalid, refused, type FormState } from "#app/_forms/form-state.ts";
import { requestContext } from "#app/_server/context.ts";
import { LogReactionInput } from "#lib/use-cases/log-reaction.input.ts";
import { describeLogProblem, logReaction } from "#lib/use-cases/log-reaction.ts";

/** Public endpoint: trusts nothing it is handed. Sent twice, an entry counts once. */
export async function logReactionAction(
  input: unknown,
): Promise<FormState | { readonly kind: "logged"; readonly revision: number }> {
  const parsed = LogReactionInput.safeParse(input);
  if (!parsed.success) return invalid(parsed.error);
  const outcome = await logReaction(await requestContext(), parsed.data);
  if (!outcome.ok) return refused(describeLogProblem(outcome.problem));
  return { kind: "logged", revision: outcome.value.revision };
}
