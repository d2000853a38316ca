"use client";

import { useState } from "react";
import { tickStepAction } from "./actions.ts";
import box from "./tick-box.module.css";

/** A box to tick a step off; minutes that were said before stay. */
export function TickBox({
  lunchId,
  stepKey,
  line,
  isDone,
  minutes,
}: {
  readonly lunchId: string;
  readonly stepKey: string;
  readonly line: string;
  readonly isDone: boolean;
  readonly minutes: number | null;
}) {
  const [isTicked, setTicked] = useState(isDone);
  const [problem, setProblem] = useState<string>();
  const keep = async (ticked: boolean): Promise<void> => {
    setTicked(ticked);
    const input = { lunchId, stepKey, isDone: ticked, minutes };
    const state = await tickStepAction(input).catch(() => undefined);
    if (state?.kind === "saved") {
      setProblem(undefined);
      return;
    }
    setTicked(isDone);
    const isRefused = state?.kind === "refused";
    setProblem(isRefused ? state.message : "Noonbook did not answer. Tick it again.");
  };
  return (
    <>
      <label className={box.box}>
        <input
          type="checkbox"
          checked={isTicked}
          onChange={(event) => void keep(event.target.checked)}
        />
        <span className="sr">Done: {line}</span>
      </label>
      {problem && (
        <span className="rule-error" role="alert">
          {problem}
        </span>
      )}
    </>
  );
}
