"use client";

import { useState } from "react";
import { ProblemLine } from "#app/_forms/problem-line.tsx";
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
      <ProblemLine problem={problem} />
    </>
  );
}
