import { requestContext } from "#app/_server/context.ts";
import { photosFolder } from "#app/_server/places.ts";
import { readPhoto } from "#lib/use-cases/photos/photos.ts";

const NAME = /^[0-9a-f-]{36}(-thumb)?\.jpg$/;

/** A photo or its thumbnail by name; only what is on record, never a path. */
export async function GET(
  _: Request,
  { params }: RouteContext<"/photos/[file]">,
): Promise<Response> {
  const { file } = await params;
  const bytes = NAME.test(file)
    ? await readPhoto(await requestContext(), photosFolder(), file)
    : undefined;
  if (!bytes) return new Response("No such photo.", { status: 404 });
  const headers = { "Content-Type": "image/jpeg", "Cache-Control": "private, max-age=86400" };
  return new Response(new Uint8Array(bytes), { headers });
}
