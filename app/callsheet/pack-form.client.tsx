"use client";

import { useState, type FormEvent } from "react";
import { Field } from "#app/_forms/field.client.tsx";
import { packLunchAction } from "./actions.ts";
import styles from "./callsheet.module.css";

/** Shuts the lid and keeps the minutes it took. */
export function PackForm({
  lunchId,
  isPacked,
  minutes,
}: {
  readonly lunchId: string;
  readonly isPacked: boolean;
  readonly minutes: number | null;
}) {
  const [typed, setTyped] = useState(minutes === null ? "" : String(minutes));
  const [problem, setProblem] = useState<string>();
  const [status, setStatus] = useState<string>();
  const save = async (event: FormEvent): Promise<void> => {
    event.preventDefault();
    const state = await packLunchAction({
      lunchId,
      minutes: typed.trim() === "" ? null : Number(typed.replace(",", ".")),
    }).catch(() => undefined);
    setProblem(state?.kind === "invalid" ? Object.values(state.fields)[0] : undefined);
    if (!state) setStatus("Noonbook did not answer. Try again.");
    else
      setStatus(state.kind === "refused" ? state.message : state.kind === "saved" ? "Kept." : "");
  };
  return (
    <form className={styles.form} onSubmit={(event) => void save(event)} noValidate>
      <Field
        label="Minutes it took (optional)"
        inputMode="decimal"
        value={typed}
        error={problem}
        onChange={(event) => {
          setTyped(event.target.value);
        }}
      />
      <div className="row">
        <button className="btn" type="submit">
          {isPacked ? "Keep the minutes" : "Shut the lid: packed"}
        </button>
        <span role="status">{status}</span>
      </div>
    </form>
  );
}
