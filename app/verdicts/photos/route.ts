import { z } from "zod";
import { requestContext } from "#app/_server/context.ts";
import { photosFolder } from "#app/_server/places.ts";
import { addPhoto, describePhotoProblem } from "#lib/use-cases/photos/photos.ts";

/** A 20 MB photo and its form. */
const BODY_BYTES_MAX = 21 * 1024 * 1024;

const Names = z.object({
  id: z.uuid().transform((id) => id.toLowerCase()),
  lunchId: z.string().min(1).max(60),
});

/**
 * Public endpoint: trusts nothing it is handed. Takes one photo of a lunch as a form with a file; sent
 * twice under its id, it is kept once.
 */
export async function POST(request: Request): Promise<Response> {
  if (Number(request.headers.get("content-length") ?? 0) > BODY_BYTES_MAX)
    return problem("This file is over 20 MB. Send a smaller one.", 413);
  const form = await request.formData().catch(() => undefined);
  const photo = form?.get("photo");
  const names = Names.safeParse({ id: form?.get("id"), lunchId: form?.get("lunchId") });
  if (!(photo instanceof File) || !names.success) return problem("This is no photo of ours.", 400);
  const outcome = await addPhoto(await requestContext(), photosFolder(), {
    ...names.data,
    bytes: Buffer.from(await photo.arrayBuffer()),
    keepOriginal: form?.get("keepOriginal") === "on",
  });
  if (!outcome.ok) return problem(describePhotoProblem(outcome.problem), 422);
  return Response.json({ photo: outcome.value ?? null });
}

function problem(message: string, status: number): Response {
  return Response.json({ message }, { status });
}
