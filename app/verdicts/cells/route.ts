import { requestContext } from "#app/_server/context.ts";
import { Day } from "#lib/calendar/index.ts";
import { loadVerdictCells } from "#lib/use-cases/verdict-cells.ts";

/** The verdicts of a day as they stand, for a phone that comes back to the page. */
export async function GET(request: Request): Promise<Response> {
  const date = Day.safeParse(new URL(request.url).searchParams.get("date"));
  if (!date.success) return Response.json({ message: "Which day?" }, { status: 400 });
  return Response.json({ cells: await loadVerdictCells(await requestContext(), date.data) });
}
