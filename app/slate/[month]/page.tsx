import Link from "next/link";
import { notFound } from "next/navigation";
import { addDays, Day, daySpan, monthsLater, monthTitle, monthName } from "#lib/calendar/index.ts";
import { loadUndo } from "#lib/use-cases/undo-slate.ts";
import { loadOwed, type OwedView } from "#lib/use-cases/errands/load-owed.ts";
import { loadSlate, type SlateView, type WeekView } from "#lib/use-cases/load-slate.ts";
import { requestContext } from "#app/_server/context.ts";
import { Icon } from "#app/_ui/icon.tsx";
import { PageHead } from "#app/_ui/page-head.tsx";
import { StageTag } from "#app/_ui/stage-tag.tsx";
import { ThemeTitle } from "#app/_ui/theme-title.tsx";
import { DayFigure } from "../day-figure.tsx";
import { DragPlace } from "../drag-place.client.tsx";
import { UndoButton } from "../undo-button.client.tsx";
import { OwedList } from "#app/errands/owed-list.client.tsx";
import { PencilForm } from "../pencil-form.client.tsx";
import styles from "../slate.module.css";

export default async function SlateMonth({ params }: PageProps<"/slate/[month]">) {
  const first = Day.safeParse(`${(await params).month}-01`);
  if (!first.success) notFound();
  const context = await requestContext();
  const [view, undo, owed] = await Promise.all([
    loadSlate(context, first.data),
    loadUndo(context),
    loadOwed(context),
  ]);
  const before = monthsLater(first.data, -1);
  const after = monthsLater(first.data, 1);
  return (
    <>
      <PageHead kicker={episodeRange(view)} title={monthTitle(first.data)}>
        <Link className="btn plain" href={`/slate/${before.slice(0, 7)}`}>
          {monthName(before)}
        </Link>
        <Link className="btn plain" href={`/slate/${after.slice(0, 7)}`}>
          {monthName(after)}
        </Link>
        <Link className="btn plain" href="/slate/year" prefetch={false}>
          Year
        </Link>
        <Link className="btn plain" href="/slate/themes" prefetch={false}>
          Themes
        </Link>
        {undo.label !== undefined && <UndoButton label={undo.label} />}
        <Link className="btn" href={`/slate/propose/${first.data.slice(0, 7)}`}>
          Propose the rest
        </Link>
      </PageHead>
      <div className={styles.grid}>
        <div className={styles.weeks}>
          {view.weeks.map((week) => (
            <section className={styles.week} key={week.monday} aria-label={weekLabel(week)}>
              <DragPlace kind="week" place={week.monday} carries={movableId(week)}>
                <WeekHead week={week} themes={view.seasonThemes} />
              </DragPlace>
              {week.episode && (
                <div className={styles.five}>
                  {week.days.map((day) => (
                    <DayFigure
                      key={day.date}
                      day={day}
                      today={context.today}
                      monday={week.monday}
                    />
                  ))}
                </div>
              )}
            </section>
          ))}
        </div>
        <Rail view={view} owed={owed} />
      </div>
    </>
  );
}

function WeekHead({
  week,
  themes,
}: {
  readonly week: WeekView;
  readonly themes: SlateView["seasonThemes"];
}) {
  const span = daySpan(week.monday, addDays(week.monday, 4));
  if (!week.episode) {
    return (
      <>
        <h2>{span}</h2>
        <p className="quiet">Nothing is pencilled in for this week.</p>
        <PencilForm monday={week.monday} themes={themes} />
      </>
    );
  }
  const { episode } = week;
  return (
    <div className={styles.weekHead}>
      <ThemeTitle name={episode.title} />
      <StageTag stage={episode.stage} />
      <div className={styles.tail}>
        <p className="small quiet">
          Ep {episode.number}, {span}
          <br />
          {episode.echo
            ? `Echo ${episode.echo.percent} % with ${episode.echo.name}`
            : "Echo: nothing close"}
        </p>
        <Link className="btn plain slim" href={`/slate/week/${week.monday}`}>
          Open week
        </Link>
      </div>
    </div>
  );
}

function Rail({ view, owed }: { readonly view: SlateView; readonly owed: readonly OwedView[] }) {
  const lunches = view.weeks.flatMap((week) => week.days.flatMap((day) => day.lunch ?? []));
  const repeats = [
    ...view.weeks.flatMap((week) => week.episode?.themeRepeats ?? []),
    ...lunches.flatMap((lunch) => lunch.repeats.map((repeat) => repeat.sentence)),
  ];
  const locked = view.weeks
    .filter((week) => week.episode && week.episode.stage !== "pencilled")
    .flatMap((week) => week.days.filter((day) => day.lunch)).length;
  return (
    <aside className={styles.rail} aria-label="Notes on the month">
      <section className="sheet">
        <h3>
          <Icon name="eye" /> Seen before
        </h3>
        {repeats.length === 0 ? (
          <p className="small quiet">Nothing comes back before its rest is over.</p>
        ) : (
          <ul>
            {repeats.slice(0, 6).map((sentence) => (
              <li key={sentence}>{sentence}</li>
            ))}
            {repeats.length > 6 && (
              <li className="quiet">and {repeats.length - 6} more in the weeks</li>
            )}
          </ul>
        )}
      </section>
      {owed.length > 0 && (
        <section className="sheet">
          <h3>Owed</h3>
          <OwedList owed={owed} />
        </section>
      )}
      <section className="sheet">
        <h3>The month in numbers</h3>
        <dl className={styles.sum}>
          <dt>Lunches pencilled</dt>
          <dd>{lunches.length}</dd>
          <dt>Lunches locked</dt>
          <dd>{locked}</dd>
          <dt>Still empty</dt>
          <dd>{lunches.filter((lunch) => lunch.items.length === 0).length}</dd>
        </dl>
      </section>
    </aside>
  );
}

/** The episode of a week that can still go to another one. */
function movableId({ episode, days }: WeekView): string | undefined {
  if (episode?.stage === "published") return undefined;
  return days.every(({ lunch }) => lunch?.isOpen !== false) ? episode?.id : undefined;
}

function weekLabel(week: WeekView): string {
  const span = daySpan(week.monday, addDays(week.monday, 4));
  return week.episode ? `${week.episode.title}, ${span}` : span;
}

function episodeRange(view: SlateView): string {
  const numbers = view.weeks.flatMap((week) => week.episode?.number ?? []);
  const [first, last] = [numbers[0], numbers.at(-1)];
  if (first === undefined) return "Slate";
  return first === last ? `Slate, episode ${first}` : `Slate, episodes ${first} to ${String(last)}`;
}
