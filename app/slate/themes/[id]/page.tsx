import { notFound } from "next/navigation";
import { requestContext } from "#app/_server/context.ts";
import { PageHead } from "#app/_ui/page-head.tsx";
import { loadThemeSheet } from "#lib/use-cases/themes/theme-sheet.ts";
import { ThemeForm } from "../theme-form.client.tsx";

export const metadata = { title: "A theme" };

export default async function ThemePage({ params }: PageProps<"/slate/themes/[id]">) {
  const { id } = await params;
  const sheet = await loadThemeSheet(await requestContext(), id === "new" ? undefined : id);
  if (!sheet) notFound();
  return (
    <>
      <PageHead kicker="Slate, themes" title={sheet.name || "Add a theme"} />
      <section className="sheet">
        <ThemeForm sheet={sheet} />
      </section>
    </>
  );
}
