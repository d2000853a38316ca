import Link from "next/link";
import { Fragment } from "react";
import { requestContext } from "#app/_server/context.ts";
import { Icon } from "#app/_ui/icon.tsx";
import { PageHead } from "#app/_ui/page-head.tsx";
import { groupBy } from "#lib/base/index.ts";
import { addDays, daySpan, mediumDay, monthTitle, type Day } from "#lib/calendar/index.ts";
import { loadYear, type YearWeek } from "#lib/use-cases/load-year.ts";
import styles from "./year.module.css";

export const metadata = { title: "The year ahead" };

export default async function YearPage() {
  const weeks = await loadYear(await requestContext());
  // A week belongs to the month of its Thursday, as ISO 8601 has it for years.
  const months = [...groupBy(weeks, ({ monday }) => addDays(monday, 3).slice(0, 7))];
  const planned = weeks.filter((week) => week.planned).length;
  return (
    <>
      <PageHead
        kicker={`Slate, ${planned} of ${weeks.length} weeks planned`}
        title="The year ahead"
      >
        <Link className="btn plain" href="/slate">
          Slate
        </Link>
        <Link className="btn plain" href="/slate/themes" prefetch={false}>
          Themes
        </Link>
      </PageHead>
      <p className={styles.lead}>
        Empty weeks show a theme of the pool that is in season and at rest no more. Nothing of it is
        written: propose a month to plan it.
      </p>
      <div className={styles.months}>
        {months.map(([month, ofMonth]) => (
          <section className="sheet" key={month} aria-labelledby={`month-${month}`}>
            <div className={styles.head}>
              <h2 id={`month-${month}`}>{monthTitle(firstOf(ofMonth))}</h2>
              {ofMonth.some((week) => week.toCome) && (
                <Link className="btn plain slim" href={`/slate/propose/${month}`} prefetch={false}>
                  Propose {monthTitle(firstOf(ofMonth))}
                </Link>
              )}
            </div>
            <ol className={styles.weeks}>
              {ofMonth.map((week) => (
                <Week key={week.monday} week={week} />
              ))}
            </ol>
          </section>
        ))}
      </div>
    </>
  );
}

function firstOf(weeks: readonly YearWeek[]): Day {
  const [week] = weeks;
  if (!week) throw new Error("a month of the year view has no week");
  return addDays(week.monday, 3);
}

function Week({ week }: { readonly week: YearWeek }) {
  const { monday, planned, toCome } = week;
  return (
    <li className={styles.week}>
      <p className={styles.when}>{daySpan(monday, addDays(monday, 4))}</p>
      <div className={styles.what}>
        {planned ? (
          <p>
            <Link className={styles.name} href={`/slate/week/${monday}`} prefetch={false}>
              {planned.title}
            </Link>{" "}
            <span className="small quiet">Ep {planned.number}</span>
          </p>
        ) : toCome ? (
          <p>
            To come:{" "}
            <Link className={styles.name} href={`/slate/themes/${toCome.id}`} prefetch={false}>
              {toCome.name}
            </Link>{" "}
            <span className="small quiet">{toCome.why}</span>
          </p>
        ) : (
          <p className="quiet">
            {week.isOff ? "No lunch in this week" : "No theme is in season and rested"}
          </p>
        )}
        {[...week.moments, ...week.offLabels.map((label) => `Off: ${label}`)].map((words) => (
          <p key={words} className={styles.moment}>
            <Icon name="ring" /> {words}
          </p>
        ))}
      </div>
      <p className={`small quiet ${styles.before ?? ""}`}>
        {week.before.length === 0 ? (
          "Nothing was on in this week before"
        ) : (
          <>
            Before:{" "}
            {week.before.map((one, place) => (
              <Fragment key={one.monday}>
                {place > 0 && ", "}
                {one.title} ({mediumDay(one.monday)} {one.monday.slice(0, 4)})
              </Fragment>
            ))}
          </>
        )}
      </p>
    </li>
  );
}
