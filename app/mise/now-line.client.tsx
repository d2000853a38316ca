"use client";

import { useEffect, useState } from "react";
import { clockTime, daysBetween, wallClock, type Day } from "#lib/calendar/index.ts";
import styles from "./mise.module.css";

const EVERY_MS = 20_000;

/** A line where the kitchen clock stands, while it stands between the ends of the timeline. */
export function NowLine({
  date,
  zone,
  from,
  to,
}: {
  readonly date: Day;
  readonly zone: string;
  readonly from: number;
  readonly to: number;
}) {
  const now = useKitchenClock(date, zone);
  if (now === undefined || now < from || now > to) return null;
  return (
    <div className={styles.nowTrack} aria-hidden="true">
      <div className={styles.now} style={{ left: `${(100 * (now - from)) / (to - from)}%` }}>
        <span>now {clockTime(now)}</span>
      </div>
    </div>
  );
}

/** Minutes from midnight of a day by the kitchen's clock; undefined until the browser has said. */
function useKitchenClock(date: Day, zone: string): number | undefined {
  const [now, setNow] = useState<number>();
  useEffect(() => {
    const read = (): void => {
      const clock = wallClock(new Date(), zone);
      setNow(daysBetween(date, clock.day) * 24 * 60 + clock.minutes);
    };
    const first = setTimeout(read, 0);
    const timer = setInterval(read, EVERY_MS);
    return () => {
      clearTimeout(first);
      clearInterval(timer);
    };
  }, [date, zone]);
  return now;
}
