import Link from "next/link";
import { redirect } from "next/navigation";
import { requestContext } from "#app/_server/context.ts";
import { PageHead } from "#app/_ui/page-head.tsx";
import { loadBible } from "#lib/use-cases/edit-series.ts";
import { SeriesForm } from "./series-form.client.tsx";

export const metadata = { title: "Series bible" };

export default async function BiblePage() {
  const bible = await loadBible(await requestContext());
  if (!bible) redirect("/welcome");
  return (
    <>
      <PageHead kicker="What holds for every episode" title="Series bible">
        <Link className="btn plain" href="/bible/phones">
          Phones
        </Link>
      </PageHead>
      <section className="sheet">
        <h2>The series</h2>
        <SeriesForm standing={bible} />
      </section>
    </>
  );
}
