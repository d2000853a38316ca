import { requestContext } from "#app/_server/context.ts";
import { PageHead } from "#app/_ui/page-head.tsx";
import { timeZones } from "#lib/calendar/index.ts";
import { loadDaysSheet } from "#lib/use-cases/bible/settings-sheets.ts";
import { DaysForm } from "./days-form.client.tsx";

export const metadata = { title: "School days and days off" };

export default async function DaysPage() {
  const sheet = await loadDaysSheet(await requestContext());
  return (
    <>
      <PageHead kicker="Series bible" title="School days and days off" />
      <section className="sheet">
        <DaysForm sheet={sheet} zones={timeZones()} />
      </section>
    </>
  );
}
