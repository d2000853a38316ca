import { notFound } from "next/navigation";
import { requestContext } from "#app/_server/context.ts";
import { PageHead } from "#app/_ui/page-head.tsx";
import { listEvents, loadThemeSheet } from "#lib/use-cases/themes/theme-sheet.ts";
import { ThemeForm } from "../theme-form.client.tsx";

export const metadata = { title: "A theme" };

export default async function ThemePage({ params }: PageProps<"/slate/themes/[id]">) {
  const { id } = await params;
  const context = await requestContext();
  const sheet = await loadThemeSheet(context, id === "new" ? undefined : id);
  if (!sheet) notFound();
  const events = await listEvents(context, sheet.event);
  return (
    <>
      <PageHead kicker="Slate, themes" title={sheet.name || "Add a theme"} />
      <section className="sheet">
        <ThemeForm sheet={sheet} events={events} />
      </section>
    </>
  );
}
