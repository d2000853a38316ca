import { requestContext } from "#app/_server/context.ts";
import { HealthCaution } from "#app/_ui/health-caution.tsx";
import { PageHead } from "#app/_ui/page-head.tsx";
import { loadChecksSheet } from "#lib/use-cases/bible/checks-sheet.ts";
import { ChecksForm } from "./checks-form.client.tsx";
import { SchemesTable } from "./schemes-table.tsx";

export const metadata = { title: "Checks" };

export default async function ChecksPage() {
  const sheet = await loadChecksSheet(await requestContext());
  return (
    <>
      <PageHead kicker="Series bible" title="Checks" />
      <HealthCaution />
      <section className="sheet">
        <ChecksForm sheet={sheet} />
      </section>
      <section className="sheet" style={{ marginTop: "var(--s5)" }}>
        <SchemesTable />
      </section>
    </>
  );
}
