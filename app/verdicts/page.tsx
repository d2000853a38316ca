import { redirect } from "next/navigation";
import { requestContext } from "#app/_server/context.ts";

/** The verdicts open on today. */
export default async function VerdictsDoor() {
  const { today } = await requestContext();
  redirect(`/verdicts/${today}`);
}
