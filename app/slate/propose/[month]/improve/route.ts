import { Day } from "#lib/calendar/index.ts";
import { improveProposal } from "#lib/use-cases/proposal/improve-proposal.ts";
import { requestContext } from "#app/_server/context.ts";

/**
 * Improves the month's proposal and tells it line by line as JSON. A POST with a JSON body, which other
 * origins cannot send unasked.
 */
export async function POST(
  request: Request,
  { params }: RouteContext<"/slate/propose/[month]/improve">,
): Promise<Response> {
  const month = Day.safeParse(`${(await params).month}-01`);
  const isJson = request.headers.get("content-type")?.startsWith("application/json") === true;
  if (!month.success || !isJson) return new Response(null, { status: 400 });
  const stop = new AbortController();
  request.signal.addEventListener("abort", () => stop.abort());
  const news = improveProposal(await requestContext(), month.data, stop.signal);
  const text = new TextEncoder();
  const body = new ReadableStream<Uint8Array>({
    pull: async (controller) => {
      const next = await news.next();
      if (next.done) controller.close();
      else controller.enqueue(text.encode(`${JSON.stringify(next.value)}\n`));
    },
    cancel: async () => {
      stop.abort();
      // To its end, so that the best plan is kept and the workers stop.
      while (!(await news.next()).done);
    },
  });
  return new Response(body, {
    headers: { "content-type": "application/x-ndjson", "cache-control": "no-store" },
  });
}
