"use server";

import { refresh } from "next/cache";
import { invalid, refused, saved, type FormState } from "#app/_forms/form-state.ts";
import { requestContext } from "#app/_server/context.ts";
import { KeepPostInput, PublishPostInput } from "#lib/use-cases/keep-board-post.input.ts";
import {
  describePostProblem,
  keepBoardPost,
  publishBoardPost,
} from "#lib/use-cases/keep-board-post.ts";

/** Public endpoint: trusts nothing it is handed. */
export async function keepPostAction(input: unknown): Promise<FormState> {
  const parsed = KeepPostInput.safeParse(input);
  if (!parsed.success) return invalid(parsed.error);
  const outcome = await keepBoardPost(await requestContext(), parsed.data);
  if (!outcome.ok) return refused(describePostProblem(outcome.problem));
  return { kind: "saved", href: `/copydesk/board/${outcome.value}` };
}

/** Public endpoint: trusts nothing it is handed. */
export async function publishPostAction(input: unknown): Promise<FormState> {
  const parsed = PublishPostInput.safeParse(input);
  if (!parsed.success) return invalid(parsed.error);
  const outcome = await publishBoardPost(await requestContext(), parsed.data);
  if (!outcome.ok) return refused(describePostProblem(outcome.problem));
  refresh();
  return saved;
}
