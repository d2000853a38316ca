"use server";

import { answerSheet } from "#app/bible/answer.ts";
import type { FormState } from "#app/_forms/form-state.ts";
import { RetireInput } from "#lib/use-cases/bible/child-sheet.input.ts";
import { addIdea, settleIdea } from "#lib/use-cases/themes/ideas.ts";
import { IdeaInput, SettleIdeaInput, ThemeInput } from "#lib/use-cases/themes/theme.input.ts";
import { retireTheme, saveTheme } from "#lib/use-cases/themes/theme-sheet.ts";

/** Public endpoint, like all below: trusts nothing it is handed. */
export async function saveThemeAction(input: unknown): Promise<FormState> {
  return answerSheet(ThemeInput, input, saveTheme, "/slate/themes");
}

export async function retireThemeAction(input: unknown): Promise<FormState> {
  return answerSheet(RetireInput, input, retireTheme);
}

export async function addIdeaAction(input: unknown): Promise<FormState> {
  return answerSheet(IdeaInput, input, addIdea);
}

export async function settleIdeaAction(input: unknown): Promise<FormState> {
  return answerSheet(SettleIdeaInput, input, settleIdea);
}
