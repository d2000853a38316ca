import { redirect } from "next/navigation";
import { findNextLunch } from "#lib/use-cases/find-next-lunch.ts";
import { requestContext } from "#app/_server/context.ts";

/** The mise opens on the next lunch to be packed. */
export default async function MiseDoor() {
  redirect(`/mise/${await findNextLunch(await requestContext())}`);
}
