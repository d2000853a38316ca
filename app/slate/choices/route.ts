import { requestContext } from "#app/_server/context.ts";
import { listChoices } from "#lib/use-cases/list-choices.ts";

/** Foods and tricks for the composer, asked for once a page so that the page itself stays light. */
export async function GET(): Promise<Response> {
  return Response.json(await listChoices(await requestContext()), {
    headers: { "Cache-Control": "no-store" },
  });
}
