"use client";

import { useState, type FormEvent } from "react";
import { mediumDay, type Day } from "#lib/calendar/index.ts";
import { Field } from "#app/_forms/field.client.tsx";
import styles from "./copydesk.module.css";
import { publishAction, unpublishAction } from "./publish-actions.ts";

/** Marks an episode as published, with the address and the day; or takes the mark back. */
export function PublishForm({
  monday,
  revision,
  today,
  publishedOn,
  url,
}: {
  readonly monday: Day;
  readonly revision: number;
  readonly today: Day;
  readonly publishedOn: Day | null;
  readonly url: string;
}) {
  const [address, setAddress] = useState(url);
  const [on, setOn] = useState<string>(today);
  const [errors, setErrors] = useState<Readonly<Record<string, string>>>({});
  const [problem, setProblem] = useState<string>();
  const send = async (run: () => ReturnType<typeof publishAction>): Promise<void> => {
    const state = await run().catch(() => undefined);
    setErrors(state?.kind === "invalid" ? state.fields : {});
    if (!state) setProblem("Noonbook did not answer. What you typed is still here: try again.");
    else setProblem(state.kind === "refused" ? state.message : undefined);
  };
  const refusal = problem && (
    <p className="rule-error" role="alert">
      {problem}
    </p>
  );
  if (publishedOn !== null) {
    return (
      <>
        <p>
          Published on {mediumDay(publishedOn)}
          {url !== "" && (
            <>
              {" at "}
              <a href={url} rel="noreferrer">
                {url}
              </a>
            </>
          )}
          .
        </p>
        {refusal}
        <button
          className="btn plain slim"
          type="button"
          onClick={() => void send(() => unpublishAction({ monday, revision }))}
        >
          Take the mark back
        </button>
      </>
    );
  }
  return (
    <form
      className={styles.publish}
      noValidate
      onSubmit={(event: FormEvent) => {
        event.preventDefault();
        void send(() => publishAction({ monday, revision, on, url: address }));
      }}
    >
      <Field
        label="Address (optional)"
        inputMode="url"
        value={address}
        error={errors["url"]}
        onChange={(event) => {
          setAddress(event.target.value);
        }}
      />
      <Field
        label="Published on"
        type="date"
        value={on}
        error={errors["on"]}
        onChange={(event) => {
          setOn(event.target.value);
        }}
      />
      {refusal}
      <button className="btn" type="submit">
        Mark as published
      </button>
    </form>
  );
}
