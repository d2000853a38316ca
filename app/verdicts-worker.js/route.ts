import { readFile } from "node:fs/promises";
import path from "node:path";

/** The service worker of the verdict pages, as it stands in `worker.mjs` beside this file. */
export async function GET(): Promise<Response> {
  const file = path.join(process.cwd(), "app/verdicts-worker.js/worker.mjs");
  return new Response(await readFile(file, "utf8"), {
    headers: { "content-type": "text/javascript; charset=utf-8", "cache-control": "no-cache" },
  });
}

export const dynamic = "force-dynamic";
