"use client";

import { useState, type FormEvent } from "react";
import { Field } from "#app/_forms/field.client.tsx";
import type { VerdictDay } from "#lib/use-cases/load-verdict-day.ts";
import { saveDayFactsAction } from "./actions.ts";
import styles from "./verdicts.module.css";

/** The quick facts of the day: minutes it took, what was hard, what the camera missed. */
export function FactsForm({
  lunchId,
  facts,
}: {
  readonly lunchId: string;
  readonly facts: VerdictDay["facts"];
}) {
  const [minutes, setMinutes] = useState(
    facts.minutesUsed === null ? "" : String(facts.minutesUsed),
  );
  const [hard, setHard] = useState(facts.hard);
  const [pickups, setPickups] = useState(facts.pickups);
  // Only what this form has seen counts: a page that refreshes around it must not carry it over a change.
  const [revision, setRevision] = useState(facts.revision);
  const [problems, setProblems] = useState<Readonly<Record<string, string>>>({});
  const [status, setStatus] = useState("");
  const save = async (event: FormEvent): Promise<void> => {
    event.preventDefault();
    const state = await saveDayFactsAction({
      ...{ lunchId, revision, hard, pickups },
      minutes: minutes.trim() === "" ? null : Number(minutes.replace(",", ".")),
    }).catch(() => undefined);
    if (state?.kind === "saved") setRevision(revision + 1);
    setProblems(state?.kind === "invalid" ? state.fields : {});
    if (!state) setStatus("Noonbook did not answer; what you typed is still here. Try again.");
    else
      setStatus(state.kind === "refused" ? state.message : state.kind === "saved" ? "Kept." : "");
  };
  const onType = (set: (value: string) => void) => (event: { target: { value: string } }) => {
    set(event.target.value);
    setStatus("");
  };
  return (
    <form className={`sheet ${styles.facts}`} onSubmit={(event) => void save(event)} noValidate>
      <h2>Facts of the day</h2>
      <Field
        label="Minutes it took (optional)"
        inputMode="decimal"
        value={minutes}
        error={problems["minutes"]}
        onChange={onType(setMinutes)}
      />
      <Field
        label="What was hard (optional)"
        value={hard}
        error={problems["hard"]}
        onChange={onType(setHard)}
      />
      <Field
        label="Pick-ups: what the camera missed (optional)"
        value={pickups}
        error={problems["pickups"]}
        onChange={onType(setPickups)}
      />
      <div className="row">
        <button className="btn plain" type="submit">
          Keep the facts
        </button>
        <span role="status">{status}</span>
      </div>
    </form>
  );
}
