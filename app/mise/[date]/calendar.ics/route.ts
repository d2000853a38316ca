import { Day } from "#lib/calendar/index.ts";
import { loadDayCalendar } from "#lib/use-cases/load-kitchen-calendar.ts";
import { requestContext } from "#app/_server/context.ts";
import { machineZone } from "#app/_server/zone.ts";

/** One day's prep as a file for a calendar. */
export async function GET(
  _request: Request,
  { params }: RouteContext<"/mise/[date]/calendar.ics">,
): Promise<Response> {
  const date = Day.safeParse((await params).date);
  const text = date.success
    ? await loadDayCalendar(await requestContext(), date.data, machineZone())
    : undefined;
  if (text === undefined || !date.success)
    return new Response("No lunch is pencilled for this day.", { status: 404 });
  return new Response(text, {
    headers: {
      "content-type": "text/calendar; charset=utf-8",
      "content-disposition": `attachment; filename="mise-${date.data}.ics"`,
    },
  });
}
