import { requestContext } from "#app/_server/context.ts";
import { exportWhole } from "#lib/use-cases/past/whole-series.ts";

/** The whole series as one file, private names included: to keep at home or to bring in elsewhere. */
export async function GET(): Promise<Response> {
  const context = await requestContext();
  return new Response(await exportWhole(context), {
    headers: {
      "Content-Type": "application/json; charset=utf-8",
      "Content-Disposition": `attachment; filename="series-${context.today}.json"`,
      "Cache-Control": "no-store",
    },
  });
}
