"use server";

import { refresh } from "next/cache";
import { z } from "zod";
import { invalid, refused, saved, type FormState } from "#app/_forms/form-state.ts";
import { requestContext } from "#app/_server/context.ts";
import { photosFolder } from "#app/_server/places.ts";
import { removePhoto } from "#lib/use-cases/photos/photos.ts";
import { SaveDayFactsInput } from "#lib/use-cases/save-day-facts.input.ts";
import { describeFactsProblem, saveDayFacts } from "#lib/use-cases/save-day-facts.ts";

/** Public endpoint: trusts nothing it is handed. */
export async function saveDayFactsAction(input: unknown): Promise<FormState> {
  const parsed = SaveDayFactsInput.safeParse(input);
  if (!parsed.success) return invalid(parsed.error);
  const outcome = await saveDayFacts(await requestContext(), parsed.data);
  if (!outcome.ok) return refused(describeFactsProblem(outcome.problem));
  refresh();
  return saved;
}

const PhotoId = z.uuid();

/** Public endpoint: trusts nothing it is handed. Removing twice changes nothing. */
export async function removePhotoAction(input: unknown): Promise<FormState> {
  const parsed = PhotoId.safeParse(input);
  if (!parsed.success) return invalid(parsed.error);
  await removePhoto(await requestContext(), photosFolder(), parsed.data);
  refresh();
  return saved;
}
