import { requestContext } from "#app/_server/context.ts";
import { PageHead } from "#app/_ui/page-head.tsx";
import { loadLimitsSheet } from "#lib/use-cases/bible/settings-sheets.ts";
import { LimitsForm } from "./limits-form.client.tsx";

export const metadata = { title: "Limits" };

export default async function LimitsPage() {
  const sheet = await loadLimitsSheet(await requestContext());
  return (
    <>
      <PageHead kicker="Series bible" title="Limits" />
      <section className="sheet">
        <LimitsForm sheet={sheet} />
      </section>
    </>
  );
}
