import { notFound } from "next/navigation";
import { Day, mondayOf, monthName, shortDay } from "#lib/calendar/index.ts";
import { faceScale } from "#lib/reactions/index.ts";
import { loadVerdictDay } from "#lib/use-cases/load-verdict-day.ts";
import { listPhotos } from "#lib/use-cases/photos/photos.ts";
import { requestContext } from "#app/_server/context.ts";
import { NoLunch } from "#app/_ui/no-lunch.tsx";
import { PageHead } from "#app/_ui/page-head.tsx";
import { Amendments } from "../amendments.tsx";
import { VerdictDay } from "../verdict-day.client.tsx";

export default async function Verdicts({ params }: PageProps<"/verdicts/[date]">) {
  const date = Day.safeParse((await params).date);
  if (!date.success) notFound();
  const context = await requestContext();
  const view = await loadVerdictDay(context, date.data);
  if (!view) return <NoLunch room="Verdicts" date={date.data} />;
  return (
    <>
      <PageHead
        kicker={`${view.title}, ${shortDay(view.date)} ${monthName(view.date)}`}
        title={`${view.angle || "The tin"} came home`}
      />
      {view.items.length === 0 || view.children.length === 0 ? (
        <section className="sheet">
          <p>
            {view.items.length === 0
              ? "Nothing was packed on this day, so there is nothing to judge."
              : "No child is on record yet. Add one in the series bible."}
          </p>
        </section>
      ) : (
        <VerdictDay
          key={view.date}
          given={{ date: view.date, cells: view.cells, day: view.facts }}
          monday={mondayOf(view.date)}
          items={view.items}
          people={view.children.map(({ id, name, facePoints }) => ({
            ...{ id, name },
            faces: faceScale(facePoints).map(({ value, word }) => ({ value, word })),
          }))}
          photos={await listPhotos(context, view.lunchId)}
        >
          <Amendments amended={view.amended} />
        </VerdictDay>
      )}
    </>
  );
}
