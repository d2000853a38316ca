import { requestContext } from "#app/_server/context.ts";
import { findAnything } from "#lib/use-cases/larder/find-anything.ts";

/** What goes by the name typed so far, for the field at the top of every page; asked at each keystroke. */
export async function GET(request: Request): Promise<Response> {
  const typed = new URL(request.url).searchParams.get("q") ?? "";
  const hits = await findAnything(await requestContext(), typed.slice(0, 200));
  const answers = hits.map(({ kind, id, name, words }) => ({ kind, id, name, words }));
  return Response.json({ answers }, { headers: { "Cache-Control": "no-store" } });
}
