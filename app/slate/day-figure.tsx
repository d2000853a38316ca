import Link from "next/link";
import { shortDay, type Day } from "#lib/calendar/index.ts";
import { inTheTray } from "#lib/use-cases/lunch-view.ts";
import type { WeekView } from "#lib/use-cases/load-slate.ts";
import { PaperTag } from "#app/_ui/paper-tag.tsx";
import { Tray } from "#app/_ui/tray.tsx";
import { DragPlace } from "./drag-place.client.tsx";
import styles from "./slate.module.css";

/** One day of a week: its date, its tray, its paper tag and its angle. */
export function DayFigure({
  day,
  today,
  monday,
}: {
  readonly day: WeekView["days"][number];
  readonly today: Day;
  readonly monday: Day;
}) {
  const { lunch } = day;
  const broken = lunch?.broken;
  const tag = lunch?.repeats[0];
  return (
    <figure className={day.date === today ? `${styles.day} ${styles.today}` : styles.day}>
      <div className={styles.date}>
        <time dateTime={day.date}>
          {shortDay(day.date)}
          {day.date === today && " · today"}
        </time>
        {lunch?.minutes != null && <span className="num">{lunch.minutes} min</span>}
      </div>
      <DragPlace
        kind="lunch"
        place={day.date}
        carries={lunch?.isOpen ? day.date : undefined}
        className={styles.hold}
      >
        <Tray
          empty={day.offLabel ?? (lunch ? "Nothing in the tin yet" : "No lunch")}
          compartments={inTheTray(lunch?.items ?? []).map((item) => ({
            key: item.id,
            name: item.name,
            grams: item.grams,
            colour: item.colour,
            pattern: item.pattern,
            mark: broken?.itemIds.includes(item.id)
              ? "broken"
              : !broken && tag?.foodId === item.foodId
                ? "seen"
                : undefined,
          }))}
        />
        {broken && (
          <div className={styles.tag} title={broken.sentence}>
            <PaperTag text={broken.short} isBroken />
          </div>
        )}
        {!broken && tag && (
          <div className={styles.tag} title={tag.sentence}>
            <PaperTag text={tag.short} />
          </div>
        )}
      </DragPlace>
      <figcaption>
        {day.offLabel ??
          (lunch ? (
            <Link href={`/slate/week/${monday}#${day.date}`}>
              {lunch.angle || (lunch.items.length === 0 ? "Compose this lunch" : "Name this lunch")}
            </Link>
          ) : (
            "No lunch pencilled"
          ))}
      </figcaption>
    </figure>
  );
}
