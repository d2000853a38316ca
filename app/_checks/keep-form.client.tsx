"use client";

import { useState, type FormEvent } from "react";
import { Field } from "#app/_forms/field.client.tsx";
import { ProblemLine } from "#app/_forms/problem-line.tsx";
import { keepFindingAction } from "./actions.ts";

type What = { readonly lunchId: string; readonly findingKey: string };

const NO_ANSWER = "Noonbook did not answer. Try again.";

/** "I know, keep it", with the note that goes with it; what is typed stays until it is saved. */
export function KeepForm({ lunchId, findingKey }: What) {
  const [note, setNote] = useState("");
  const [problem, setProblem] = useState<string>();
  const [isSaving, setSaving] = useState(false);
  const keep = async (event: FormEvent): Promise<void> => {
    event.preventDefault();
    setSaving(true);
    const state = await keepFindingAction({ lunchId, key: findingKey, note }).catch(
      () => undefined,
    );
    setSaving(false);
    if (!state) setProblem(NO_ANSWER);
    else if (state.kind === "refused") setProblem(state.message);
    else if (state.kind === "invalid") setProblem(state.fields["note"]);
    else setProblem(undefined);
  };
  return (
    <form onSubmit={(event) => void keep(event)} noValidate>
      <Field
        label="Why it may stay"
        value={note}
        error={problem}
        onChange={(event) => {
          setNote(event.target.value);
        }}
      />
      <button className="btn plain" type="submit" disabled={isSaving}>
        Keep it
      </button>
    </form>
  );
}

/** Takes a kept finding up again. */
export function TakeUpButton({ lunchId, findingKey }: What) {
  const [problem, setProblem] = useState<string>();
  const takeUp = async (): Promise<void> => {
    const state = await keepFindingAction({ lunchId, key: findingKey, note: null }).catch(
      () => undefined,
    );
    setProblem(!state ? NO_ANSWER : state.kind === "refused" ? state.message : undefined);
  };
  return (
    <>
      <button className="btn plain" type="button" onClick={() => void takeUp()}>
        Warn again
      </button>
      <ProblemLine problem={problem} />
    </>
  );
}
