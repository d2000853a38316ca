import Link from "next/link";
import { notFound } from "next/navigation";
import { addDays, Day, daySpan, longDay, mondayOf, shortDay } from "#lib/calendar/index.ts";
import { PARTS } from "#lib/catalog/index.ts";
import { listHousehold } from "#lib/use-cases/list-choices.ts";
import { inTheTray, type ItemView } from "#lib/use-cases/lunch-view.ts";
import { loadClosestWeeks } from "#lib/use-cases/load-closest-weeks.ts";
import { loadSlateWeek } from "#lib/use-cases/load-slate.ts";
import { loadUndo } from "#lib/use-cases/undo-slate.ts";
import { listOpenLunches } from "#lib/use-cases/swap-lunches.ts";
import { requestContext } from "#app/_server/context.ts";
import { ChecksPanel } from "#app/_checks/checks-panel.tsx";
import { WeekBalance } from "#app/_checks/week-balance.tsx";
import { HealthCaution } from "#app/_ui/health-caution.tsx";
import { PageHead } from "#app/_ui/page-head.tsx";
import { StageTag } from "#app/_ui/stage-tag.tsx";
import { Tray } from "#app/_ui/tray.tsx";
import { ClosestWeeks } from "../../closest-weeks.tsx";
import { ComposeForm } from "../../compose-form.client.tsx";
import type { Household, Line } from "../../compose-line.ts";
import { EpisodeForm } from "../../episode-form.client.tsx";
import { LockButton } from "../../lock-button.client.tsx";
import { SwapDays } from "../../swap-days.client.tsx";
import { UndoButton } from "../../undo-button.client.tsx";
import styles from "../../slate.module.css";

export default async function WeekPage({ params }: PageProps<"/slate/week/[monday]">) {
  const monday = Day.safeParse((await params).monday);
  if (!monday.success || mondayOf(monday.data) !== monday.data) notFound();
  const context = await requestContext();
  const [{ week, themes, unset }, closest, people, undo, open] = await Promise.all([
    loadSlateWeek(context, monday.data),
    loadClosestWeeks(context, monday.data),
    listHousehold(context),
    loadUndo(context),
    listOpenLunches(context, monday.data),
  ]);
  if (!week?.episode) notFound();
  const { episode } = week;
  const household: Household = { ...people, parts: PARTS };
  return (
    <>
      <PageHead
        kicker={`Slate, episode ${episode.number}, ${daySpan(monday.data, addDays(monday.data, 4))}`}
        title={episode.title}
      >
        <StageTag stage={episode.stage} />
        {undo.label !== undefined && <UndoButton label={undo.label} />}
        <LockButton episodeId={episode.id} isLocked={episode.stage !== "pencilled"} />
        <Link className="btn plain" href={`/slate/${monday.data.slice(0, 7)}`}>
          Back to the month
        </Link>
      </PageHead>
      <EpisodeForm
        key={episode.revision}
        episode={episode}
        monday={monday.data}
        themes={withChosen(themes, episode)}
      />
      <ClosestWeeks weeks={closest} />
      <HealthCaution unset={unset} />
      <nav className={styles.jump} aria-label="Days of this week">
        {week.days.map(({ date }) => (
          <a className="chip" key={date} href={`#${date}`}>
            {shortDay(date)}
          </a>
        ))}
      </nav>
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
                  <ChecksPanel lunchId={lunch.id} findings={lunch.findings} />
                  {lunch.isOpen && <SwapDays date={date} weeks={open} />}
                </>
              )}
            </div>
            {lunch && (
              <ComposeForm
                key={`${lunch.id}-${undo.epoch}`}
                lunchId={lunch.id}
                revision={lunch.revision}
                angle={lunch.angle}
                items={lunch.items.map(lineOf)}
                household={household}
              />
            )}
          </section>
        ))}
      </div>
      {episode.checks?.balance && (
        <WeekBalance
          days={week.days.flatMap(({ lunch, date }) => (lunch ? [date] : []))}
          notes={episode.checks.notes}
          balance={episode.checks.balance}
        />
      )}
    </>
  );
}

/** The themes in season, and the one this week has, which may not be. */
function withChosen(
  themes: readonly { readonly id: string; readonly name: string }[],
  episode: { readonly themeId: string | null; readonly title: string },
): readonly { readonly id: string; readonly name: string }[] {
  const { themeId, title } = episode;
  if (themeId === null || themes.some((theme) => theme.id === themeId)) return themes;
  return [{ id: themeId, name: title }, ...themes];
}

function lineOf(item: ItemView): Line {
  return {
    key: item.id,
    id: item.id,
    foodId: item.foodId,
    name: item.name,
    part: item.part,
    amount: String(item.amount),
    unit: item.unit,
    shopId: item.shopId,
    tricks: item.tricks,
    shares: Object.fromEntries(item.shares.map(({ childId, amount }) => [childId, String(amount)])),
  };
}
