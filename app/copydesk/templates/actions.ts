"use server";

import { refresh } from "next/cache";
import { invalid, refused, saved, type FormState } from "#app/_forms/form-state.ts";
import { requestContext } from "#app/_server/context.ts";
import { SaveTemplateInput, TemplateInput } from "#lib/use-cases/edit-template.input.ts";
import {
  describeTemplateProblem,
  previewTemplate,
  saveTemplate,
  type Preview,
} from "#lib/use-cases/edit-template.ts";

/** Public endpoint: trusts nothing it is handed. */
export async function previewTemplateAction(input: unknown): Promise<Preview> {
  const parsed = TemplateInput.safeParse(input);
  if (!parsed.success) {
    const message = parsed.error.issues[0]?.message ?? "This cannot be read.";
    return { kind: "problem", problem: { line: 1, message } };
  }
  return previewTemplate(await requestContext(), parsed.data);
}

/** Public endpoint: trusts nothing it is handed. */
export async function saveTemplateAction(input: unknown): Promise<FormState> {
  const parsed = SaveTemplateInput.safeParse(input);
  if (!parsed.success) return invalid(parsed.error);
  const outcome = await saveTemplate(await requestContext(), parsed.data);
  if (!outcome.ok) return refused(describeTemplateProblem(outcome.problem));
  refresh();
  return saved;
}
