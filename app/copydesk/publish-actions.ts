"use server";

import { refresh } from "next/cache";
import { invalid, refused, saved, type FormState } from "#app/_forms/form-state.ts";
import { requestContext } from "#app/_server/context.ts";
import { KeepPromiseInput, PublishInput } from "#lib/use-cases/publish-episode.input.ts";
import {
  describePublishProblem,
  keepPromise,
  publishEpisode,
  unpublishEpisode,
} from "#lib/use-cases/publish-episode.ts";

/** Public endpoint: trusts nothing it is handed. */
export async function publishAction(input: unknown): Promise<FormState> {
  const parsed = PublishInput.safeParse(input);
  if (!parsed.success) return invalid(parsed.error);
  return answer(await publishEpisode(await requestContext(), parsed.data));
}

/** Public endpoint: trusts nothing it is handed. */
export async function unpublishAction(input: unknown): Promise<FormState> {
  const parsed = PublishInput.pick({ monday: true, revision: true }).safeParse(input);
  if (!parsed.success) return invalid(parsed.error);
  return answer(await unpublishEpisode(await requestContext(), parsed.data));
}

/** Public endpoint: trusts nothing it is handed. */
export async function keepPromiseAction(input: unknown): Promise<FormState> {
  const parsed = KeepPromiseInput.safeParse(input);
  if (!parsed.success) return invalid(parsed.error);
  return answer(await keepPromise(await requestContext(), parsed.data));
}

function answer(outcome: Awaited<ReturnType<typeof publishEpisode>>): FormState {
  if (!outcome.ok) return refused(describePublishProblem(outcome.problem));
  refresh();
  return saved;
}
