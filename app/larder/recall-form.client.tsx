"use client";

import { useState, type FormEvent } from "react";
import { Area } from "#app/_forms/area.client.tsx";
import { recallAction } from "./actions.ts";
import styles from "./larder.module.css";

/** Marks a food or one of its products as recalled, or lifts the mark. */
export function RecallForm({
  subjects,
}: {
  readonly subjects: readonly {
    readonly kind: "food" | "product";
    readonly id: string;
    readonly name: string;
    readonly isRecalled: boolean;
  }[];
}) {
  const [chosen, setChosen] = useState(0);
  const [problem, setProblem] = useState<string>();
  const [status, setStatus] = useState("");
  const subject = subjects[chosen];
  if (!subject) return null;
  const save = async (event: FormEvent<HTMLFormElement>): Promise<void> => {
    event.preventDefault();
    const form = event.currentTarget;
    const note = new FormData(form).get("note");
    const state = await recallAction({
      ...{ kind: subject.kind, id: subject.id, isRecalled: !subject.isRecalled },
      note: typeof note === "string" ? note : "",
    }).catch(() => undefined);
    setStatus("");
    if (!state) setProblem("Noonbook did not answer. What you typed is still here: try again.");
    else if (state.kind === "invalid") setProblem(state.fields["note"]);
    else if (state.kind === "refused") setProblem(state.message);
    else {
      setProblem(undefined);
      setStatus(subject.isRecalled ? "The mark is lifted." : "Marked as recalled.");
      form.reset();
    }
  };
  return (
    <form className={styles.form} onSubmit={(event) => void save(event)} noValidate>
      <div>
        <label htmlFor="recall-what">What is recalled</label>
        <select
          className="field"
          id="recall-what"
          value={chosen}
          onChange={(event) => {
            setChosen(Number(event.target.value));
          }}
        >
          {subjects.map(({ id, name, isRecalled }, index) => (
            <option key={id} value={index}>
              {name}
              {isRecalled ? " (recalled)" : ""}
            </option>
          ))}
        </select>
      </div>
      {!subject.isRecalled && (
        <Area
          label="What the notice says"
          name="note"
          hint="Lots, dates, whose notice it is and where it can be read."
          error={problem}
        />
      )}
      {subject.isRecalled && problem && (
        <p className="rule-error" role="alert">
          {problem}
        </p>
      )}
      <div className="row">
        <button className="btn plain" type="submit">
          {subject.isRecalled ? "Lift the mark" : "Mark as recalled"}
        </button>
        <span role="status">{status}</span>
      </div>
    </form>
  );
}
