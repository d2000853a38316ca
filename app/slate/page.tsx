import { redirect } from "next/navigation";
import { requestContext } from "#app/_server/context.ts";

/** The slate opens on the month of today. */
export default async function SlateDoor() {
  const { today } = await requestContext();
  redirect(`/slate/${today.slice(0, 7)}`);
}
