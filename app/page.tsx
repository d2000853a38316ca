import { redirect } from "next/navigation";
import { requestContext } from "#app/_server/context.ts";
import { loadMasthead } from "#lib/use-cases/load-masthead.ts";

/** The door: to the welcome page before there is a series, else to the slate. */
export default async function Door() {
  const { seriesName } = await loadMasthead(await requestContext());
  redirect(seriesName === undefined ? "/welcome" : "/slate");
}
