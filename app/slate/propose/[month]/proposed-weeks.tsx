import Link from "next/link";
import { shortDay, type Day } from "#lib/calendar/index.ts";
import type { PickedItem, ProposedWeek } from "#lib/use-cases/proposal/load-proposal.ts";
import { ThemeTitle } from "#app/_ui/theme-title.tsx";
import { Tray } from "#app/_ui/tray.tsx";
import { DeskForm } from "./desk-form.client.tsx";
import styles from "./propose.module.css";

/** The proposed weeks as trays; each food opens its reasons and what could stand in. */
export function ProposedWeeks({
  weeks,
  month,
  picked,
}: {
  readonly weeks: readonly ProposedWeek[];
  readonly month: Day;
  readonly picked: PickedItem | undefined;
}) {
  return (
    <div className={styles.weeks}>
      {weeks.map((week) => (
        <section
          key={week.monday}
          className={styles.week}
          aria-label={`${week.theme}, ${week.span}`}
        >
          <div className={styles.weekHead}>
            <ThemeTitle name={week.theme} />
            <p className="small quiet">{week.span}</p>
            <DeskForm step="propose" month={month} fields={{ scope: "week", date: week.monday }}>
              <button className="btn plain slim">Another week</button>
            </DeskForm>
          </div>
          <div className={styles.five}>
            {week.lunches.map((lunch) => (
              <Lunch key={lunch.date} lunch={lunch} month={month} picked={picked} />
            ))}
          </div>
        </section>
      ))}
    </div>
  );
}

function Lunch({
  lunch,
  month,
  picked,
}: {
  readonly lunch: ProposedWeek["lunches"][number];
  readonly month: Day;
  readonly picked: PickedItem | undefined;
}) {
  const isNow = (id: string): boolean => picked?.date === lunch.date && picked.item.id === id;
  return (
    <figure className={styles.day}>
      <div className={styles.date}>
        <time dateTime={lunch.date}>{shortDay(lunch.date)}</time>
        <span className="num">{Math.round(lunch.minutes)} min</span>
      </div>
      <Tray
        compartments={lunch.items.map((item) => ({
          key: item.id,
          name: item.name,
          grams: item.grams,
          colour: item.colour,
          pattern: item.pattern,
          mark: isNow(item.id) ? "now" : undefined,
        }))}
      />
      <figcaption>
        <ul className={styles.foods}>
          {lunch.items.map((item) => (
            <li key={item.id}>
              <Link
                href={`/slate/propose/${month.slice(0, 7)}?date=${lunch.date}&item=${encodeURIComponent(item.id)}#picked`}
                aria-current={isNow(item.id) ? "true" : undefined}
              >
                {item.name}
              </Link>
              {item.isLocked && <span className="small quiet"> locked</span>}
            </li>
          ))}
        </ul>
        <DeskForm step="propose" month={month} fields={{ scope: "lunch", date: lunch.date }}>
          <button
            className="btn plain slim"
            aria-label={`Another lunch for ${shortDay(lunch.date)}`}
          >
            Another lunch
          </button>
        </DeskForm>
      </figcaption>
    </figure>
  );
}
