"use client";

import { useState, type FormEvent } from "react";
import type { ReadyLunchView } from "#lib/use-cases/load-ready-lunch.ts";
import { Field } from "#app/_forms/field.client.tsx";
import { stepInLunchAction } from "./actions.ts";
import styles from "./callsheet.module.css";

/** Lets the lunch that stands ready step in for all of the planned one. */
export function ReadyLunchForm({
  lunchId,
  ready,
}: {
  readonly lunchId: string;
  readonly ready: ReadyLunchView;
}) {
  const [problem, setProblem] = useState<string>();
  const [status, setStatus] = useState("");
  const send = async (event: FormEvent<HTMLFormElement>): Promise<void> => {
    event.preventDefault();
    const foods = ready.foods.map(({ foodId, part }) => ({ foodId, part }));
    const reason = new FormData(event.currentTarget).get("reason");
    const state = await stepInLunchAction({ lunchId, foods, reason }).catch(() => undefined);
    setProblem(state?.kind === "invalid" ? state.fields["reason"] : undefined);
    if (!state) setStatus("Noonbook did not answer, so nothing was changed. Try again.");
    else setStatus(state.kind === "refused" ? state.message : "");
  };
  return (
    <details className="noprint">
      <summary>Pack this instead</summary>
      <form className={styles.form} onSubmit={(event) => void send(event)} noValidate>
        <Field label="Why the planned lunch stays out" name="reason" error={problem} />
        <div className="row">
          <button className="btn plain" type="submit">
            Let it step in
          </button>
          <span role="status">{status}</span>
        </div>
      </form>
    </details>
  );
}
