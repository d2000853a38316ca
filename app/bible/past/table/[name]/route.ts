import { requestContext } from "#app/_server/context.ts";
import { exportTable } from "#lib/use-cases/past/export-table.ts";

/** One record table as comma-separated values, private names included: to keep at home. */
export async function GET(
  _request: Request,
  { params }: RouteContext<"/bible/past/table/[name]">,
): Promise<Response> {
  const { name } = await params;
  const table = await exportTable(await requestContext(), name);
  if (table === undefined) return new Response("There is no such table.\n", { status: 404 });
  return new Response(table, {
    headers: {
      "Content-Type": "text/csv; charset=utf-8; header=present",
      "Content-Disposition": `attachment; filename="${name}.csv"`,
      "Cache-Control": "no-store",
    },
  });
}
