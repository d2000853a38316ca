import { notFound } from "next/navigation";
import { requestContext } from "#app/_server/context.ts";
import { PageHead } from "#app/_ui/page-head.tsx";
import { loadChildSheet } from "#lib/use-cases/bible/child-sheet.ts";
import { listFamilies } from "#lib/use-cases/bible/list-families.ts";
import { ChildForm } from "../../child-form.client.tsx";

export const metadata = { title: "A child" };

export default async function ChildPage({ params }: PageProps<"/bible/children/[id]">) {
  const { id } = await params;
  const context = await requestContext();
  const sheet = await loadChildSheet(context, id === "new" ? undefined : id);
  if (!sheet) notFound();
  const families = await listFamilies(context);
  return (
    <>
      <PageHead kicker="Series bible" title={sheet.onScreenName || "Add a child"} />
      <section className="sheet">
        <ChildForm sheet={sheet} families={families.map(({ id, name }) => [id, name] as const)} />
      </section>
    </>
  );
}
