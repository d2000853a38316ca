"use client";

import { useState } from "react";
import type { ErrandsView } from "#lib/use-cases/errands/load-errands.ts";
import { Field } from "#app/_forms/field.client.tsx";
import { sayWeightAction } from "./actions.ts";
import styles from "./errands.module.css";

/** Asks what one of a unit weighs, since nobody should guess. */
export function AskForm({ ask }: { readonly ask: ErrandsView["asks"][number] }) {
  const [grams, setGrams] = useState("");
  const [problem, setProblem] = useState<string>();
  const [status, setStatus] = useState("");
  const say = async (): Promise<void> => {
    const typed = grams.trim() === "" ? Number.NaN : Number(grams.replace(",", "."));
    const answer = { foodId: ask.foodId, unit: ask.unit, grams: typed };
    const state = await sayWeightAction(answer).catch(() => undefined);
    setProblem(state?.kind === "invalid" ? Object.values(state.fields)[0] : undefined);
    if (!state) setStatus("Noonbook did not answer. What you typed is still here: try again.");
    else if (state.kind === "refused") setStatus(state.message);
  };
  return (
    <form
      className={styles.fix}
      noValidate
      onSubmit={(event) => {
        event.preventDefault();
        void say();
      }}
    >
      <Field
        label={`One ${ask.unit} of ${ask.food} weighs, in grams`}
        inputMode="decimal"
        value={grams}
        error={problem}
        onChange={(event) => {
          setGrams(event.target.value);
        }}
      />
      <div className="row">
        <button type="submit" className="btn plain slim">
          Count with that
        </button>
        <span role="status" className="small">
          {status}
        </span>
      </div>
    </form>
  );
}
