import { requestContext } from "#app/_server/context.ts";
import { photosFolder } from "#app/_server/places.ts";
import { addPhoto, describePhotoProblem } from "#lib/use-cases/photos/photos.ts";

/** A 20 MB photo and its form. */
const BODY_BYTES_MAX = 21 * 1024 * 1024;

/** Public endpoint: trusts nothing it is handed. Takes one photo of a lunch as a form with a file. */
export async function POST(request: Request): Promise<Response> {
  if (Number(request.headers.get("content-length") ?? 0) > BODY_BYTES_MAX)
    return problem("This file is over 20 MB. Send a smaller one.", 413);
  const form = await request.formData().catch(() => undefined);
  const photo = form?.get("photo");
  const lunchId = form?.get("lunchId");
  if (!(photo instanceof File) || typeof lunchId !== "string" || photo.size === 0)
    return problem("Choose a photo first.", 400);
  const outcome = await addPhoto(await requestContext(), photosFolder(), {
    lunchId: lunchId.slice(0, 60),
    bytes: Buffer.from(await photo.arrayBuffer()),
    keepOriginal: form?.get("keepOriginal") === "on",
  });
  if (!outcome.ok) return problem(describePhotoProblem(outcome.problem), 422);
  return Response.json({ photo: outcome.value });
}

function problem(message: string, status: number): Response {
  return Response.json({ message }, { status });
}
