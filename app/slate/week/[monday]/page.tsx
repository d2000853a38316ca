import Link from "next/link";
import { notFound } from "next/navigation";
import { addDays, Day, daySpan, longDay, mondayOf } from "#lib/calendar/index.ts";
import { PARTS } from "#lib/catalog/index.ts";
import { listFoods } from "#lib/use-cases/list-foods.ts";
import { inTheTray } from "#lib/use-cases/lunch-view.ts";
import { loadSlateWeek } from "#lib/use-cases/load-slate.ts";
import { requestContext } from "#app/_server/context.ts";
import { PageHead } from "#app/_ui/page-head.tsx";
import { StageTag } from "#app/_ui/stage-tag.tsx";
import { Tray } from "#app/_ui/tray.tsx";
import { ComposeForm } from "../../compose-form.client.tsx";
import { LockButton } from "../../lock-button.client.tsx";
import styles from "../../slate.module.css";

export default async function WeekPage({ params }: PageProps<"/slate/week/[monday]">) {
  const monday = Day.safeParse((await params).monday);
  if (!monday.success || mondayOf(monday.data) !== monday.data) notFound();
  const context = await requestContext();
  const [week, larder] = await Promise.all([
    loadSlateWeek(context, monday.data),
    listFoods(context),
  ]);
  if (!week?.episode) notFound();
  const { episode } = week;
  return (
    <>
      <PageHead
        kicker={`Slate, episode ${episode.number}, ${daySpan(monday.data, addDays(monday.data, 4))}`}
        title={episode.title}
      >
        <StageTag stage={episode.stage} />
        <LockButton episodeId={episode.id} isLocked={episode.stage !== "pencilled"} />
        <Link className="btn plain" href={`/slate/${monday.data.slice(0, 7)}`}>
          Back to the month
        </Link>
      </PageHead>
      <div className="sheet">
        {week.days.map(({ date, lunch, offLabel }) => (
          <section className={styles.composer} key={date} id={date} aria-label={longDay(date)}>
            <div>
              <h2>{longDay(date)}</h2>
              {offLabel && <p className="quiet">{offLabel}</p>}
              {lunch && (
                <>
                  <Tray
                    compartments={inTheTray(lunch.items).map((item) => ({ ...item, key: item.id }))}
                  />
                  {lunch.repeats.map((repeat) => (
                    <p className="small" key={repeat.sentence}>
                      {repeat.sentence}
                    </p>
                  ))}
                </>
              )}
            </div>
            {lunch && (
              <ComposeForm
                key={`${lunch.id}-${lunch.revision}`}
                lunchId={lunch.id}
                revision={lunch.revision}
                angle={lunch.angle}
                items={lunch.items.map((item) => ({
                  foodId: item.foodId,
                  name: item.name,
                  part: item.part,
                  amount: item.amount,
                  unit: item.unit,
                  trickIds: item.tricks.map((trick) => trick.id),
                }))}
                foods={larder}
                parts={PARTS}
              />
            )}
          </section>
        ))}
      </div>
    </>
  );
}
