import { requestContext } from "#app/_server/context.ts";
import { exportPast } from "#lib/use-cases/past/export-past.ts";

/** Every packed lunch as comma-separated values (RFC 4180), to keep or to read in again. */
export async function GET(): Promise<Response> {
  const context = await requestContext();
  return new Response(await exportPast(context), {
    headers: {
      "Content-Type": "text/csv; charset=utf-8; header=present",
      "Content-Disposition": `attachment; filename="lunches-${context.today}.csv"`,
      "Cache-Control": "no-store",
    },
  });
}
