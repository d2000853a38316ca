"use client";

import Link from "next/link";
import { useState } from "react";
import { Area } from "#app/_forms/area.client.tsx";
import { Field } from "#app/_forms/field.client.tsx";
import type { PastReading } from "#lib/use-cases/past/past.input.ts";
import type { PastReport } from "#lib/use-cases/past/report-past.ts";
import { ProblemLine } from "#app/_forms/problem-line.tsx";
import styles from "../bible.module.css";
import { bringPastAction, lookAtPastAction, type PastAnswer } from "./actions.ts";
import { PastMatches } from "./past-matches.client.tsx";
import { PastNotes } from "./past-notes.client.tsx";
import { PastReadingFields } from "./past-reading.client.tsx";
import { PastSummary } from "./past-summary.tsx";

type Asked = {
  readonly text: string;
  readonly reading: PastReading | null;
  readonly choices: Readonly<Record<string, string>>;
};
const NOTHING: Asked = { text: "", reading: null, choices: {} };

/** A file of earlier weeks: chosen, read as the user says, looked at, and only then brought in. */
export function PastForm() {
  const [asked, setAsked] = useState<Asked>(NOTHING);
  const [report, setReport] = useState<PastReport>();
  const [isStale, setIsStale] = useState(false);
  const [isBusy, setIsBusy] = useState(false);
  const [problem, setProblem] = useState<string>();
  const [isDone, setIsDone] = useState(false);

  const ask = async (
    action: (input: unknown) => Promise<PastAnswer>,
    input: Asked,
  ): Promise<boolean> => {
    setIsBusy(true);
    setProblem(undefined);
    const answer = await action(input).catch(() => undefined);
    setIsBusy(false);
    if (answer?.kind === "told") {
      setReport(answer.report);
      setAsked({ ...input, reading: answer.report.reading });
      setIsStale(false);
      return true;
    }
    if (!answer) setProblem("Noonbook did not answer. Nothing was written: try again.");
    else if (answer.kind === "refused") setProblem(answer.message);
    else setProblem(Object.values(answer.fields)[0] ?? "This file cannot be read.");
    return false;
  };
  const look = (input: Asked): void => {
    setIsDone(false);
    void ask(lookAtPastAction, input);
  };
  const bring = async (): Promise<void> => {
    setIsDone(await ask(bringPastAction, asked));
  };
  const change = (changes: Partial<Asked>): void => {
    setAsked({ ...asked, ...changes });
    setIsStale(true);
  };

  return (
    <div className={styles.form}>
      <Field
        label="The file"
        type="file"
        accept=".csv,.tsv,.txt,text/csv"
        onChange={(event) => {
          const file = event.target.files?.[0];
          if (!file) return;
          void file.text().then((text) => {
            look({ ...NOTHING, text });
          });
        }}
      />
      <details>
        <summary>Or paste its text</summary>
        <Area
          label="The text"
          rows={6}
          value={asked.text}
          onChange={(event) => {
            change({ text: event.target.value, reading: null });
          }}
        />
      </details>
      {report && asked.reading && (
        <PastReadingFields
          reading={asked.reading}
          report={report}
          onChange={(reading) => {
            change({ reading });
          }}
        />
      )}
      <div className="row">
        <button
          className="btn plain"
          type="button"
          disabled={isBusy || asked.text === ""}
          onClick={() => {
            look(asked);
          }}
        >
          {report ? "Look again" : "Look at it"}
        </button>
        {report && (
          <button
            className="btn"
            type="button"
            disabled={isBusy || isStale || isDone || report.errors > 0 || report.lineCount === 0}
            onClick={() => void bring()}
          >
            Bring it in
          </button>
        )}
        <span role="status">
          {isBusy
            ? "Reading …"
            : isDone
              ? "It is on record."
              : isStale && report
                ? "Look again to see what that changes."
                : ""}
        </span>
        {isDone && <Link href="/slate">Open the slate</Link>}
      </div>
      <ProblemLine problem={problem} />
      {report && (
        <>
          <PastSummary report={report} isDone={isDone} />
          <PastNotes notes={report.notes} />
          <PastMatches
            matches={report.matches}
            choices={asked.choices}
            onChoose={(phrase, choice) => {
              change({ choices: { ...asked.choices, [phrase]: choice } });
            }}
          />
        </>
      )}
    </div>
  );
}
