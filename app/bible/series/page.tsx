import { redirect } from "next/navigation";
import { requestContext } from "#app/_server/context.ts";
import { PageHead } from "#app/_ui/page-head.tsx";
import { loadSeriesSheet } from "#lib/use-cases/bible/settings-sheets.ts";
import { SeriesForm } from "./series-form.client.tsx";

export const metadata = { title: "The series" };

export default async function SeriesPage() {
  const sheet = await loadSeriesSheet(await requestContext());
  if (!sheet) redirect("/welcome");
  return (
    <>
      <PageHead kicker="Series bible" title="The series" />
      <section className="sheet">
        <SeriesForm sheet={sheet} />
      </section>
    </>
  );
}
