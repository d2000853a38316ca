"use server";

import { refresh } from "next/cache";
import { z } from "zod";
import { invalid, saved, type FormState } from "#app/_forms/form-state.ts";
import { requestContext } from "#app/_server/context.ts";
import { photosFolder } from "#app/_server/places.ts";
import { removePhoto } from "#lib/use-cases/photos/photos.ts";

const PhotoId = z.uuid();

/** Public endpoint: trusts nothing it is handed. Removing twice changes nothing. */
export async function removePhotoAction(input: unknown): Promise<FormState> {
  const parsed = PhotoId.safeParse(input);
  if (!parsed.success) return invalid(parsed.error);
  await removePhoto(await requestContext(), photosFolder(), parsed.data);
  refresh();
  return saved;
}
