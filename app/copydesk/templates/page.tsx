import { redirect } from "next/navigation";

/** Templates open on the description. */
export default function TemplatesDoor() {
  redirect("/copydesk/templates/description");
}
