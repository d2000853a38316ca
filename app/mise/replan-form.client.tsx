"use client";

import { useEffect, useId, useRef } from "react";
import { clockTime, wallClock, type Day } from "#lib/calendar/index.ts";
import styles from "./mise.module.css";

/** Plans what is not ticked off anew from a time on: now, unless another time is written. */
export function ReplanForm({ date, zone }: { readonly date: Day; readonly zone: string }) {
  const id = useId();
  const field = useRef<HTMLInputElement>(null);
  useEffect(() => {
    if (field.current && field.current.value === "")
      field.current.value = clockTime(wallClock(new Date(), zone).minutes);
  }, [zone]);
  return (
    <form className={styles.replan} action={`/mise/${date}`}>
      <label htmlFor={id}>Re-plan what is left from</label>
      <input className="field" id={id} ref={field} type="time" name="from" required />
      <button className="btn plain" type="submit">
        Re-plan
      </button>
    </form>
  );
}
