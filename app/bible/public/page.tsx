import { requestContext } from "#app/_server/context.ts";
import { PageHead } from "#app/_ui/page-head.tsx";
import { loadPublicSheet } from "#lib/use-cases/bible/settings-sheets.ts";
import { PublicForm } from "./public-form.client.tsx";

export const metadata = { title: "What may leave the house" };

export default async function PublicPage() {
  const sheet = await loadPublicSheet(await requestContext());
  return (
    <>
      <PageHead kicker="Series bible" title="What may leave the house" />
      <section className="sheet">
        <PublicForm sheet={sheet} />
      </section>
    </>
  );
}
