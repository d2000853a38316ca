"use client";

import { useState, type FormEvent } from "react";
import { Field } from "#app/_forms/field.client.tsx";
import { Tick } from "#app/_forms/tick.client.tsx";
import { forgetVerdictPages } from "#app/verdicts/forget-pages.client.ts";
import styles from "../bible.module.css";
import { bringWholeAction } from "./actions.ts";

/** Puts the series of a file in the place of this one, after an explicit yes. */
export function WholeForm() {
  const [problems, setProblems] = useState<Readonly<Record<string, string>>>({});
  const [status, setStatus] = useState("");
  const bring = async (event: FormEvent<HTMLFormElement>): Promise<void> => {
    event.preventDefault();
    const typed = new FormData(event.currentTarget);
    const file = typed.get("file");
    setStatus("Reading …");
    const text = file instanceof File ? await file.text() : "";
    const mayReplace = typed.get("mayReplace") !== null;
    const state = await bringWholeAction({ text, mayReplace }).catch(() => undefined);
    setProblems(state?.kind === "invalid" ? state.fields : {});
    if (state?.kind === "saved") {
      await forgetVerdictPages();
      setStatus("It stands here now. A copy of what stood before lies in the data folder.");
    } else if (state?.kind === "refused") setStatus(state.message);
    else setStatus(state ? "" : "Noonbook did not answer. Nothing was changed: try again.");
  };
  return (
    <form className={styles.form} onSubmit={(event) => void bring(event)} noValidate>
      <Field
        label="A file from “Everything as one file”"
        type="file"
        name="file"
        accept=".json,application/json"
        error={problems["text"]}
      />
      <div>
        <Tick label="It may take the place of everything that stands here" name="mayReplace" />
        {problems["mayReplace"] && <p className="rule-error">{problems["mayReplace"]}</p>}
      </div>
      <div className="row">
        <button className="btn plain" type="submit">
          Put it here
        </button>
        <span role="status">{status}</span>
      </div>
    </form>
  );
}
