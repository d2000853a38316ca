"use client";

import { useState } from "react";
import type { Day } from "#lib/calendar/index.ts";
import type { RunView } from "#lib/use-cases/errands/run-view.ts";
import { Field } from "#app/_forms/field.client.tsx";
import { useChange } from "./use-change.client.ts";
import styles from "./errands.module.css";

/** Adds a line by hand, and decides whether the run is made. */
export function RunMore({ monday, run }: { readonly monday: Day; readonly run: RunView }) {
  const { change, status, problems } = useChange();
  const [label, setLabel] = useState("");
  const [packs, setPacks] = useState("1");
  const { shopId, day } = run;
  const trip = { monday, shopId, day };
  const add = async (): Promise<void> => {
    const isKept = await change({ kind: "add-line", ...trip, label, packs: Number(packs) });
    if (isKept) setLabel("");
  };
  return (
    <details className={`${styles.how ?? ""} noprint`}>
      <summary>Add a line, or change this run</summary>
      <form
        className={styles.fix}
        noValidate
        onSubmit={(event) => {
          event.preventDefault();
          void add();
        }}
      >
        <Field
          label="Also buy"
          value={label}
          error={problems["label"]}
          onChange={(event) => {
            setLabel(event.target.value);
          }}
        />
        <Field
          label="How many"
          inputMode="numeric"
          value={packs}
          error={problems["packs"]}
          onChange={(event) => {
            setPacks(event.target.value);
          }}
        />
        <div className="row">
          <button className="btn plain slim" type="submit">
            Add to the list
          </button>
        </div>
      </form>
      <div className="row">
        {run.isByHand ? (
          <button
            type="button"
            className="btn plain slim"
            onClick={() => void change({ kind: "leave-open", ...trip })}
          >
            Let the plan decide
          </button>
        ) : (
          <button
            type="button"
            className="btn plain slim"
            onClick={() => void change({ kind: "go", ...trip })}
          >
            Go in any case
          </button>
        )}
        <button
          type="button"
          className="btn plain slim"
          onClick={() => void change({ kind: "stay-away", ...trip })}
        >
          Do not go
        </button>
        <button
          type="button"
          className="btn plain slim"
          onClick={() => void change({ kind: "done", ...trip, isDone: !run.isDone })}
        >
          {run.isDone ? "Not done yet" : "Run is done"}
        </button>
        <span role="status">{status}</span>
      </div>
    </details>
  );
}
