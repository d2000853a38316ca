import { redirect } from "next/navigation";
import { weekToShopFor } from "#lib/use-cases/errands/load-errands.ts";
import { requestContext } from "#app/_server/context.ts";

/** Errands open on the week that is shopped for next. */
export default async function ErrandsDoor() {
  const { today } = await requestContext();
  redirect(`/errands/${weekToShopFor(today)}`);
}
