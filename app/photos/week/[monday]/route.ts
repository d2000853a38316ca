import { requestContext } from "#app/_server/context.ts";
import { photosFolder } from "#app/_server/places.ts";
import { Day, mondayOf } from "#lib/calendar/index.ts";
import { weekPicture } from "#lib/use-cases/photos/photos.ts";

/** The photos of a week as a contact sheet, or as a square collage with `?shape=square`. */
export async function GET(
  request: Request,
  { params }: RouteContext<"/photos/week/[monday]">,
): Promise<Response> {
  const day = Day.safeParse((await params).monday);
  if (!day.success) return new Response("Which week?", { status: 404 });
  const asked = new URL(request.url).searchParams.get("shape");
  const shape = asked === "square" ? ("square" as const) : ("sheet" as const);
  const monday = mondayOf(day.data);
  const bytes = await weekPicture(await requestContext(), photosFolder(), { monday, shape });
  if (!bytes) return new Response("No photo in this week yet.", { status: 404 });
  const headers = {
    "Content-Type": "image/jpeg",
    "Cache-Control": "no-store",
    "Content-Disposition": `inline; filename="${shape}.jpg"`,
  };
  return new Response(new Uint8Array(bytes), { headers });
}
