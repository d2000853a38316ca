import { notFound } from "next/navigation";
import { requestContext } from "#app/_server/context.ts";
import { PageHead } from "#app/_ui/page-head.tsx";
import { loadShopSheet } from "#lib/use-cases/bible/shop-sheet.ts";
import { ShopForm } from "../../shop-form.client.tsx";

export const metadata = { title: "A shop" };

export default async function ShopPage({ params }: PageProps<"/bible/shops/[id]">) {
  const { id } = await params;
  const sheet = await loadShopSheet(await requestContext(), id === "new" ? undefined : id);
  if (!sheet) notFound();
  return (
    <>
      <PageHead kicker="Series bible" title={sheet.name || "Add a shop"} />
      <section className="sheet">
        <ShopForm sheet={sheet} />
      </section>
    </>
  );
}
