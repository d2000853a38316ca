"use client";

import { useEffect, useId, useState, type FormEvent } from "react";
import { mediumDay } from "#lib/calendar/index.ts";
import type { Preview, TemplateView } from "#lib/use-cases/edit-template.ts";
import styles from "../copydesk.module.css";
import { previewTemplateAction, saveTemplateAction } from "./actions.ts";

/** How long typing must pause before the preview follows, in milliseconds. */
const PAUSE = 400;

/** A template with its preview beside it; each version kept can be brought back. */
export function TemplateForm({ template }: { readonly template: TemplateView }) {
  const id = useId();
  const [typed, setTyped] = useState(template.body);
  const [preview, setPreview] = useState<Preview>(template.preview);
  const [status, setStatus] = useState("");
  const [refusal, setRefusal] = useState<string>();
  const { kind } = template;

  useEffect(() => {
    let isShown = true;
    const timer = setTimeout(() => {
      previewTemplateAction({ kind, body: typed }).then(
        (answer) => {
          if (isShown) setPreview(answer);
        },
        () => undefined, // The last preview stays until the next letter.
      );
    }, PAUSE);
    return () => {
      isShown = false;
      clearTimeout(timer);
    };
  }, [kind, typed]);

  const save = async (event: FormEvent): Promise<void> => {
    event.preventDefault();
    const input = { kind, body: typed, version: template.version };
    const state = await saveTemplateAction(input).catch(() => undefined);
    setStatus(state?.kind === "saved" ? "Kept." : "");
    if (!state) setRefusal("Noonbook did not answer. What you typed is still here: try again.");
    else if (state.kind === "refused") setRefusal(state.message);
    else setRefusal(state.kind === "invalid" ? Object.values(state.fields)[0] : undefined);
  };
  const problem = preview.kind === "problem" ? preview.problem : undefined;
  return (
    <div className={styles.halves}>
      <form className="sheet" onSubmit={(event) => void save(event)}>
        <label htmlFor={id}>The template, in Liquid</label>
        <textarea
          className={`field ${styles.code}`}
          id={id}
          rows={22}
          spellCheck={false}
          value={typed}
          aria-describedby={`${id}-problem`}
          aria-invalid={problem ? true : undefined}
          onChange={(event) => {
            setTyped(event.target.value);
            setStatus("");
          }}
        />
        <p className="rule-error" id={`${id}-problem`} role="alert">
          {problem ? `Line ${problem.line}: ${problem.message}` : refusal}
        </p>
        <div className="row">
          <button className="btn" type="submit" disabled={problem !== undefined}>
            Keep as version {template.version + 1}
          </button>
          <span role="status">{status}</span>
        </div>
        <h3 className={styles.versions}>Versions</h3>
        <div className="row">
          {template.versions.map(({ version, body }) => (
            <button
              className="btn plain slim"
              key={version}
              type="button"
              onClick={() => {
                setTyped(body);
              }}
            >
              {version === 0 ? "Ours, as it came" : `Version ${version}`}
            </button>
          ))}
        </div>
      </form>
      <section className="sheet" aria-label="Preview" aria-live="polite">
        <h2>Preview</h2>
        {preview.kind === "text" && (
          <>
            <p className="small quiet">From the week of {mediumDay(preview.week)}.</p>
            <p className={styles.preview}>{preview.text || "It writes nothing for this week."}</p>
          </>
        )}
        {preview.kind === "no-week" && (
          <p>Pencil a week in, and the preview shows what it writes.</p>
        )}
        {problem && <p className="quiet">Mend line {problem.line} to see what it writes.</p>}
      </section>
    </div>
  );
}
