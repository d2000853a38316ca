import { notFound } from "next/navigation";
import { Day, shortDay, monthName } from "#lib/calendar/index.ts";
import { loadDay } from "#lib/use-cases/load-day.ts";
import { faceScale } from "#lib/reactions/index.ts";
import { requestContext } from "#app/_server/context.ts";
import { NoLunch } from "#app/_ui/no-lunch.tsx";
import { PageHead } from "#app/_ui/page-head.tsx";
import { VerdictDesk } from "../verdict-desk.client.tsx";

export default async function Verdicts({ params }: PageProps<"/verdicts/[date]">) {
  const date = Day.safeParse((await params).date);
  if (!date.success) notFound();
  const view = await loadDay(await requestContext(), date.data);
  if (!view) return <NoLunch room="Verdicts" date={date.data} />;
  const items = view.items.filter((item) => item.fate !== "scrapped");
  return (
    <>
      <PageHead
        kicker={`${view.episode.title}, ${shortDay(view.date)} ${monthName(view.date)}`}
        title={`${view.angle || "The tin"} came home`}
      />
      {items.length === 0 || view.children.length === 0 ? (
        <section className="sheet">
          <p>
            {items.length === 0
              ? "Nothing was packed on this day, so there is nothing to judge."
              : "No child is on record yet. Add one in the series bible."}
          </p>
        </section>
      ) : (
        <VerdictDesk
          items={items}
          people={view.children.map((child) => ({
            id: child.id,
            name: child.name,
            faces: faceScale(child.facePoints),
          }))}
          verdicts={view.verdicts}
        />
      )}
    </>
  );
}
