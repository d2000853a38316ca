"use client";

import { useState } from "react";
import { undoSlateAction } from "./actions.ts";

/** Takes back the slate's last change; names it, so that nobody presses blindly. */
export function UndoButton({ label }: { readonly label: string }) {
  const [problem, setProblem] = useState<string>();
  const undo = async (): Promise<void> => {
    const state = await undoSlateAction().catch(() => undefined);
    if (!state) setProblem("Noonbook did not answer. Try again.");
    else setProblem(state.kind === "refused" ? state.message : undefined);
  };
  return (
    <>
      <button className="btn plain" type="button" onClick={() => void undo()}>
        Undo: {label}
      </button>
      {problem && (
        <p className="rule-error" role="alert">
          {problem}
        </p>
      )}
    </>
  );
}
