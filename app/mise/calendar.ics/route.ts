import { loadKitchenCalendar } from "#lib/use-cases/load-kitchen-calendar.ts";
import { requestContext } from "#app/_server/context.ts";
import { machineZone } from "#app/_server/zone.ts";

/** The feed that a calendar subscribes to: prep, doors and shopping days. */
export async function GET(): Promise<Response> {
  const text = await loadKitchenCalendar(await requestContext(), machineZone());
  return new Response(text, {
    headers: { "content-type": "text/calendar; charset=utf-8", "cache-control": "no-store" },
  });
}
