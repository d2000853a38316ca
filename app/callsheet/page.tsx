import { redirect } from "next/navigation";
import { requestContext } from "#app/_server/context.ts";

/** The call sheet opens on today. */
export default async function CallSheetDoor() {
  const { today } = await requestContext();
  redirect(`/callsheet/${today}`);
}
