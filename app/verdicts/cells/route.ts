import { requestContext } from "#app/_server/context.ts";
import { Day } from "#lib/calendar/index.ts";
import { loadDayFacts } from "#lib/use-cases/keep-day-facts.ts";
import { loadVerdictCells } from "#lib/use-cases/verdict-cells.ts";

/** The verdicts and facts of a day as they stand, for a phone that comes back to the page. */
export async function GET(request: Request): Promise<Response> {
  const date = Day.safeParse(new URL(request.url).searchParams.get("date"));
  if (!date.success) return Response.json({ message: "Which day?" }, { status: 400 });
  const context = await requestContext();
  const [cells, facts] = await Promise.all([
    loadVerdictCells(context, date.data),
    loadDayFacts(context, date.data),
  ]);
  return Response.json({ cells, facts });
}
