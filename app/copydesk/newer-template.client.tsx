"use client";

import { useState } from "react";
import { updateDraftAction } from "./actions.ts";
import styles from "./copydesk.module.css";
import type { PieceKey } from "./piece-key.ts";

/** Offers the latest version of the template to a draft written with an earlier one. */
export function NewerTemplate({ piece }: { readonly piece: PieceKey }) {
  const [problem, setProblem] = useState<string>();
  const update = async (): Promise<void> => {
    const input = { ...piece, anew: true, choices: [] };
    const state = await updateDraftAction(input).catch(() => undefined);
    if (!state) setProblem("Noonbook did not answer. Try again.");
    else setProblem(state.kind === "refused" ? state.message : undefined);
  };
  return (
    <div className={styles.stale}>
      <p>Your template has changed since this was written. Your own words stay.</p>
      {problem && (
        <p className="rule-error" role="alert">
          {problem}
        </p>
      )}
      <button className="btn plain slim" type="button" onClick={() => void update()}>
        Write it with the new template
      </button>
    </div>
  );
}
