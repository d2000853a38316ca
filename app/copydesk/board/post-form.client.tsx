"use client";

import { useRouter } from "next/navigation";
import { useState, type FormEvent } from "react";
import { mediumDay, type Day } from "#lib/calendar/index.ts";
import type { FormState } from "#app/_forms/form-state.ts";
import { Field } from "#app/_forms/field.client.tsx";
import { ProblemLine } from "#app/_forms/problem-line.tsx";
import { dropDraftAction } from "../actions.ts";
import { publishPostAction } from "../board-actions.ts";
import styles from "../copydesk.module.css";

/** Marks a kept post as published, takes the mark back, or removes the post. */
export function PostForm({
  post,
  revision,
  today,
  publishedOn,
}: {
  readonly post: string;
  readonly revision: number;
  readonly today: Day;
  readonly publishedOn: Day | null;
}) {
  const router = useRouter();
  const [on, setOn] = useState<string>(today);
  const [error, setError] = useState<string>();
  const key = { kind: "board", post, revision } as const;
  const send = async (run: () => Promise<FormState>): Promise<boolean> => {
    const state = await run().catch(() => undefined);
    if (!state) setError("Noonbook did not answer. Try again.");
    else if (state.kind === "refused") setError(state.message);
    else if (state.kind === "invalid") setError("Choose a day.");
    else setError(undefined);
    return state?.kind === "saved";
  };
  const remove = async (): Promise<void> => {
    if (await send(() => dropDraftAction(key))) router.push("/copydesk/board");
  };
  return (
    <>
      {publishedOn === null ? (
        <form
          className={styles.publish}
          noValidate
          onSubmit={(event: FormEvent) => {
            event.preventDefault();
            void send(() => publishPostAction({ ...key, on }));
          }}
        >
          <Field
            label="Published on"
            type="date"
            value={on}
            max={today}
            error={error}
            onChange={(event) => {
              setOn(event.target.value);
            }}
          />
          <button className="btn slim" type="submit">
            Mark as published
          </button>
        </form>
      ) : (
        <>
          <p>Published on {mediumDay(publishedOn)}.</p>
          <ProblemLine problem={error} />
          <button
            className="btn plain slim"
            type="button"
            onClick={() => void send(() => publishPostAction({ ...key, on: null }))}
          >
            Take the mark back
          </button>
        </>
      )}
      <p className={styles.aside}>
        <button className="btn plain slim" type="button" onClick={() => void remove()}>
          Remove this post
        </button>
      </p>
    </>
  );
}
