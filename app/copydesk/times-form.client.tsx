"use client";

import { useState, type FormEvent } from "react";
import type { Day } from "#lib/calendar/index.ts";
import { Field } from "#app/_forms/field.client.tsx";
import styles from "./copydesk.module.css";
import { markTimesAction } from "./times-actions.ts";

type Row = { readonly time: string; readonly title: string };

/** Running time, chapters and on-screen time as marked in the finished episode. */
export function TimesForm({
  monday,
  revision,
  runtime,
  chapters,
  screen,
}: {
  readonly monday: Day;
  readonly revision: number;
  readonly runtime: string;
  readonly chapters: readonly Row[];
  readonly screen: readonly { readonly id: string; readonly name: string; readonly time: string }[];
}) {
  const [total, setTotal] = useState(runtime);
  const [rows, setRows] = useState(chapters);
  const [seen, setSeen] = useState(screen);
  const [errors, setErrors] = useState<Readonly<Record<string, string>>>({});
  const [status, setStatus] = useState("");
  const change = (index: number, part: Partial<Row>): void => {
    setRows(rows.map((row, at) => (at === index ? { ...row, ...part } : row)));
  };
  const save = async (event: FormEvent): Promise<void> => {
    event.preventDefault();
    const state = await markTimesAction({
      ...{ monday, revision, runtime: total.trim() },
      chapters: rows.filter(({ time, title }) => time.trim() !== "" || title.trim() !== ""),
      screen: seen.map(({ id, time }) => ({ childId: id, time: time.trim() })),
    }).catch(() => undefined);
    setErrors(state?.kind === "invalid" ? state.fields : {});
    if (!state) setStatus("Noonbook did not answer. What you typed is still here: try again.");
    else if (state.kind === "invalid") setStatus("Some times need a second look.");
    else setStatus(state.kind === "refused" ? state.message : "Kept.");
  };
  return (
    <form className={styles.times} noValidate onSubmit={(event) => void save(event)}>
      <Field
        label="Runs for (minutes:seconds)"
        inputMode="numeric"
        value={total}
        error={errors["runtime"]}
        onChange={(event) => {
          setTotal(event.target.value);
        }}
      />
      <fieldset>
        <legend>Chapters</legend>
        {rows.map((row, index) => (
          <div className={styles.chapter} key={index}>
            <Field
              label="At"
              value={row.time}
              error={errors[`chapters.${index}.time`]}
              onChange={(event) => {
                change(index, { time: event.target.value });
              }}
            />
            <Field
              label="Title"
              value={row.title}
              error={errors[`chapters.${index}.title`]}
              onChange={(event) => {
                change(index, { title: event.target.value });
              }}
            />
            <button
              className="btn plain slim"
              type="button"
              onClick={() => {
                setRows(rows.filter((_, at) => at !== index));
              }}
            >
              Remove<span className="sr"> {row.title}</span>
            </button>
          </div>
        ))}
        <button
          className="btn plain slim"
          type="button"
          onClick={() => {
            setRows([...rows, { time: "", title: "" }]);
          }}
        >
          Add a chapter
        </button>
      </fieldset>
      {seen.length > 0 && (
        <fieldset>
          <legend>On screen or spoken of (minutes:seconds)</legend>
          {seen.map((child, index) => (
            <Field
              key={child.id}
              label={child.name}
              value={child.time}
              error={errors[`screen.${index}.time`]}
              onChange={(event) => {
                const time = event.target.value;
                setSeen(seen.map((one) => (one.id === child.id ? { ...one, time } : one)));
              }}
            />
          ))}
        </fieldset>
      )}
      <div className="row">
        <button className="btn" type="submit">
          Keep these times
        </button>
        <span role="status">{status}</span>
      </div>
    </form>
  );
}
