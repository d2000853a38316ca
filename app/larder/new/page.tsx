import Link from "next/link";
import { loadNewFood } from "#lib/use-cases/larder/load-new-food.ts";
import { requestContext } from "#app/_server/context.ts";
import { PageHead } from "#app/_ui/page-head.tsx";
import { FoodForm } from "../food-form.client.tsx";

export const metadata = { title: "Add a food" };

export default async function NewFoodPage({ searchParams }: PageProps<"/larder/new">) {
  const named = (await searchParams)["name"];
  const view = await loadNewFood(
    await requestContext(),
    typeof named === "string" ? named.slice(0, 120) : "",
  );
  return (
    <>
      <PageHead kicker="Larder" title="Add a food">
        <Link className="btn plain" href="/larder">
          Back to the Larder
        </Link>
      </PageHead>
      <section className="sheet">
        <FoodForm {...view} />
      </section>
    </>
  );
}
