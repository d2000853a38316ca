"use client";

import { useId, useState } from "react";
import { tickStepAction } from "./actions.ts";
import box from "./tick-box.module.css";
import styles from "./mise.module.css";

/** A step to tick off, with the minutes it took; both are kept as soon as they are said. */
export function StepRow({
  lunchId,
  stepKey,
  number,
  line,
  times,
  notes,
  minutes,
  isDone,
  took,
  isCritical,
}: {
  readonly lunchId: string;
  readonly stepKey: string;
  readonly number: number;
  readonly line: string;
  readonly times: string;
  readonly notes: string;
  readonly minutes: number;
  readonly isDone: boolean;
  readonly took: number | null;
  readonly isCritical: boolean;
}) {
  const id = useId();
  const [isTicked, setTicked] = useState(isDone);
  const [typed, setTyped] = useState(took === null ? "" : String(took));
  const [problem, setProblem] = useState<string>();

  const keep = async (ticked: boolean, text: string): Promise<void> => {
    setTicked(ticked);
    const state = await tickStepAction({
      ...{ lunchId, stepKey, isDone: ticked },
      minutes: text.trim() === "" ? null : Number(text.replace(",", ".")),
    }).catch(() => undefined);
    if (state?.kind === "saved") setProblem(undefined);
    else if (state?.kind === "invalid") setProblem(Object.values(state.fields)[0]);
    else {
      setTicked(isDone);
      setProblem(state ? state.message : "Noonbook did not answer. Tick it again.");
    }
  };

  return (
    <li className={isCritical ? `${styles.step} ${styles.criticalStep}` : styles.step}>
      <label className={box.box}>
        <input
          type="checkbox"
          checked={isTicked}
          onChange={(event) => void keep(event.target.checked, typed)}
        />
        <span className="sr">Done: {line}</span>
      </label>
      <b className={styles.number} aria-hidden="true">
        {number}
      </b>
      <time className={styles.times}>{times}</time>
      <div className={styles.what}>
        <p className={isTicked ? styles.doneLine : undefined}>{line}</p>
        <p className="small quiet">{notes}</p>
        {problem && (
          <p className="rule-error" id={`${id}-error`} role="alert">
            {problem}
          </p>
        )}
      </div>
      <span className={styles.took}>
        <label htmlFor={id}>
          Took<span className="sr">, minutes: {line}</span>
        </label>
        <input
          className="field"
          id={id}
          inputMode="decimal"
          autoComplete="off"
          placeholder={String(minutes)}
          value={typed}
          aria-invalid={problem ? true : undefined}
          aria-describedby={problem ? `${id}-error` : undefined}
          onChange={(event) => {
            setTyped(event.target.value);
          }}
          onBlur={() => {
            const said = took === null ? "" : String(took);
            if (typed !== said) void keep(isTicked || typed.trim() !== "", typed);
          }}
        />
        <span aria-hidden="true">min</span>
      </span>
    </li>
  );
}
