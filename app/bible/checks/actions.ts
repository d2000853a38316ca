"use server";

import type { FormState } from "#app/_forms/form-state.ts";
import { saveChecksSheet } from "#lib/use-cases/bible/checks-sheet.ts";
import { ChecksInput } from "#lib/use-cases/bible/checks-sheet.input.ts";
import { answerSheet } from "../answer.ts";

/** Public endpoint: trusts nothing it is handed. */
export async function saveChecksAction(input: unknown): Promise<FormState> {
  return answerSheet(ChecksInput, input, saveChecksSheet, "/bible#checks");
}
