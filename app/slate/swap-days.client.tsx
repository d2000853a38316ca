"use client";

import { useId, useState, type FormEvent } from "react";
import type { OpenLunch } from "#lib/use-cases/swap-lunches.ts";
import { swapLunchesAction } from "./actions.ts";

/** Lets a lunch change places with another, by keyboard as well as by dragging on the month. */
export function SwapDays({
  date,
  weeks,
}: {
  readonly date: string;
  readonly weeks: readonly { readonly week: string; readonly lunches: readonly OpenLunch[] }[];
}) {
  const id = useId();
  const [problem, setProblem] = useState<string>();
  const swap = async (event: FormEvent<HTMLFormElement>): Promise<void> => {
    event.preventDefault();
    const to = new FormData(event.currentTarget).get("to");
    if (to === "") {
      setProblem("Choose a day first.");
      return;
    }
    const state = await swapLunchesAction({ from: date, to }).catch(() => undefined);
    if (!state) setProblem("Noonbook did not answer. Try again.");
    else setProblem(state.kind === "refused" ? state.message : undefined);
  };
  return (
    <details>
      <summary>Another day</summary>
      <form className="row" onSubmit={(event) => void swap(event)} noValidate>
        <div>
          <label htmlFor={id}>Change places with</label>
          <select className="field" id={id} name="to" defaultValue="" aria-describedby={`${id}-no`}>
            <option value="">choose a day …</option>
            {weeks.map(({ week, lunches }) => (
              <optgroup key={week} label={week}>
                {lunches
                  .filter((lunch) => lunch.date !== date)
                  .map((lunch) => (
                    <option key={lunch.date} value={lunch.date}>
                      {lunch.words}
                    </option>
                  ))}
              </optgroup>
            ))}
          </select>
        </div>
        <button className="btn plain" type="submit">
          Change places
        </button>
        <p className="rule-error" id={`${id}-no`} role="alert">
          {problem}
        </p>
      </form>
    </details>
  );
}
