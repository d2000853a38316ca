"use client";

import { useId, useState, type FormEvent } from "react";
import { dropDraftAction, saveDraftAction } from "./actions.ts";
import styles from "./copydesk.module.css";
import type { PieceKey } from "./piece-key.ts";

/** The text in a field of its own. What is typed stays until it is kept. */
export function EditForm({
  piece,
  text,
  isEdited,
  close,
}: {
  readonly piece: PieceKey;
  readonly text: string;
  readonly isEdited: boolean;
  readonly close: () => void;
}) {
  const id = useId();
  const [typed, setTyped] = useState(text);
  const [problem, setProblem] = useState<string>();
  const send = async (run: () => ReturnType<typeof saveDraftAction>): Promise<void> => {
    const state = await run().catch(() => undefined);
    if (!state) setProblem("Noonbook did not answer. What you typed is still here: try again.");
    else if (state.kind === "refused") setProblem(state.message);
    else if (state.kind === "invalid") setProblem(Object.values(state.fields)[0]);
    else close();
  };
  return (
    <form
      onSubmit={(event: FormEvent) => {
        event.preventDefault();
        void send(() => saveDraftAction({ ...piece, body: typed }));
      }}
    >
      <label htmlFor={id}>The text</label>
      <textarea
        className={`field ${styles.area}`}
        id={id}
        value={typed}
        rows={18}
        aria-describedby={problem ? `${id}-error` : undefined}
        aria-invalid={problem ? true : undefined}
        onChange={(event) => {
          setTyped(event.target.value);
        }}
      />
      {problem && (
        <p className="rule-error" id={`${id}-error`} role="alert">
          {problem}
        </p>
      )}
      <div className="row">
        <button className="btn" type="submit">
          Keep these words
        </button>
        <button className="btn plain" type="button" onClick={close}>
          Leave them as they were
        </button>
        {isEdited && piece.kind !== "board" && (
          <button
            className="btn plain"
            type="button"
            onClick={() => void send(() => dropDraftAction(piece))}
          >
            Back to the draft from the records
          </button>
        )}
      </div>
    </form>
  );
}
